import { addDays, calendarDay, dayNumber, daysInMonth, type DayNumber } from '../quantity/index.ts';
import type { Definition } from '../tariff/index.ts';
import { lastDayOfYear } from './close-day.ts';
import type { Operand, PastPeriod, SettleContext } from './settle-context.ts';
import { SettlementProblem } from './settlement-problem.ts';

/** A definition that looks back over periods. */
export type LookingBack = Definition & { is: 'running-total' | 'mean' };

/** The latest day of a name that is not after a day. */
function latestDayOfYear(monthDay: string, day: DayNumber): DayNumber {
  const [month = 1, date = 1] = monthDay.split('-').map((part) => Number.parseInt(part, 10));
  const { year } = calendarDay(day);
  const of = (inYear: number): DayNumber =>
    dayNumber({ year: inYear, month, day: Math.min(date, daysInMonth(inYear, month)) });
  return of(year) <= day ? of(year) : of(year - 1);
}

/** The day on which the year of a total begins. */
function yearBegin(since: string, label: string, { period, account }: SettleContext): DayNumber {
  const told = <Value>(value: Value | null, what: string): Value => {
    if (value === null) throw new SettlementProblem('settlement/account-day-needed', { what, ledger: label });
    return value;
  };
  if (since !== 'anniversary' && since !== 'chosen') return latestDayOfYear(since, period.from);
  const close =
    since === 'chosen'
      ? told(account.settlementDay, 'settlementDay')
      : lastDayOfYear(told(account.since, 'since'));
  return addDays(latestDayOfYear(close, addDays(period.from, -1)), 1);
}

/** The earlier periods that count, in order of time. */
export function pastPeriods(definition: LookingBack, context: SettleContext): readonly PastPeriod[] {
  const { past } = context;
  const since = definition.is === 'running-total' ? definition.since : undefined;
  if (since !== undefined) {
    const from = yearBegin(since, definition.label, context);
    return past.filter((one) => one.period.from >= from);
  }
  if (definition.periods === undefined) return past;
  const count = Number.parseInt(definition.periods, 10) - (definition.through === 'this-period' ? 1 : 0);
  return count === 0 ? [] : past.slice(-count);
}

/**
 * What a definition adds up or takes the mean of, in whole thousandths, in order of time.
 *
 * @throws SettlementProblem where there are fewer periods than a mean needs and the document refuses that
 */
export function pastValues(
  definition: LookingBack,
  context: SettleContext,
  operand: Operand,
): readonly number[] {
  const { of, through } = definition;
  const earlier = pastPeriods(definition, context).map(({ quantities }) => {
    const value = quantities[of];
    if (value === undefined) throw new SettlementProblem('settlement/past-unknown', { quantity: of });
    return value;
  });
  const values = through === 'this-period' ? [...earlier, context.values[operand.at] as number] : earlier;
  if (definition.is === 'mean' && definition.whenFewer === 'refused') {
    const wanted = Number.parseInt(definition.periods, 10);
    if (values.length < wanted) {
      const counts = { wanted: String(wanted), found: String(values.length) };
      throw new SettlementProblem('settlement/too-few-periods', { quantity: definition.label, ...counts });
    }
  }
  return values;
}
