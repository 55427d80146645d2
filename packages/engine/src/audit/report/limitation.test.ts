import { expect, it } from 'vitest';
import { dayOf } from '../../../../../tests/support/make.ts';
import { dayText } from '../../quantity/index.ts';
import { checkLimit, monthsLater, type LimitDays } from './limitation.ts';

const DAYS: LimitDays = {
  'period-end': dayOf('2023-06-01'),
  issued: dayOf('2023-06-03'),
  due: dayOf('2023-06-18'),
  paid: null,
};

it.each([
  ['2023-08-17', 24, '2025-08-17'],
  ['2023-08-31', 6, '2024-02-29'],
  ['2022-08-31', 6, '2023-02-28'],
  ['2023-12-31', 1, '2024-01-31'],
  ['2023-01-15', 12, '2024-01-15'],
])('%s and %d months are %s', (from, months, to) => {
  expect(dayText(monthsLater(dayOf(from), months))).toBe(to);
});

it.each([
  ['2025-06-18', true],
  ['2025-06-19', false],
])('is in time until the same day of the month: %s', (on, isInTime) => {
  const check = checkLimit({ months: '24', from: 'due', clause: 'SC 8.6' }, DAYS, dayOf(on));
  expect([dayText(check.last), check.isInTime, check.isAssumed]).toEqual(['2025-06-18', isInTime, false]);
});

it('takes the end of the period, and says so, where the day of the rule is not known', () => {
  const check = checkLimit({ months: '24', from: 'paid', clause: 'SC 8.6' }, DAYS, dayOf('2025-06-01'));
  expect([check.from, dayText(check.last), check.isInTime, check.isAssumed]).toEqual([
    'period-end',
    '2025-06-01',
    true,
    true,
  ]);
});
