import { batchColumn, type ColumnNames, type Finding } from '@unitbook/engine';
import { batchFinding } from './findings.ts';
import { unknownColumn } from './layout.ts';

/** The cells of one JSON line by column. */
export type JsonCells = ReadonlyMap<string, string>;

const notJson = (path: Finding['path'], reason: string): Finding =>
  batchFinding('batch/json', { path }, { reason });

/** What is wrong with one cell, so that its line cannot be used; null: nothing is. */
function cellFault(key: string, cell: unknown, names: ColumnNames): Finding | null {
  // A number of JSON that was read is a float: its text is gone.
  if (typeof cell !== 'string')
    return notJson([key], `"${key}" is no text; numbers are written as texts: "546"`);
  if (/[\r\n]/.test(cell)) return notJson([key], `a line break under "${key}"`);
  // What is unknown in one line is no fault of those beside it.
  return batchColumn(key, names) === null ? unknownColumn(key, names, [key]) : null;
}

/** A text of JSON, and the colon behind it where it is a key. */
const TEXT = /"((?:[^"\\]|\\.)*)"(\s*:)?/g;

/** The key that stands in a line twice, of which only the last would be read; null: there is none. */
function keyTwice(line: string, count: number): string | null {
  const keys = [...line.matchAll(TEXT)].filter(([, , colon]) => colon !== undefined);
  if (keys.length === count) return null;
  const seen = new Set<string>();
  for (const [, raw = ''] of keys) {
    const key = JSON.parse(`"${raw}"`) as string;
    if (seen.has(key)) return key;
    seen.add(key);
  }
  return null;
}

const twice = (name: string): Finding => batchFinding('batch/column-twice', { path: [name] }, { name });

function parsed(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return undefined;
  }
}

/**
 * The cells of one JSON line, or what is wrong with it; notes are passed by.
 *
 * @example
 * jsonCells('{"account":"A","to":null}', { quantities: [], ledgers: [], lines: [] }).size //=> 1
 */
export function jsonCells(line: string, names: ColumnNames): JsonCells | Finding {
  const value = parsed(line);
  if (value === undefined) return notJson([], 'no JSON');
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return notJson([], 'no object');
  const entries = Object.entries(value);
  const cells = new Map<string, string>();
  for (const [key, cell] of entries) {
    if (cell === null) continue;
    const fault = cellFault(key, cell, names);
    if (fault !== null) return fault;
    if (batchColumn(key, names)?.kind === 'note') continue;
    // Lines of a block are put together: one name for what has two.
    const name = key === 'opening.credit' ? 'opening' : key;
    if (cells.has(name)) return twice(key);
    cells.set(name, cell as string);
  }
  const again = keyTwice(line, entries.length);
  return again === null ? cells : twice(again);
}

/** Whether a line that was read cannot be used. */
export const isFault = (read: JsonCells | Finding): read is Finding => 'severity' in read;
