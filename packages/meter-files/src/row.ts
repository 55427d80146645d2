import type { Finding, ReadingRow, RegisterId } from '@unitbook/engine';
import { cellOffsets, DELIMITER_WORDS, type Delimiter } from './cells.ts';
import { fileFinding, type FileFindingCode } from './findings.ts';
import { rateOf, type Column, type Header } from './header.ts';
import type { CsvRecord } from './records.ts';

const CONFIRMATION = /^[a-z]+\/[a-z-]+:(?:date|event|(?:import|export)(?:-[A-Za-z0-9]{1,12})?|generation)$/;
const STATUS =
  /^(?:actual|estimated|estimated:(?:import|export|generation)(?:\+(?:import|export|generation))*)$/i;
const NUMBERS: readonly (Column | null)[] = ['import', 'export', 'generation'];

/**
 * Where a cell of a row stands in the file.
 *
 * @param index  of the cell, from 0; a cell that is not there stands where the row begins
 */
export function cellPosition(
  record: CsvRecord,
  delimiter: Delimiter,
  index: number,
): { line: number; column: number } {
  const offset = cellOffsets(record.text, delimiter)[index] ?? 0;
  const before = record.text.slice(0, offset).split('\n');
  return { line: record.line + before.length - 1, column: (before.at(-1)?.length ?? 0) + 1 };
}

interface RowContext {
  readonly record: CsvRecord;
  readonly header: Header;
}

function make(
  code: FileFindingCode,
  { record, header }: RowContext,
  index: number,
  values: Readonly<Record<string, string>>,
): Finding {
  const position = cellPosition(record, header.delimiter, index);
  return { ...fileFinding(code, { path: [] }, values), position };
}

/** Another separator than the header's, where a line cannot be read by the header's. */
function otherSeparator({ record, header }: RowContext): Delimiter | null {
  const times = (mark: Delimiter): number => record.text.split(mark).length - 1;
  const semicolonOrTab = ([';', '\t'] as const).find((mark) => mark !== header.delimiter && times(mark) >= 2);
  if (semicolonOrTab !== undefined) return semicolonOrTab;
  // Commas can mark decimals in a line that has its cells all the same.
  return header.delimiter !== ',' && record.cells.length < 3 && times(',') >= 2 ? ',' : null;
}

function shapeFindings(context: RowContext): Finding[] {
  const { record, header } = context;
  const other = otherSeparator(context);
  if (other !== null) {
    const values = { used: DELIMITER_WORDS[other], header: DELIMITER_WORDS[header.delimiter] };
    return [make('readings-file/mixed-separators', context, 0, values)];
  }
  const count = record.cells.findLastIndex((cell) => cell.trim() !== '') + 1;
  const most = header.columns.length;
  if (count <= most) return [];
  const values = { count: String(count), most: String(most) };
  return [make('readings-file/too-many-cells', context, most, values)];
}

/** Cells that the engine does not read as numbers are checked here. */
function cellFindings(context: RowContext): Finding[] {
  return context.header.columns.flatMap((column, index) => {
    const value = (context.record.cells[index] ?? '').trim();
    if (value === '' || NUMBERS.includes(column) || rateOf(column) !== null) return [];
    if (/^[=@]/.test(value))
      return [make('readings-file/formula', context, index, { value, name: column ?? '' })];
    if (column === 'event' && !/^(?:final|first)$/i.test(value))
      return [make('readings-file/event', context, index, { value })];
    if (column === 'status' && !STATUS.test(value))
      return [make('readings-file/status', context, index, { value })];
    if (column !== 'confirmed') return [];
    return value
      .split(/\s+/)
      .filter((one) => !CONFIRMATION.test(one))
      .map((one) => make('readings-file/confirmed', context, index, { value: one }));
  });
}

/** What a cell says of the status: "estimated" for all registers, "estimated:import" for one. */
function statusOf(cell: string): Pick<ReadingRow, 'status' | 'estimated'> {
  const [word = '', registers] = cell.toLowerCase().split(':');
  if (word === '') return {};
  if (registers === undefined) return { status: word as 'actual' | 'estimated' };
  return { estimated: registers.split('+') as RegisterId[] };
}

/** The registers of rates, by what they count. */
function ratesOf({ record, header }: RowContext): Pick<ReadingRow, 'rates'> {
  const rates: { import?: Record<string, string>; export?: Record<string, string> } = {};
  header.columns.forEach((column, index) => {
    const own = rateOf(column);
    const text = (record.cells[index] ?? '').trim();
    if (own !== null && text !== '') rates[own.id] = { ...rates[own.id], [own.rate]: text };
  });
  return Object.keys(rates).length === 0 ? {} : { rates };
}

function assemble(context: RowContext): ReadingRow {
  const { record, header } = context;
  const cell = (column: Column): string => (record.cells[header.columns.indexOf(column)] ?? '').trim();
  const has = (column: Column): boolean => header.columns.includes(column) && cell(column) !== '';
  return {
    date: cell('date'),
    ...(header.columns.includes('import') ? { import: cell('import') } : {}),
    ...(header.columns.includes('export') ? { export: cell('export') } : {}),
    ...(has('generation') ? { generation: cell('generation') } : {}),
    ...ratesOf(context),
    ...(has('event') ? { event: cell('event').toLowerCase() as 'final' | 'first' } : {}),
    ...statusOf(cell('status')),
    ...(has('printed_days') ? { printedDays: cell('printed_days') } : {}),
    ...(has('confirmed') ? { confirmed: cell('confirmed').split(/\s+/) } : {}),
  };
}

/**
 * Read one row by the header.
 *
 * @returns the row as typed, or null when it cannot be told which cell is which; findings with places
 */
export function readRow(
  record: CsvRecord,
  header: Header,
): { value: ReadingRow | null; findings: Finding[] } {
  const context = { record, header };
  const shape = shapeFindings(context);
  const findings = shape.length > 0 ? shape : cellFindings(context);
  return { value: findings.length > 0 ? null : assemble(context), findings };
}
