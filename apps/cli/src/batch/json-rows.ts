import type { Finding, Tariff } from '@unitbook/engine';
import { NEWLINE } from './bytes.ts';
import { BlockChecker, quantitiesOf, type Block, type BlockTerms, type CheckedBlock } from './check-block.ts';
import { batchFinding } from './findings.ts';
import { readLayout } from './layout.ts';
import type { RowForm } from './blocks.ts';

const decoder = new TextDecoder();
const encoder = new TextEncoder();

type Row = Readonly<Record<string, string>>;

const notJson = (reason: string): Finding => batchFinding('batch/json', { path: [] }, { reason });

/** The cells of one line by column, or what is wrong with it. */
function rowOf(line: string, quantities: readonly string[]): Row | Finding {
  let value: unknown;
  try {
    value = JSON.parse(line);
  } catch (error) {
    return notJson(error instanceof Error ? error.message : 'no JSON');
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return notJson('no object');
  const row: Record<string, string> = {};
  for (const [key, cell] of Object.entries(value)) {
    if (cell === null) continue;
    // A number of JSON that was read is a float: its text is gone.
    if (typeof cell !== 'string') return notJson(`"${key}" is no text; numbers are written as texts: "546"`);
    if (/[\r\n]/.test(cell)) return notJson(`a line break under "${key}"`);
    row[key] = cell;
  }
  // What is unknown in one line is no fault of those beside it.
  const { findings } = readLayout(
    [...Object.keys(row), ...MISSING.filter((name) => !(name in row))],
    quantities,
  );
  const [unknown] = findings.filter(({ code }) => code === 'batch/column-unknown');
  return unknown ?? row;
}

const MISSING = ['account', 'from', 'to', 'printed.payable'] as const;

const cellText = (value: string): string => (/[",]/.test(value) ? `"${value.replaceAll('"', '""')}"` : value);

const isFinding = (row: Row | Finding): row is Finding =>
  'severity' in row && typeof row['path'] === 'object';

/** Rows as JSON objects, one a line: told apart by their accounts. */
export const jsonRows = (): RowForm => ({
  hasQuotes: false,
  isSameAccount: (bytes, one, other) => accountAt(bytes, ...one) === accountAt(bytes, ...other),
});

const ACCOUNT = /"account"\s*:\s*("(?:[^"\\]|\\.)*")/;

/** The account as it stands in a line; empty where there is none. */
const accountAt = (bytes: Uint8Array, from: number, to: number): string =>
  ACCOUNT.exec(decoder.decode(bytes.subarray(from, to)))?.[1] ?? '';

/** Checks blocks of JSON lines: each is made rows of cells first. */
export class JsonBlockChecker {
  private readonly terms: Omit<BlockTerms, 'header'>;
  private readonly quantities: readonly string[];
  private readonly byHeader = new Map<string, BlockChecker>();

  constructor(terms: Omit<BlockTerms, 'header'>) {
    this.terms = terms;
    this.quantities = quantitiesOf(terms.tariff satisfies Tariff);
  }

  private checkerOf(header: readonly string[]): BlockChecker {
    const key = header.join('\n');
    const known = this.byHeader.get(key);
    if (known !== undefined) return known;
    const made = new BlockChecker({ ...this.terms, header });
    this.byHeader.set(key, made);
    return made;
  }

  /** Check a block. */
  check({ bytes, from, to, line }: Block): CheckedBlock {
    const starts = [from];
    for (let at = bytes.indexOf(NEWLINE, from); at >= 0 && at < to; at = bytes.indexOf(NEWLINE, at + 1))
      starts.push(at + 1);
    const raw = (at: number): Uint8Array => bytes.slice(starts[at], starts[at + 1] ?? to);
    const findings = new Map<number, Finding>();
    const rows = starts.slice(0, -1).map((_, at): Row | null => {
      const text = decoder.decode(raw(at)).trim();
      if (text === '') return null;
      const row = rowOf(text, this.quantities);
      if (!isFinding(row)) return row;
      findings.set(at, row);
      return {};
    });
    const header = [...new Set([...MISSING, ...rows.flatMap((row) => Object.keys(row ?? {}))])].sort();
    const lines = rows.map((row, at) => {
      if (row === null) return '';
      return findings.has(at) ? '-' : header.map((name) => cellText(row[name] ?? '')).join(',');
    });
    const table = encoder.encode(`${lines.join('\n')}\n`);
    return this.checkerOf(header).check({ bytes: table, from: 0, to: table.length, line }, { findings, raw });
  }
}
