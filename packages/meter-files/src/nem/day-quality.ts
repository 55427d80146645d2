import type { DayValues } from './day-values.ts';
import { qualityIndex, readQuality, UNKNOWN_QUALITY, VARIABLE } from './quality.ts';
import { cellOf, placeOf, shown, type NemPlace, type NemRecord, type Report } from './record.ts';
import { FIRST_VALUE } from './day-values.ts';

const ESTIMATED = qualityIndex('estimated');

const isWord = (cell: string): boolean => /^\s*[a-z]/i.test(cell);

/** Say that there are not as many values as there should be. */
function wrongCount(record: NemRecord, count: number, report: Report): void {
  const word = record.cells.findIndex((cell, index) => index >= FIRST_VALUE && isWord(cell));
  const end = word < 0 ? record.cells.length : word;
  const found = `${end - FIRST_VALUE} values${word < 0 ? ' and no quality' : ''}`;
  const values = { what: found, count: String(count), minutes: String(1440 / count) };
  const code = end < FIRST_VALUE + count ? 'nem/too-few-values' : 'nem/too-many-values';
  report(code, placeOf(record, end), values);
}

/**
 * Read the quality of a record 300, which stands behind its values: where it does not, there are too few
 * values or too many.
 *
 * @returns an index into VALUE_QUALITIES, VARIABLE, or null where the record cannot be used
 */
export function readDayQuality(record: NemRecord, count: number, report: Report): number | null {
  const at = FIRST_VALUE + count;
  const text = cellOf(record, at);
  const quality = readQuality(text);
  if (quality !== UNKNOWN_QUALITY) return quality;
  const word = record.cells.findIndex((cell, index) => index >= FIRST_VALUE && isWord(cell));
  const isThere = word < 0 ? record.cells.length >= at && text === '' : word === at;
  if (!isThere) {
    wrongCount(record, count, report);
    return null;
  }
  report('nem/quality', placeOf(record, at), { quality: shown(text), flags: 'A, E, F, S, N or V' });
  return ESTIMATED;
}

/** Begin to take records 400: until they say otherwise, a quality that varies is an estimate. */
export function awaitRanges(day: DayValues): void {
  day.qualities.fill(ESTIMATED);
  day.told.fill(0);
}

/** The number of an interval, from 1; NaN where it is none. */
const interval = (text: string): number => (/^\d{1,3}$/.test(text) ? Number.parseInt(text, 10) : NaN);

/** Take a record 400: the quality of the intervals from one to another. */
export function takeRange(record: NemRecord, day: DayValues, report: Report): void {
  const [from, through] = [interval(cellOf(record, 1)), interval(cellOf(record, 2))];
  if (!(from >= 1 && from <= through && through <= day.count)) {
    const [first, last] = [shown(cellOf(record, 1)), shown(cellOf(record, 2))];
    report('nem/range', placeOf(record, 1), { first, last, count: String(day.count) });
    return;
  }
  const text = cellOf(record, 3);
  let quality = readQuality(text);
  if (quality === UNKNOWN_QUALITY || quality === VARIABLE) {
    report('nem/quality', placeOf(record, 3), { quality: shown(text), flags: 'A, E, F, S or N' });
    quality = ESTIMATED;
  }
  day.qualities.fill(quality, from - 1, through);
  for (let at = from - 1; at < through; at += 1) day.told[at] = Math.min(2, (day.told[at] ?? 0) + 1);
}

/** Say which intervals are not in one record 400 each. */
export function checkRanges(day: DayValues, place: NemPlace, report: Report): void {
  const check = (code: 'nem/range-missing' | 'nem/range-twice', times: number): void => {
    const count = day.told.reduce((sum, told) => sum + (told === times ? 1 : 0), 0);
    if (count === 0) return;
    const first = day.told.indexOf(times) + 1;
    const last = day.told.lastIndexOf(times) + 1;
    const what =
      count === 1 ? `interval ${first}` : `${count} intervals, the first ${first}, the last ${last}`;
    report(code, place, { what, count: String(day.count) });
  };
  check('nem/range-missing', 0);
  check('nem/range-twice', 2);
}
