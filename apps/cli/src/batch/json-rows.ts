import { isUtf8 } from 'node:buffer';
import { columnNames, type ColumnNames, type Finding } from '@unitbook/engine';
import type { RowForm } from './blocks.ts';
import { NEWLINE } from './bytes.ts';
import { BlockChecker, type Block, type BlockTerms, type CheckedBlock } from './check-block.ts';
import { isFault, jsonCells, type JsonCells } from './json-cells.ts';
import { notTextFinding } from './unread-row.ts';

const decoder = new TextDecoder();
const encoder = new TextEncoder();

/** Columns that every table of JSON lines is made with. */
const OF_EVERY_ROW = ['account', 'from', 'to', 'printed.payable'] as const;
/** Choices of keys that a checker is kept for; more are a table that never has the same. */
const MOST_CHECKERS = 64;

const cellText = (value: string): string => (/[",]/.test(value) ? `"${value.replaceAll('"', '""')}"` : value);

/** Rows as JSON objects, one a line: told apart by their accounts. */
export const jsonRows = (): RowForm => ({
  hasQuotes: false,
  isSameAccount: (bytes, one, other) => accountAt(bytes, ...one) === accountAt(bytes, ...other),
  isEmpty: (bytes, [from, to]) => decoder.decode(bytes.subarray(from, to)).trim() === '',
});

const ACCOUNT = /"account"\s*:\s*("(?:[^"\\]|\\.)*")/;

/** The account as it stands in a line; empty where there is none. */
const accountAt = (bytes: Uint8Array, from: number, to: number): string =>
  ACCOUNT.exec(decoder.decode(bytes.subarray(from, to)))?.[1] ?? '';

/** A line as it was read; null: it is empty. */
type Row = JsonCells | Finding | null;

/** A row of cells; one that cannot be used has too few of them, and is told of otherwise. */
function rowText(row: Row, header: readonly string[]): string {
  if (row === null) return '';
  return isFault(row) ? '-' : header.map((name) => cellText(row.get(name) ?? '')).join(',');
}

/** Checks blocks of JSON lines: each is made rows of cells first. */
export class JsonBlockChecker {
  private readonly terms: Omit<BlockTerms, 'header'>;
  private readonly names: ColumnNames;
  private readonly byHeader = new Map<string, BlockChecker>();

  constructor(terms: Omit<BlockTerms, 'header'>) {
    this.terms = terms;
    this.names = columnNames(terms.tariff);
  }

  private checkerOf(header: readonly string[]): BlockChecker {
    const key = header.join('\n');
    const known = this.byHeader.get(key);
    if (known !== undefined) return known;
    if (this.byHeader.size >= MOST_CHECKERS) this.byHeader.clear();
    const made = new BlockChecker({ ...this.terms, header });
    this.byHeader.set(key, made);
    return made;
  }

  private rowOf(bytes: Uint8Array): Row {
    if (!isUtf8(bytes)) return notTextFinding();
    const text = decoder.decode(bytes).trim();
    return text === '' ? null : jsonCells(text, this.names);
  }

  /** Check a block. */
  check({ bytes, from, to, line }: Block): CheckedBlock {
    const starts = [from];
    for (let at = bytes.indexOf(NEWLINE, from); at >= 0 && at < to; at = bytes.indexOf(NEWLINE, at + 1))
      starts.push(at + 1);
    const raw = (at: number): Uint8Array => bytes.slice(starts[at], starts[at + 1] ?? to);
    const rows = starts.slice(0, -1).map((_, at) => this.rowOf(raw(at)));
    const findings = new Map<number, Finding>();
    const names = new Set<string>(OF_EVERY_ROW);
    rows.forEach((row, at) => {
      if (row === null) return;
      if (isFault(row)) findings.set(at, row);
      else for (const name of row.keys()) names.add(name);
    });
    const header = [...names].sort();
    const table = encoder.encode(`${rows.map((row) => rowText(row, header)).join('\n')}\n`);
    return this.checkerOf(header).check({ bytes: table, from: 0, to: table.length, line }, { findings, raw });
  }
}
