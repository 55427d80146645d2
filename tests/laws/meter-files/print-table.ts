import { dayText, wholeToDecimal, type DayNumber } from '@unitbook/engine';
import { VALUE_QUALITIES, type ValueQuality } from '../../../packages/meter-files/src/stream.ts';
import type { TableColumn, TableLayout } from '../../../packages/meter-files/src/table/index.ts';
import type { TableFile } from '../../support/table.ts';
import { shownInZone } from './wall-clock.ts';

/** A value as it stands in a cell. */
interface Cell {
  readonly text: string;
  readonly quality: ValueQuality;
}

/** A row of a table: a point, a meter, a moment, and a cell for each register that has one. */
interface Row {
  readonly point: string;
  readonly meter: string;
  /** Minutes since 1970 on the clock of the chunks; of registers by the local clock. */
  readonly minute: number;
  readonly hasTime: boolean;
  readonly cells: Map<string, Cell>;
}

const SHIFTS = { kWh: 0, Wh: 3, MWh: -3 } as const;

/** A decimal text times a power of ten: a point moved, by the digits alone. */
function moved(text: string, by: number): string {
  const [whole = '', decimals = ''] = text.split('.');
  const digits = whole + decimals.padEnd(Math.max(0, by), '0');
  const places = Math.max(0, decimals.length - by);
  const padded = digits.padStart(places + 1, '0');
  return places === 0 ? padded : `${padded.slice(0, -places)}.${padded.slice(-places)}`;
}

const shiftOf = (column: TableColumn): number =>
  'unit' in column && column.is !== 'other' ? SHIFTS[column.unit] : 0;

/** What a layout says of the column of a register. */
function columnOf({ header, columns }: TableLayout, register: string): TableColumn {
  const column = columns[header.indexOf(register)];
  if (column === undefined) throw new RangeError(`no column ${register}`);
  return column;
}

/** Rows of a file whose streams of one point have the same moments, as those of every table have. */
function intervalRows(layout: TableLayout, { chunks }: TableFile): readonly Row[] {
  // Chunks are handed on as they end: the line says which comes first in the table.
  const inOrder = [...chunks].sort((one, other) => one.line - other.line);
  const streams = [...new Set(inOrder.map(({ stream }) => stream))];
  const groups = [...new Set(streams.map(({ point, meter }) => JSON.stringify([point, meter])))];
  return groups.flatMap((group) => {
    const own = streams.filter(({ point, meter }) => JSON.stringify([point, meter]) === group);
    const rows: Row[] = [];
    for (const [index, stream] of own.entries()) {
      const by = shiftOf(columnOf(layout, stream.register));
      let row = 0;
      for (const { start, minutes, places, values, qualities } of chunks.filter(
        (chunk) => chunk.stream === stream,
      )) {
        for (const [at, value] of values.entries()) {
          const minute = start + at * minutes;
          if (index === 0)
            rows.push({ point: stream.point, meter: stream.meter, minute, hasTime: true, cells: new Map() });
          const text = Number.isNaN(value) ? '' : moved(wholeToDecimal(value, places), by);
          const quality = VALUE_QUALITIES[qualities?.[at] ?? 0] ?? 'missing';
          if (rows[row]?.minute !== minute)
            throw new RangeError('streams of one table have the same moments');
          rows[row]?.cells.set(stream.register, { text, quality });
          row += 1;
        }
      }
    }
    return rows;
  });
}

function registerRows(layout: TableLayout, { registers }: TableFile): readonly Row[] {
  const rows: Row[] = [];
  let line = NaN;
  for (const { stream, day, minute, value, quality, line: own } of registers) {
    const { point, meter, register } = stream;
    if (own !== line)
      rows.push({
        point,
        meter,
        minute: day * 1440 + (minute ?? 0),
        hasTime: minute !== null,
        cells: new Map(),
      });
    line = own;
    rows.at(-1)?.cells.set(register, { text: moved(value, shiftOf(columnOf(layout, register))), quality });
  }
  return rows;
}

const two = (value: number): string => value.toString().padStart(2, '0');

const clockOffset = (clock: string): number => {
  const [, sign, hours = '0', minutes = '0'] = /^([+-])(\d\d):(\d\d)$/.exec(clock) ?? [];
  const size = Number.parseInt(hours, 10) * 60 + Number.parseInt(minutes, 10);
  return sign === '-' ? -size : size;
};

/** The local minute that a row names. */
function labelOf(layout: TableLayout, { clock }: TableFile, minute: number): number {
  const moment = minute + (layout.label === 'end' ? Number.parseInt(layout.minutes ?? '0', 10) : 0);
  if (layout.holds === 'registers' || clock.offset === null) return moment;
  if (layout.clock === 'local') return shownInZone(layout.zone ?? 'UTC', moment);
  return moment + clockOffset(layout.clock);
}

function dateOf(layout: TableLayout, day: number): string {
  const [year = '', month = '', date = ''] = dayText(day as DayNumber).split('-');
  if (layout.dateOrder === 'year-month-day') return `${year}-${month}-${date}`;
  return layout.dateOrder === 'day-month-year' ? `${date}/${month}/${year}` : `${month}/${date}/${year}`;
}

const quoted = (cell: string, delimiter: string): string =>
  cell.includes(delimiter) || /["\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;

/** The word for how the values of a row came about, for the column of quality at a place. */
function wordAt(layout: TableLayout, at: number, row: Row): string {
  const column = layout.columns[at];
  if (column?.is !== 'quality') return '';
  const left = layout.columns.slice(0, at).findLastIndex(({ is }) => is === 'quality');
  const isLast = !layout.columns.slice(at + 1).some(({ is }) => is === 'quality');
  const own = layout.header.flatMap((register, index) => {
    const cell = row.cells.get(register);
    const belongs = index > left && (index < at || isLast);
    return belongs && cell !== undefined && cell.text !== '' ? [cell.quality] : [];
  });
  return Object.entries(column.words).find(([, quality]) => quality === (own[0] ?? 'actual'))?.[0] ?? '';
}

/**
 * Print what was read from a table as a table by the same layout. Columns that are not read are left empty.
 *
 * @param file  read without a finding
 */
export function printTable(layout: TableLayout, file: TableFile): string {
  const rows = layout.holds === 'intervals' ? intervalRows(layout, file) : registerRows(layout, file);
  const lines = rows.map((row) => {
    const label = labelOf(layout, file, row.minute);
    const day = Math.floor(label / 1440);
    const minute = label - day * 1440;
    const offset = layout.clock === 'in-text' ? 'Z' : '';
    const time = `${two(Math.floor(minute / 60))}:${two(minute % 60)}${offset}`;
    const cells = layout.columns.map((column, at): string => {
      if (column.is === 'date') return dateOf(layout, day);
      if (column.is === 'time') return time;
      if (column.is === 'date-time')
        return row.hasTime ? `${dateOf(layout, day)} ${time}` : dateOf(layout, day);
      if (column.is === 'point') return row.point;
      if (column.is === 'meter') return row.meter;
      if (column.is === 'quality') return wordAt(layout, at, row);
      return (row.cells.get(layout.header[at] ?? '')?.text ?? '').replace('.', layout.decimalMark);
    });
    return cells.map((cell) => quoted(cell, layout.delimiter)).join(layout.delimiter);
  });
  const header = layout.header.map((name) => quoted(name, layout.delimiter)).join(layout.delimiter);
  return [header, ...lines, ''].join('\n');
}
