import { columnNames, type Finding } from '@unitbook/engine';
import { about, type PlacedFinding } from '../findings.ts';
import { BlockReader, cellRows, type ByteSource, type RowForm } from './blocks.ts';
import { batchFinding } from './findings.ts';
import { BLOCK, checkFingerprint } from './fingerprint.ts';
import { headerCells, headerText } from './header-cells.ts';
import type { Journal } from './journal.ts';
import { jsonRows } from './json-rows.ts';
import { readLayout } from './layout.ts';
import type { BatchOptions } from './options.ts';
import { isOtherThanText } from './other-than-text.ts';
import { after, firstRow, openTable, peek, skip, type OpenTable } from './source.ts';

/** A table that is open, with its header read. */
export interface OpenRows {
  readonly table: OpenTable;
  /** Blocks from where the check begins, or goes on. */
  readonly reader: BlockReader;
  readonly form: RowForm;
  /** null: JSON lines. */
  readonly header: readonly string[] | null;
  /** The first row as it stands, with its line break; empty of JSON lines. */
  readonly headerText: string;
  /** What the check is of, as one text. */
  readonly of: string;
}

interface Failed {
  readonly findings: readonly Finding[];
}

/** The first row, understood, and what stands behind it. */
interface ReadHeader {
  readonly header: readonly string[];
  readonly text: string;
  readonly account: number;
  readonly source: ByteSource;
  readonly start: { readonly position: number; readonly line: number };
}

const failed = (code: 'batch/no-header' | 'batch/not-text'): Failed => ({
  findings: [batchFinding(code, { path: [] })],
});

async function readHeader(source: ByteSource, options: BatchOptions): Promise<ReadHeader | Failed> {
  const first = await firstRow(source);
  if (first === null) return failed('batch/no-header');
  const text = headerText(first.bytes);
  if (text === null) return failed('batch/not-text');
  const { cells, quoteAt } = headerCells(text);
  if (quoteAt !== null) {
    const where = `in the name of column ${String(quoteAt)}`;
    return { findings: [batchFinding('batch/quote', { path: ['header'] }, { where })] };
  }
  const { value, findings } = readLayout(cells, columnNames(options.tariff));
  if (value === null) return { findings };
  const start = { position: first.bytes.length, line: first.lines + 1 };
  return { header: cells, text, account: value.account, source: after(first.rest, source), start };
}

async function openTextRows(options: BatchOptions, table: OpenTable): Promise<OpenRows | Failed> {
  const { first, whole } = await peek(table);
  if (isOtherThanText(first)) return failed('batch/not-text');
  const size = options.blockBytes ?? BLOCK;
  if (options.form === 'ndjson') {
    const form = jsonRows();
    const reader = new BlockReader(whole, size, form, { position: 0, line: 1 });
    const of = await checkFingerprint(options, table, '');
    return { table, reader, form, header: null, headerText: '', of };
  }
  const read = await readHeader(whole, options);
  if ('findings' in read) return read;
  const form = cellRows(read.account);
  const reader = new BlockReader(read.source, size, form, read.start);
  const text = `${read.text}\n`;
  const of = await checkFingerprint(options, table, text);
  return { table, reader, form, header: read.header, headerText: text, of };
}

/**
 * Open the table of a check.
 *
 * @returns everything that is wrong with its first row, where that cannot be used
 * @throws  FileTrouble where it cannot be read
 */
export async function openRows(
  options: BatchOptions,
): Promise<OpenRows | { readonly findings: readonly PlacedFinding[] }> {
  const table = await openTable(options.rows);
  try {
    const opened = await openTextRows(options, table);
    if (!('findings' in opened)) return opened;
    await table.close();
    return { findings: about(options.rows, opened.findings) };
  } catch (error) {
    await table.close();
    throw error;
  }
}

/** Go on where a journal ended. */
export async function goOn(opened: OpenRows, options: BatchOptions, journal: Journal): Promise<BlockReader> {
  const { table, reader, form } = opened;
  const size = options.blockBytes ?? BLOCK;
  const start = { position: journal.position, line: journal.line };
  if (table.size !== null) {
    table.seek(journal.position);
    return new BlockReader(table, size, form, start);
  }
  // What comes through a pipe comes again from its beginning.
  await skip(reader.source, journal.position - reader.position);
  return new BlockReader(reader.source, size, form, start);
}
