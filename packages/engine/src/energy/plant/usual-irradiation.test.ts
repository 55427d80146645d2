import { expect, it } from 'vitest';
import { dayOf as day } from '../../../../../tests/support/plant-days.ts';
import { usualIrradiation } from './usual-irradiation.ts';

it('adds the irradiation of a usual year up by days of each month', () => {
  const wattHours = [5000, 6000, ...Array<number>(10).fill(4000)];
  const period = { from: day('2025-01-21'), to: day('2025-02-11') };
  // 11 days of January at 5 and 10 of February at 6 kWh per m².
  expect(
    usualIrradiation(
      {
        expected: {
          kind: 'irradiation',
          per: 'day',
          wattHours,
          performanceRatio: { numerator: 75, denominator: 100 },
          source: '',
        },
      },
      period,
    ),
  ).toBe(115_000);
  // Of months: 5000 × 11 ÷ 31 + 6000 × 10 ÷ 28 = 1774.19 + 2142.86 = 3917.05.
  expect(
    usualIrradiation(
      {
        expected: {
          kind: 'irradiation',
          per: 'month',
          wattHours,
          performanceRatio: { numerator: 75, denominator: 100 },
          source: '',
        },
      },
      period,
    ),
  ).toBe(3917);
  expect(usualIrradiation({ expected: null }, period)).toBeNull();
});
