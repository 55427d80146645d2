import { createHash } from 'node:crypto';
import { about, type PlacedFinding } from '../findings.ts';
import { BlockReader, cellRows } from './blocks.ts';
import { quantitiesOf } from './check-block.ts';
import { batchFinding } from './findings.ts';
import { jsonRows } from './json-rows.ts';
import { readLayout } from './layout.ts';
import type { Journal } from './output.ts';
import { after, firstRow, headerCells, openTable, skip, type OpenTable } from './source.ts';
import type { BatchOptions } from './options.ts';

/** A table that is open, with its header read. */
export interface OpenRows {
  readonly table: OpenTable;
  /** Blocks from where the check begins, or goes on. */
  readonly reader: BlockReader;
  /** null: JSON lines. */
  readonly header: readonly string[] | null;
  /** The first row as it stands, with its line break; empty of JSON lines. */
  readonly headerText: string;
  /** What the check is of, as one text. */
  readonly of: string;
}

/** Bytes of a block, about. */
const BLOCK = 1 << 18;

interface Failed {
  readonly findings: readonly PlacedFinding[];
}

/** What a check is of: anything else cannot go on with its journal. */
function fingerprint(options: BatchOptions, table: OpenTable, headerText: string): string {
  const { tariff, otherTariffs = [], tolerance, account, isEvery, part } = options;
  const what = {
    size: table.size,
    changed: table.changed,
    headerText,
    tariffs: [tariff, ...otherTariffs].map(({ document }) => document),
    tolerance,
    account,
    isEvery,
    part,
  };
  return createHash('sha256').update(JSON.stringify(what)).digest('hex');
}

async function openCells(options: BatchOptions, table: OpenTable): Promise<OpenRows | Failed> {
  const first = await firstRow(table);
  if (first === null)
    return { findings: about(options.rows, [batchFinding('batch/no-header', { path: [] })]) };
  const header = headerCells(first.text);
  const { value, findings } = readLayout(header, quantitiesOf(options.tariff));
  if (value === null) return { findings: about(options.rows, findings) };
  const start = { position: first.length, line: first.lines + 1 };
  const size = options.blockBytes ?? BLOCK;
  const reader = new BlockReader(after(first.rest, table), size, cellRows(value.account), start);
  const headerText = `${first.text}\n`;
  return { table, reader, header, headerText, of: fingerprint(options, table, headerText) };
}

/** Open the table of a check. */
export async function openRows(options: BatchOptions): Promise<OpenRows | Failed> {
  const table = await openTable(options.rows);
  if (options.form !== 'ndjson') {
    const opened = await openCells(options, table);
    if ('findings' in opened) await table.close();
    return opened;
  }
  const reader = new BlockReader(table, options.blockBytes ?? BLOCK, jsonRows(), { position: 0, line: 1 });
  return { table, reader, header: null, headerText: '', of: fingerprint(options, table, '') };
}

/** Go on where a journal ended. */
export async function goOn(opened: OpenRows, options: BatchOptions, journal: Journal): Promise<BlockReader> {
  const { table, reader } = opened;
  const size = options.blockBytes ?? BLOCK;
  const form = opened.header === null ? jsonRows() : cellRows(opened.header.indexOf('account'));
  const start = { position: journal.position, line: journal.line };
  if (table.size !== null) {
    table.seek(journal.position);
    return new BlockReader(table, size, form, start);
  }
  // What comes through a pipe comes again from its beginning.
  await skip(reader.source, journal.position - reader.position);
  return new BlockReader(reader.source, size, form, start);
}
