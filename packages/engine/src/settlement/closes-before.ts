import type { DayNumber, Period } from '../quantity/index.ts';
import { inForceDuring, type InForce, type SettlementRule } from '../tariff/index.ts';
import { holdsDayOfYear } from './close-day.ts';

/**
 * A rule that would close the bank in a period, on a day before the rule that ends the period began.
 *
 * The last rule alone would pass over that day, or close the bank on it by terms that were not yet in force.
 *
 * @param rules   of the tariff, in order of time
 * @param period  the billing period
 * @returns       the earlier rule, or null when the last rule alone settles the period
 */
export function closesBefore(
  rules: readonly InForce<SettlementRule>[],
  period: Period,
): InForce<SettlementRule> | null {
  const earlier = inForceDuring(rules, period).slice(0, -1);
  const closing = earlier.find(({ item, period: inForce }) => {
    if (item.close.on === 'every-period') return false;
    const from = Math.max(period.from, inForce.from) as DayNumber;
    return holdsDayOfYear({ from, to: inForce.to }, item.close.on);
  });
  return closing ?? null;
}
