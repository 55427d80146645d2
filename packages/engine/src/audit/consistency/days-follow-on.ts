import { dayText } from '../../quantity/index.ts';
import { atBill, type ConsistencyCheck } from './check.ts';

/** (5) A period begins on the day on which the one before ended: no day is billed twice, and none is left out. */
export const DAYS_FOLLOW_ON: ConsistencyCheck = {
  id: 'days-follow-on',
  holds: 'a period begins on the day on which the one before ended',
  find: ({ bill, before }) => {
    if (before === null || bill.period.from === before.period.to) return [];
    const apart = bill.period.from - before.period.to;
    const values = {
      from: dayText(bill.period.from),
      before: dayText(before.period.to),
      days: (apart < 0 ? -apart : apart).toString(),
    };
    return [atBill(bill, ['from'], apart < 0 ? 'check/days-overlap' : 'check/days-missing', values)];
  },
};
