import { dayText, type DayNumber } from '@unitbook/engine';
import type { TableColumn, TableLayout } from '../../../packages/meter-files/src/table/index.ts';
import { minuteOf } from '../../support/meter-chunks.ts';
import type { Random } from '../../support/random.ts';
import { shownInZone } from './wall-clock.ts';

/** A value that a table has to be read to: 10^-18 kWh (or of the unit of the file), null for a missing one. */
export interface ExpectedValue {
  readonly point: string;
  readonly register: string;
  /** Of an interval its beginning, of a register its moment; minutes since 1970 on the clock of the chunks. */
  readonly minute: number;
  readonly amount: bigint | null;
  readonly quality: string;
}

/** A table with what it has to be read to. */
export interface RandomTable {
  readonly layout: TableLayout;
  readonly text: string;
  readonly expected: readonly ExpectedValue[];
}

/** Decimal places in which amounts are compared: 15 of a Wh, and 3 more. */
const PLACES = 18;
const SHIFTS = { kWh: 0, Wh: -3, MWh: 3 } as const;
const ZONES = [
  'Europe/Amsterdam',
  'Australia/Adelaide',
  'Australia/Lord_Howe',
  'America/St_Johns',
  'Asia/Kathmandu',
];
/** Around changes of clocks, and at the end of a year and of a February. */
const BEGINNINGS = [
  '2025-03-29',
  '2025-04-05',
  '2025-10-25',
  '2025-10-04',
  '2025-11-01',
  '2024-12-31',
  '2024-02-28',
  '2023-06-01',
];
const WORDS = { A: 'actual', E: 'estimated', S: 'substituted', '': 'actual' } as const;
const MONTHS = [
  'January',
  'Feb',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'Sept',
  'Oct',
  'November',
  'Dec',
];

const two = (value: number): string => value.toString().padStart(2, '0');

/** A number in digits, and how many of them are decimals. */
interface Digits {
  readonly whole: string;
  readonly decimals: string;
}

function randomDigits(random: Random): Digits {
  const long = random.chance(5) ? 12 : 5;
  const digit = (): string => String(random.below(10));
  const many = (count: number): string => Array.from({ length: count }, digit).join('');
  return { whole: many(1 + random.below(long)), decimals: many(random.below(4)) };
}

/** Digits by the marks of a layout, grouped or not, with a sign where there is one. */
function written({ whole, decimals }: Digits, layout: TableLayout, random: Random): string {
  const { grouping, decimalMark } = layout;
  const isGrouped = grouping !== '' && random.chance(60);
  const digits = isGrouped ? whole.replace(/\B(?=(?:\d{3})+$)/g, grouping) : whole;
  return decimals === '' ? digits : digits + decimalMark + decimals;
}

function amountOf({ whole, decimals }: Digits, column: TableColumn): bigint {
  const shift = 'unit' in column && column.is !== 'other' ? SHIFTS[column.unit] : 0;
  return BigInt(
    (whole + decimals).padEnd(whole.length + decimals.length + PLACES - decimals.length + shift, '0'),
  );
}

function writtenDay(day: number, layout: TableLayout, random: Random): string {
  const [year = '', month = '', date = ''] = dayText(day as DayNumber).split('-');
  const name = MONTHS[Number.parseInt(month, 10) - 1] ?? '';
  const separator = random.pick(['-', '/', '.']);
  const short = (text: string): string => (random.chance(30) ? text.replace(/^0/, '') : text);
  if (layout.dateOrder === 'year-month-day')
    return random.chance(20) ? year + month + date : [year, month, date].join(separator);
  if (random.chance(15))
    return layout.dateOrder === 'day-month-year'
      ? `${short(date)} ${name} ${year}`
      : `${name} ${short(date)} ${year}`;
  const parts =
    layout.dateOrder === 'day-month-year' ? [short(date), short(month)] : [short(month), short(date)];
  return [...parts, random.chance(15) ? year.slice(2) : year].join(separator);
}

function writtenTime(minute: number, random: Random): string {
  const [hour, rest] = [Math.floor(minute / 60), minute % 60];
  if (random.chance(15) && hour < 24)
    return `${hour % 12 === 0 ? 12 : hour % 12}:${two(rest)} ${hour < 12 ? 'AM' : 'pm'}`;
  return `${random.chance(20) ? String(hour) : two(hour)}:${two(rest)}${random.pick(['', '', ':00', ':00.000'])}`;
}

const offsetText = (minutes: number, random: Random): string => {
  const size = Math.abs(minutes);
  const sign = minutes < 0 ? '-' : '+';
  if (minutes === 0 && random.chance(50)) return 'Z';
  return `${random.pick(['', ' '])}${sign}${two(Math.floor(size / 60))}${random.pick([':', ''])}${two(size % 60)}`;
};

const fixedOffset = (clock: string): number => {
  const [, sign = '+', hours = '0', minutes = '0'] = /^([+-])(\d\d):(\d\d)$/.exec(clock) ?? [];
  const size = Number.parseInt(hours, 10) * 60 + Number.parseInt(minutes, 10);
  return sign === '-' ? -size : size;
};

/** Everything random that a table has once. */
interface Shape {
  readonly layout: TableLayout;
  readonly minutes: number;
  /** Minutes from one row to the next. */
  readonly step: number;
  readonly hasTime: boolean;
}

function valueColumns(random: Random): {
  readonly names: readonly string[];
  readonly columns: readonly TableColumn[];
} {
  const count = 1 + random.below(3);
  const names: string[] = [];
  const columns: TableColumn[] = [];
  for (let at = 0; at < count; at += 1) {
    const is = random.pick(['import', 'export', 'generation', 'net', 'other'] as const);
    const rate = random.chance(30) ? { rate: String(1 + random.below(4)) } : {};
    names.push(`value ${String(at)}`);
    columns.push({ is, ...rate, unit: random.pick(['kWh', 'kWh', 'Wh', 'MWh'] as const) });
    if (random.chance(25)) {
      names.push(`how ${String(at)}`);
      columns.push({ is: 'quality', words: { ...WORDS } });
    }
    if (random.chance(20)) {
      names.push(`note, "${String(at)}"`);
      columns.push({ is: 'nothing' });
    }
  }
  return { names, columns };
}

function randomShape(random: Random): Shape {
  const holds = random.pick(['registers', 'intervals'] as const);
  const minutes = random.pick(['1', '5', '15', '30', '60', '1440'] as const);
  const isDays = minutes === '1440';
  const isSplit = random.chance(30);
  const hasTime = isSplit ? random.chance(70) || (holds === 'intervals' && !isDays) : true;
  const clock = random.pick(['local', 'local', 'utc', 'in-text', '+05:30', '-03:30', '+13:45']);
  const decimalMark = random.pick(['.', ','] as const);
  const grouping = random.pick(['', ',', '.', ' ', "'"] as const);
  const values = valueColumns(random);
  const times: readonly TableColumn[] = isSplit
    ? [{ is: 'date' }, ...(hasTime ? [{ is: 'time' } as const] : [])]
    : [{ is: 'date-time' }];
  const layout: TableLayout = {
    format: 'unitbook-columns-1',
    header: ['point', ...(times.length === 2 ? ['day', 'time'] : ['when']), ...values.names],
    holds,
    delimiter: random.pick([',', ';', '\t', '|'] as const),
    decimalMark,
    grouping: grouping === decimalMark ? '' : grouping,
    dateOrder: random.pick(['year-month-day', 'day-month-year', 'month-day-year'] as const),
    clock: hasTime ? clock : 'local',
    ...(clock === 'local' && holds === 'intervals' && hasTime && random.chance(60)
      ? { zone: random.pick(ZONES) }
      : {}),
    ...(holds === 'intervals' ? { label: random.pick(['start', 'end'] as const), minutes } : {}),
    columns: [{ is: 'point' }, ...times, ...values.columns],
    confirmed: true,
  };
  const length = Number.parseInt(minutes, 10);
  return { layout, minutes: length, step: hasTime ? length : 1440, hasTime };
}

/** Beginnings of intervals, or moments of readings, in UTC or on the local clock where no offset is known. */
function randomMinutes({ layout, step, hasTime }: Shape, random: Random): readonly number[] {
  const first = minuteOf(random.pick(BEGINNINGS)) + (hasTime && step < 1440 ? random.below(40) * 60 : 0);
  const minutes: number[] = [];
  let at = first;
  for (let count = 5 + random.below(60); count > 0; count -= 1) {
    minutes.push(at);
    // An hour that comes twice can only be told where no row of it is missing.
    at += layout.zone === undefined && random.chance(5) ? step * (2 + random.below(20)) : step;
  }
  return minutes;
}

/** How a moment stands in the cells of a row. */
function momentCells(shape: Shape, minute: number, random: Random): readonly string[] {
  const { layout, hasTime } = shape;
  const isLocalZone = layout.clock === 'local' && layout.zone !== undefined;
  const isDays = layout.holds === 'intervals' && layout.minutes === '1440';
  const back = layout.label === 'end' ? shape.minutes : 0;
  const keepsLocal = isDays && (layout.clock === 'local' || layout.clock === 'in-text');
  const inText = layout.clock === 'in-text' ? random.pick([0, 60, -210, 345]) : 0;
  const zoned = isLocalZone && !isDays && layout.holds === 'intervals';
  const moment = minute + back;
  const offset = zoned
    ? shownInZone(layout.zone ?? '', moment) - moment
    : layout.clock === 'in-text'
      ? inText
      : fixedOffset(layout.clock);
  const isShifted = layout.holds === 'intervals' && !keepsLocal;
  const local = moment + (isShifted ? offset : 0);
  const day = Math.floor(local / 1440);
  const isMidnight = local === day * 1440;
  const isLate = isMidnight && hasTime && random.chance(30);
  const date = writtenDay(isLate ? day - 1 : day, layout, random);
  if (!hasTime) return [date];
  const suffix = layout.clock === 'in-text' ? offsetText(inText, random) : '';
  const time = (isLate ? '24:00' : writtenTime(local - day * 1440, random)) + suffix;
  return layout.columns.some(({ is }) => is === 'time') ? [date, time] : [`${date} ${time}`];
}

/** A cell as CSV has it, quoted where it has to be and sometimes besides. */
function quoted(cell: string, delimiter: string, random: Random): string {
  const must = cell.includes(delimiter) || cell.includes('"') || cell.includes('\n');
  return must || random.chance(10) ? `"${cell.replaceAll('"', '""')}"` : cell;
}

/** How the value of a column came about, by the column of quality that goes with it. */
function qualityAt(columns: readonly TableColumn[], at: number, cells: readonly string[]): string {
  const right = columns.findIndex((column, index) => index > at && column.is === 'quality');
  const found =
    right >= 0 ? right : columns.findLastIndex((column, index) => index < at && column.is === 'quality');
  return found < 0 ? 'actual' : WORDS[cells[found] as keyof typeof WORDS];
}

interface Row {
  readonly cells: readonly string[];
  readonly digits: readonly (Digits | null)[];
}

function randomRow(shape: Shape, start: readonly string[], random: Random): Row {
  const digits: (Digits | null)[] = [];
  const rest = shape.layout.columns.slice(start.length).map((column): string => {
    if (!('unit' in column)) {
      digits.push(null);
      return column.is === 'quality'
        ? random.pick(Object.keys(WORDS))
        : random.pick(['', 'x', 'two\nlines', 'a "b"']);
    }
    const own = random.chance(8) ? null : randomDigits(random);
    digits.push(own);
    return own === null ? '' : written(own, shape.layout, random);
  });
  return { cells: [...start, ...rest], digits };
}

function expectedOf(shape: Shape, { cells, digits }: Row, minute: number): readonly ExpectedValue[] {
  const { columns, header, holds } = shape.layout;
  const first = columns.length - digits.length;
  return digits.flatMap((own, index): ExpectedValue[] => {
    const at = first + index;
    const column = columns[at];
    if (column === undefined || !('unit' in column)) return [];
    if (own === null && holds === 'registers') return [];
    const place = { point: cells[0] ?? '', register: header[at] ?? '', minute };
    if (own === null) return [{ ...place, amount: null, quality: 'missing' }];
    return [{ ...place, amount: amountOf(own, column), quality: qualityAt(columns, at, cells) }];
  });
}

/** A table by any layout, written in any of the ways that the layout allows, and what it has to be read to. */
export function randomTable(random: Random): RandomTable {
  const shape = randomShape(random);
  const { layout } = shape;
  const row = (cells: readonly string[]): string =>
    cells.map((cell) => quoted(cell, layout.delimiter, random)).join(layout.delimiter);
  const lines = [row(layout.header)];
  const expected: ExpectedValue[] = [];
  for (const point of random.chance(40) ? ['P', 'Q; "7"'] : ['']) {
    for (const minute of randomMinutes(shape, random)) {
      const made = randomRow(shape, [point, ...momentCells(shape, minute, random)], random);
      lines.push(row(made.cells) + (random.chance(3) ? layout.delimiter : ''));
      expected.push(...expectedOf(shape, made, minute));
      if (random.chance(3)) lines.push(random.pick(['', ' ', layout.delimiter.repeat(3)]));
    }
  }
  const text = lines.join('\n').replaceAll('\n', random.pick(['\n', '\r\n', '\r']));
  return {
    layout,
    text: (random.chance(20) ? '\ufeff' : '') + text + (random.chance(50) ? '\n' : ''),
    expected,
  };
}

/** A text in pieces that end anywhere. */
export function randomPieces(text: string, random: Random): readonly string[] {
  const pieces: string[] = [];
  const most = random.pick([1, 7, 300, 5000]);
  for (let at = 0; at < text.length;) {
    const end = at + 1 + random.below(most);
    pieces.push(text.slice(at, end));
    at = end;
  }
  return pieces;
}
