import type { DayNumber, Period } from '../quantity/index.ts';
import { inForceDuring, type InForce, type SettlementRule } from '../tariff/index.ts';
import { holdsDayOfYear } from './close-day.ts';

/** The days of the year on which a rule closes a bank or a ledger. */
export function closingDays(rule: SettlementRule): readonly string[] {
  if (rule.scheme === 'unit-netting') return rule.close.on === 'every-period' ? [] : [rule.close.on];
  return (rule.ledgers ?? []).flatMap(({ close }) => (Array.isArray(close?.on) ? close.on : []));
}

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
    const from = Math.max(period.from, inForce.from) as DayNumber;
    return closingDays(item).some((day) => holdsDayOfYear({ from, to: inForce.to }, day));
  });
  return closing ?? null;
}
