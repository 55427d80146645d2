import { MOST_DIGITS, NO_DIGITS, readDigits, TOO_LARGE } from './digits.ts';
import { qualityIndex } from './quality.ts';
import { cellOf, placeOf, shown, type NemRecord, type Report } from './record.ts';

/** In which cell of a record 300 the first value stands. */
export const FIRST_VALUE = 2;

/** The values of one day of one stream. One object serves all days of that many intervals. */
export interface DayValues {
  readonly count: number;
  /** Whole numbers of 10^-places; NaN where there is none. */
  readonly values: Float64Array;
  /** Decimals as written, while the values are read. */
  readonly decimals: Uint8Array;
  /** Indexes into VALUE_QUALITIES. */
  readonly qualities: Uint8Array;
  /** How many records 400 tell the quality of each: 0, 1, or 2 for several. */
  readonly told: Uint8Array;
  places: number;
  /** Whether any value is NaN. */
  hasMissing: boolean;
}

/** Room for the values of days of so many intervals. */
export function dayValues(count: number): DayValues {
  return {
    count,
    values: new Float64Array(count),
    decimals: new Uint8Array(count),
    qualities: new Uint8Array(count),
    told: new Uint8Array(count),
    places: 0,
    hasMissing: false,
  };
}

/** How a value that was left out is told, by what it is instead. */
const KINDS = [
  [NO_DIGITS.notANumber, 'nem/value', 'as a value'],
  [NO_DIGITS.negative, 'nem/negative-value', 'as a value'],
  [NO_DIGITS.tooMany, 'nem/too-many-digits', 'as a value'],
] as const;

const POWERS: readonly number[] = Array.from({ length: 2 * MOST_DIGITS + 4 }, (_, power) => 10 ** power);

/** "x" as a value, and how many more there are in the record: one finding for all of a kind. */
function countedCells(record: NemRecord, count: number, first: number): string {
  const cell = `"${shown(cellOf(record, FIRST_VALUE + first))}"`;
  return count === 1 ? `${cell} as a value` : `${cell} as a value, and ${count - 1} more such on this line`;
}

/** Say what the values are that are no numbers, and mark all that are not there. */
function leaveOut(record: NemRecord, { values }: DayValues, report: Report): void {
  for (const [kind, code] of KINDS) {
    const first = values.indexOf(kind);
    if (first < 0) continue;
    const count = values.reduce((sum, value) => sum + (value === kind ? 1 : 0), 0);
    report(code, placeOf(record, FIRST_VALUE + first), { what: countedCells(record, count, first) });
  }
  for (let at = 0; at < values.length; at += 1) if ((values[at] ?? 0) < 0) values[at] = NaN;
}

/** Bring all values to the same places; one that has too many digits with these is left out. */
function scale({ values, decimals }: DayValues, places: number): boolean {
  let areAllKept = true;
  for (let at = 0; at < values.length; at += 1) {
    const power = places - (decimals[at] ?? 0);
    const value = values[at] ?? 0;
    if (power === 0 || value <= 0) continue;
    const scaled = value * (POWERS[power] ?? 0);
    // Below 10^15 the product is exact; a product that is not is above it, rounded or not.
    values[at] = scaled < TOO_LARGE ? scaled : NO_DIGITS.tooMany;
    areAllKept &&= scaled < TOO_LARGE;
  }
  return areAllKept;
}

/**
 * Read the values of a record 300 exactly, as whole numbers of as many decimal places of a kWh as the finest
 * of them needs.
 *
 * @param day     takes the values, the places, and whether any are missing; qualities are for `settle`
 * @param shift   decimal places by which a kWh is finer than the unit
 */
export function readValues(record: NemRecord, day: DayValues, shift: number, report: Report): void {
  const { count, values, decimals } = day;
  const finest = MOST_DIGITS - Math.max(0, shift);
  let most = 0;
  let least = MOST_DIGITS;
  let areAllNumbers = true;
  for (let at = 0; at < count; at += 1) {
    let value = readDigits(record.cells[FIRST_VALUE + at] ?? '', decimals, at);
    const own = decimals[at] ?? 0;
    if (value >= 0 && own > finest) value = NO_DIGITS.tooMany;
    values[at] = value;
    if (value < 0) areAllNumbers = false;
    else {
      if (own > most) most = own;
      if (own < least) least = own;
    }
  }
  day.places = Math.max(0, most + shift);
  const written = day.places - shift;
  const areAllKept = least >= written || scale(day, written);
  day.hasMissing = !(areAllNumbers && areAllKept);
  if (day.hasMissing) leaveOut(record, day, report);
}

const MISSING = qualityIndex('missing');

/**
 * Make values and qualities agree: no value where the quality says that there is none, and the other way
 * round.
 */
export function settle(record: NemRecord, day: DayValues, report: Report): void {
  const { count, values, qualities } = day;
  let contradicting = 0;
  let first = 0;
  for (let at = 0; at < count; at += 1) {
    const value = values[at] ?? NaN;
    if (Number.isNaN(value)) qualities[at] = MISSING;
    else if (qualities[at] === MISSING) {
      if (value !== 0 && contradicting === 0) first = at;
      if (value !== 0) contradicting += 1;
      values[at] = NaN;
    }
  }
  if (contradicting === 0) return;
  const what = countedCells(record, contradicting, first);
  report('nem/value-of-no-quality', placeOf(record, FIRST_VALUE + first), { what });
}
