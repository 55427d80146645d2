import { monthParts, roundLargeQuotient, type Period } from '../../quantity/index.ts';
import type { Plant } from './plant.ts';

/** A number that 28, 29, 30 and 31 divide. */
const MONTH_LENGTHS = 377_580;

/**
 * The irradiation of a usual year in a period, by days of each month, in whole Wh per m², rounded half-up.
 *
 * @returns null where the plant is not judged by irradiation
 * @example
 * usualIrradiation({ expected: { kind: 'irradiation', per: 'day', wattHours: [5000] } }, { from: 0, to: 31 }) //=> 155000
 */
export function usualIrradiation({ expected }: Pick<Plant, 'expected'>, period: Period): number | null {
  if (expected?.kind !== 'irradiation') return null;
  const { per, wattHours } = expected;
  const sum = monthParts(period).reduce((total, { month, days, length }) => {
    const scale = per === 'day' ? MONTH_LENGTHS : MONTH_LENGTHS / length;
    return total + BigInt(wattHours[month - 1] ?? 0) * BigInt(days) * BigInt(scale);
  }, 0n);
  return Number.parseInt(roundLargeQuotient(sum, BigInt(MONTH_LENGTHS), 'half-up').toString(), 10);
}
