import {
  decimalPlaces,
  decimalToWhole,
  roundLargeQuotient,
  wholeToDecimal,
  type DayNumber,
} from '../quantity/index.ts';
import type { Register } from './register.ts';

/** Two readings of a register that are known, in thousandths. */
export interface KnownReadings {
  readonly before: number;
  readonly after: number;
  readonly from: DayNumber;
  readonly to: DayNumber;
}

/** A whole number of a register's last digit, cut off. */
function cutToStep(numerator: bigint, denominator: bigint, { step }: Register): number {
  const steps = roundLargeQuotient(numerator, denominator * BigInt(step), 'floor');
  return Number.parseInt((steps * BigInt(step)).toString(), 10);
}

/**
 * What a register would show on a day between two readings if it had moved alike every day.
 *
 * @param register  whose last digit the result is cut to, as its display does
 * @param known     readings before and after, the later not the lower
 * @param day       from the first to the last
 * @returns         thousandths
 * @throws RangeError  for a day outside
 */
export function readingByDays(register: Register, known: KnownReadings, day: DayNumber): number {
  const { before, after, from, to } = known;
  if (day < from || day > to || to === from || after < before)
    throw new RangeError('a share by days needs two readings around the day, the later not the lower');
  const advance = BigInt(after - before) * BigInt(day - from);
  return before + cutToStep(advance, BigInt(to - from), register);
}

/** What an estimate from a daily mean is made of: units and days of a period that is known, as text. */
export interface DailyMean {
  readonly units: string;
  readonly days: number;
}

const half = (numerator: bigint, denominator: bigint): bigint =>
  roundLargeQuotient(numerator, denominator, 'half-up');

/**
 * An estimated reading from the mean use of a known period.
 *
 * Units a day to two decimals, half up; times the days, the same; divided by the multiplying factor, cut to
 * whole units; added to the last reading.
 *
 * @param last  the reading before, in whole units
 * @param mean  of a known period, such as the same month of last year
 * @param days  to estimate
 * @param factor  multiplying factor, as decimal text
 * @returns     the steps as decimal texts, and the reading
 * @source Revised VEE Monthly Rules, a proposal in a working group of the California Public Utilities
 *         Commission, 1990s
 * @example
 * estimateByMean('4521', { units: '1004', days: 31 }, 30, '40').reading //=> "4545"
 */
export function estimateByMean(
  last: string,
  mean: DailyMean,
  days: number,
  factor: string,
): { readonly perDay: string; readonly units: string; readonly advance: string; readonly reading: string } {
  const places = decimalPlaces(mean.units);
  const units = BigInt(decimalToWhole(mean.units, places));
  const perDay = half(units * 100n, 10n ** BigInt(places) * BigInt(mean.days));
  const used = perDay * BigInt(days);
  const factorPlaces = decimalPlaces(factor);
  const divisor = BigInt(decimalToWhole(factor, factorPlaces));
  const advance = roundLargeQuotient(used * 10n ** BigInt(factorPlaces), divisor * 100n, 'down');
  const text = (hundredths: bigint): string => wholeToDecimal(Number.parseInt(hundredths.toString(), 10), 2);
  const reading = BigInt(decimalToWhole(last, 0)) + advance;
  return {
    perDay: text(perDay),
    units: text(used),
    advance: advance.toString(),
    reading: reading.toString(),
  };
}
