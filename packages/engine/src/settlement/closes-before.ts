import type { DayNumber, Period } from '../quantity/index.ts';
import { inForceDuring, type InForce, type SettlementRule } from '../tariff/index.ts';
import { holdsDayOfYear } from './close-day.ts';
import { closesIn } from './ledger.ts';
import type { AccountDays } from './settle-context.ts';

const NO_DAYS: AccountDays = { since: null, settlementDay: null };

/** Whether a rule closes a bank or a ledger in some days; what closes in every period does not count. */
function closesOnADay(rule: SettlementRule, days: Period, account: AccountDays): boolean {
  if (rule.scheme === 'unit-netting') return closingDays(rule).some((day) => holdsDayOfYear(days, day));
  return (rule.ledgers ?? []).some((ledger) => {
    const { on } = ledger.close ?? {};
    const isTold = on === 'anniversary' ? account.since : on === 'chosen' ? account.settlementDay : '';
    const needsSince = ledger.close?.everyYears !== undefined && account.since === null;
    return on !== 'every-period' && isTold !== null && !needsSince && closesIn(ledger, days, account);
  });
}

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
 * @param account  what it tells of closing days; left out: nothing
 * @returns       the earlier rule, or null when the last rule alone settles the period
 */
export function closesBefore(
  rules: readonly InForce<SettlementRule>[],
  period: Period,
  account: AccountDays = NO_DAYS,
): InForce<SettlementRule> | null {
  const earlier = inForceDuring(rules, period).slice(0, -1);
  const closing = earlier.find(({ item, period: inForce }) => {
    const from = Math.max(period.from, inForce.from) as DayNumber;
    return closesOnADay(item, { from, to: inForce.to }, account);
  });
  return closing ?? null;
}
