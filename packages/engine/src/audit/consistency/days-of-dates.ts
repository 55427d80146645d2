import { periodDays } from '../../quantity/index.ts';
import { atBill, figureOf, type ConsistencyCheck } from './check.ts';
import { compare, textOf, wholeNumber } from './exact.ts';

/** The printed number of days is that of the printed dates. */
export const DAYS_OF_DATES: ConsistencyCheck = {
  id: 'days-of-dates',
  holds: 'the number of days is that of the dates',
  find: ({ bill }) => {
    const printed = figureOf(bill, 'days');
    const days = periodDays(bill.period);
    if (printed === undefined || compare(printed, wholeNumber(days)) === 0) return [];
    const { from, to } = bill.document;
    const values = { printed: textOf(printed), days: days.toString(), from, to };
    return [atBill(bill, ['days'], 'check/days-off-dates', values)];
  },
};
