import { tableFinding } from '../findings.ts';
import type { Finding } from '@unitbook/engine';
import type { TableRow } from '../table-row.ts';
import type { Witness } from './decision.ts';
import { shown } from './decision.ts';
import { plainName } from './header-words.ts';
import { momentShape, type MomentShape } from './moment-shape.ts';
import { splitMoment } from '../moment-cell.ts';

/** The columns that give the time of a row; -1 where there is none. */
export interface TimeColumns {
  readonly dateTime: number;
  readonly date: number;
  readonly time: number;
  /** Further columns of dates, not read. */
  readonly spare: readonly number[];
}

const BEGINS = /\b(?:start|starts|begin\w*|from|von|van|vanaf|inizio|dalle|inicio|desde|debut)\b/;
const ENDS = /\b(?:end|ends|ending|ende|until|to|bis|tot|eind\w*|fine|alle|fin|hasta|fim|ate)\b/;
const TIME_NAME = /\b(?:time|zeit|uhrzeit|tijd|tijdstip|ora|hora|heure|hour|hhmm|interval)\b/;

/**
 * Which end of its interval the name of a column says a time is; null where it says nothing.
 *
 * @example
 * labelInName('Interval end') //=> "end"
 */
export function labelInName(name: string): 'start' | 'end' | null {
  const plain = plainName(name);
  if (BEGINS.test(plain)) return 'start';
  return ENDS.test(plain) ? 'end' : null;
}

const ENOUGH = 0.8;

/** What most cells of a column look like. */
function shapeOf(data: readonly TableRow[], at: number): MomentShape {
  const shapes = data.flatMap(({ cells }) => {
    const cell = (cells[at] ?? '').trim();
    return cell === '' ? [] : [momentShape(cell)];
  });
  const share = (...wanted: readonly MomentShape[]): boolean =>
    shapes.length > 0 && shapes.filter((shape) => wanted.includes(shape)).length >= ENOUGH * shapes.length;
  if (share('time')) return 'time';
  if (share('date')) return 'date';
  return share('date', 'date-time') ? 'date-time' : null;
}

/** Times without a colon, such as 0015, in a column whose name says that it holds times. */
function isBareTime(data: readonly TableRow[], at: number, name: string): boolean {
  const cells = data.map((row) => (row.cells[at] ?? '').trim()).filter((cell) => cell !== '');
  return (
    TIME_NAME.test(plainName(name)) &&
    cells.length > 0 &&
    cells.every((cell) => /^(?:[01]\d|2[0-4])[0-5]\d(?:[0-5]\d)?$/.test(cell))
  );
}

function first(columns: readonly number[], names: readonly string[]): number {
  return columns.find((at) => labelInName(names[at] ?? '') === 'start') ?? columns[0] ?? -1;
}

/** Find the columns that give the time of a row. */
export function timeColumns(data: readonly TableRow[], names: readonly string[]): TimeColumns {
  const shapes = names.map((_, at) => shapeOf(data, at));
  const having = (shape: MomentShape): readonly number[] =>
    [...names.keys()].filter((at) => shapes[at] === shape);
  const both = having('date-time');
  const dates = having('date');
  if (both.length > 0) {
    const dateTime = first(both, names);
    return { dateTime, date: -1, time: -1, spare: [...both, ...dates].filter((at) => at !== dateTime) };
  }
  const times = [...names.keys()].filter(
    (at) => shapes[at] === 'time' || (shapes[at] === null && isBareTime(data, at, names[at] ?? '')),
  );
  const date = first(dates, names);
  const time = date < 0 ? -1 : first(times, names);
  const spare = [...dates, ...times].filter((at) => at !== date && at !== time);
  return { dateTime: -1, date, time, spare };
}

/** The cells that hold the dates of a table. */
export function dateCells(data: readonly TableRow[], { dateTime, date }: TimeColumns): readonly Witness[] {
  const at = Math.max(dateTime, date);
  return at < 0 ? [] : data.map((row) => ({ row, at })).filter((one) => momentShape(shown(one)) !== null);
}

/** The cells that hold the times of day of a table. */
export function timeTexts(data: readonly TableRow[], columns: TimeColumns): readonly string[] {
  const { dateTime, time } = columns;
  if (dateTime >= 0) return dateCells(data, columns).map((one) => splitMoment(shown(one))[1]);
  return time < 0 ? [] : data.map(({ cells }) => (cells[time] ?? '').trim());
}

const UNITS: readonly (readonly [pattern: RegExp, unit: string])[] = [
  [/^(?:1\d|20|21)\d{8}$/, 'seconds'],
  [/^1\d{12}$/, 'milliseconds'],
];

/** A column that may count seconds since 1970, as a question: such counts are not read. */
export function unixTimeFinding(
  data: readonly TableRow[],
  width: number,
): { at: Witness; finding: Finding } | null {
  for (let at = 0; at < width; at += 1) {
    const cells = data.map((row) => ({ row, at })).filter((one) => shown(one) !== '');
    const found = UNITS.find(
      ([pattern]) => cells.length > 0 && cells.every((one) => pattern.test(shown(one))),
    );
    const [witness] = cells;
    if (found !== undefined && witness !== undefined)
      return {
        at: witness,
        finding: tableFinding('table/unix-time', { path: [] }, { value: shown(witness), unit: found[1] }),
      };
  }
  return null;
}
