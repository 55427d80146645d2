import { createHash } from 'node:crypto';
import { dirname, relative } from 'node:path';
import type { BatchOptions } from './options.ts';
import { sidePath } from './refusals.ts';
import type { OpenTable } from './source.ts';

/** Bytes of a block, about. */
export const BLOCK: number = 1 << 18;

/**
 * What a check is of, as one text, whoever does which part of it and wherever: the table, the tariffs, and every option
 * that the findings hang on. Of a large table its size, its beginning and its end stand for the whole.
 *
 * @param headerText  the first row; empty where there is none
 */
export async function checkFingerprint(
  options: BatchOptions,
  table: OpenTable,
  headerText: string,
): Promise<string> {
  const {
    tariff,
    otherTariffs = [],
    form = 'csv',
    tolerance,
    account,
    isEvery,
    blockBytes = BLOCK,
  } = options;
  const what = {
    size: table.size,
    headerText,
    tariffs: [tariff, ...otherTariffs].map(({ document }) => document),
    form,
    tolerance,
    account,
    isEvery,
    // Parts of a table are blocks: other blocks would be lost, or doubled.
    blockBytes,
  };
  const hash = createHash('sha256').update(JSON.stringify(what));
  for (const piece of await table.ends()) hash.update(piece);
  return hash.digest('hex');
}

/**
 * What a journal goes on with: the same check of the same part, of a table that was not changed, with the same files.
 *
 * @param of  of {@link checkFingerprint}
 */
export function journalFingerprint(
  options: BatchOptions,
  of: string,
  { changed }: Pick<OpenTable, 'changed'>,
): string {
  const { part, out = '' } = options;
  const side = sidePath(options);
  // As seen from the findings: a folder can be moved with all that is in it.
  const beside = side === undefined ? null : relative(dirname(out), side);
  return createHash('sha256').update(JSON.stringify({ of, part, beside, changed })).digest('hex');
}
