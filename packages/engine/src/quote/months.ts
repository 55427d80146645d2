import { decimalToWhole, MONTH_NAMES, type Finding, type Path } from '../quantity/index.ts';
import { MONTH_KEYS } from './document/fields.ts';
import { quoteFinding } from './findings.ts';
import { rangeFindings, type Range } from './ranges.ts';
import type { MonthlyUnits } from './quote-input.ts';

type ByMonth = Readonly<Record<string, string>>;

/** Names of calendar months, from 1 on. */
export const monthNames = (months: readonly number[]): string =>
  months.map((month) => MONTH_NAMES[month - 1] ?? '').join(', ');

/** Twelve values, or those that are there. */
export interface ReadMonths {
  /** null where a month is missing. */
  readonly values: readonly (number | null)[];
  readonly missing: readonly number[];
  readonly findings: readonly Finding[];
}

/** Values by calendar month in whole thousandths, with what is wrong with them. */
export function readMonths(table: ByMonth, range: Range, path: Path): ReadMonths {
  const known = new Set<string>(MONTH_KEYS);
  const findings = Object.entries(table).flatMap(([key, text]) =>
    known.has(key)
      ? rangeFindings(text, range, [...path, key])
      : [quoteFinding('quote/month-unknown', { path: [...path, key] }, { value: key })],
  );
  const values = MONTH_KEYS.map((key) => {
    const text = table[key];
    return text === undefined || rangeFindings(text, range, path).length > 0 ? null : decimalToWhole(text, 3);
  });
  const missing = MONTH_KEYS.flatMap((key, at) => (table[key] === undefined ? [at + 1] : []));
  return { values, missing, findings };
}

/** That months are missing, and what to do. */
export function missingFinding(missing: readonly number[], path: Path, remedy: string): Finding {
  return quoteFinding('quote/months-missing', { path }, { months: monthNames(missing), remedy });
}

/** That months were filled by a rule. */
export function filledFinding(missing: readonly number[], path: Path, fill: 'mean' | 'neighbours'): Finding {
  const rule = fill === 'mean' ? 'the mean of the months known' : 'the mean of the nearest months known';
  return quoteFinding('quote/months-filled', { path }, { months: monthNames(missing), rule });
}

/** A mean of whole numbers, rounded half-up to a whole step. */
const meanOf = (values: readonly number[], step: number): number => {
  const sum = values.reduce((total, value) => total + value, 0);
  const bottom = 2 * values.length * step;
  return Math.floor((2 * sum + values.length * step) / bottom) * step;
};

/** The nearest month known, going forward or back around the year. */
function nearest(values: readonly (number | null)[], month: number, direction: 1 | -1): number {
  for (let away = 1; away < 12; away += 1) {
    const value = values[(month + direction * away + 24) % 12];
    if (value !== null && value !== undefined) return value;
  }
  return 0;
}

/**
 * Fill months of which there is no bill.
 *
 * @param values  January first; at least one is known
 * @param step    filled values are whole multiples of it
 * @example
 * fillMonths([1000, null, 2000, ...Array(9).fill(1000)], 'neighbours', 1000)[1] //=> 2000
 */
export function fillMonths(
  values: readonly (number | null)[],
  fill: 'mean' | 'neighbours',
  step: number,
): MonthlyUnits {
  const known = values.filter((value) => value !== null);
  return values.map((value, month) => {
    if (value !== null) return value;
    if (fill === 'mean') return meanOf(known, step);
    return meanOf([nearest(values, month, -1), nearest(values, month, 1)], step);
  });
}
