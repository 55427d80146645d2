import type { Finding, Outcome, ReadingRow } from '@unitbook/engine';
import { decode } from './decode.ts';
import { fileFinding } from './findings.ts';
import { readHeader, type Header } from './header.ts';
import { splitRecords, type CsvRecord } from './records.ts';
import { readRow } from './row.ts';

/** Where the rows of a register list stand in its file. */
export interface CsvSource {
  readonly header: Header;
  /** One for each row that was read, in the same order. */
  readonly records: readonly CsvRecord[];
}

/** A register list that was read. */
export interface RegisterCsv extends Outcome<readonly ReadingRow[]> {
  /** null when no row could be read. */
  readonly source: CsvSource | null;
  /**
   * Where rows are missing that could not be read: before each of these indexes of `value` (its length
   * stands for the end). The rows on both sides of a gap are not one period.
   */
  readonly gaps: readonly number[];
}

const nothing = (findings: readonly Finding[]): RegisterCsv => ({
  value: [],
  findings,
  source: null,
  gaps: [],
});

/** The first line that is not blank, and the text after it. */
function splitHeader(text: string): { line: string; number: number; rest: string } {
  const blank = /^(?:[^\S\n]*\n)*/.exec(text)?.[0] ?? '';
  const body = text.slice(blank.length);
  const end = body.indexOf('\n');
  return {
    line: end < 0 ? body : body.slice(0, end),
    number: blank.split('\n').length,
    rest: end < 0 ? '' : body.slice(end + 1),
  };
}

/**
 * Read a register list: a CSV file with a line of column names and one line for each reading.
 *
 * Every row that can be read is returned, in the order of the file, beside findings about those that
 * cannot. What a cell means (a day, a number) is for the engine's `readReadings` to say.
 *
 * @param input  the file as bytes, or its text
 * @returns      rows, findings with line and column, and what {@link locateInCsv} needs
 * @example
 * readRegisterCsv('date;import;export\n2025-05-01;4342,1;2935,8').value[0].import //=> "4342,1"
 */
export function readRegisterCsv(input: string | Uint8Array): RegisterCsv {
  const decoded = decode(input);
  if (decoded.text === null) return nothing(decoded.findings);
  const { line, number, rest } = splitHeader(decoded.text);
  const header = readHeader(line, number);
  const before = [...decoded.findings, ...header.findings];
  if (header.value === null) return nothing(before);
  const { records, unclosed } = splitRecords(rest, header.value.delimiter, number + 1);
  const rows = readRows(records, header.value);
  const findings = [...before, ...rows.findings];
  const gaps = [...rows.gaps];
  if (unclosed !== null) {
    findings.push({ ...fileFinding('readings-file/quote-not-closed', { path: [] }), position: unclosed });
    if (gaps.at(-1) !== rows.value.length) gaps.push(rows.value.length);
  }
  return { value: rows.value, findings, source: { header: header.value, records: rows.kept }, gaps };
}

function readRows(records: readonly CsvRecord[], header: Header) {
  const value: ReadingRow[] = [];
  const kept: CsvRecord[] = [];
  const findings: Finding[] = [];
  const gaps: number[] = [];
  for (const record of records) {
    const row = readRow(record, header);
    findings.push(...row.findings);
    if (row.value === null) {
      if (gaps.at(-1) !== value.length) gaps.push(value.length);
    } else {
      value.push(row.value);
      kept.push(record);
    }
  }
  return { value, kept, findings, gaps };
}
