import { addDays, parseDay, readAccount, type DayNumber } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { emptyHousehold, type Household } from '../../household/household.ts';
import { viewBook } from '../../view/view-book.ts';
import { calendarMonths, dayPeriods, hasGenerationMeter, readPeriods } from './periods.ts';

const day = (text: string): DayNumber => parseDay(text) ?? (0 as DayNumber);
const blank = emptyHousehold('en-IN');
const row = (date: string, generation: string, more: object = {}) => ({
  date,
  import: '100',
  export: '50',
  generation,
  ...more,
});

function household(readings: Household['readings'], factor = '1'): Household {
  const { meters } = blank.account;
  const generation = meters.generation;
  return {
    ...blank,
    account: {
      ...blank.account,
      id: 'T',
      sanctionedLoad: '3',
      plantCapacity: '3.3',
      meters: {
        grid: meters.grid,
        ...(generation === undefined ? {} : { generation: { ...generation, multiplyingFactor: factor } }),
      },
    },
    readings,
  };
}

const periodsOf = (one: Household, today = '') =>
  readPeriods(viewBook({ household: one, tariff: null, today }), today);

it('measures what the plant made from reading to reading, with the factor of its meter', () => {
  const [first] = periodsOf(household([row('2025-04-01', '10.4'), row('2025-05-01', '53.1')], '10'));
  // 42.7 units of the register, ten times.
  expect(first?.wattHours).toBe(427_000);
  expect(first?.generation?.inputs.length).toBeGreaterThan(0);
  expect(first?.period).toEqual({ from: day('2025-04-01'), to: day('2025-05-01') });
});

it('knows that an estimate of the generation register is one, and of another register is none', () => {
  const ends = [row('2025-04-01', '10'), row('2025-05-01', '53')];
  const estimated = (registers: readonly string[]) =>
    periodsOf(
      household([
        ends[0] ?? row('', ''),
        { ...row('2025-05-01', '53'), estimated: registers },
      ] as Household['readings']),
    )[0]?.isEstimated;
  expect([estimated(['import']), estimated(['generation'])]).toEqual([false, true]);
});

it('goes up to the first reading that cannot be used, and not beyond today', () => {
  const rows = [
    row('2025-04-01', '10'),
    row('2025-05-01', '53'),
    row('2025-06-01', 'x'),
    row('2025-07-01', '120'),
  ];
  expect(periodsOf(household(rows))).toHaveLength(1);
  expect(periodsOf(household(rows.slice(0, 2)), '2025-04-15')).toEqual([]);
});

it('has nothing to tell without a meter or an account', () => {
  const { grid } = household([]).account.meters;
  const rows = [row('2025-04-01', ''), row('2025-05-01', '')];
  const without = household(rows);
  expect(periodsOf({ ...without, account: { ...without.account, meters: { grid } } })).toEqual([]);
  expect(periodsOf({ ...blank, readings: rows })).toEqual([]);
  expect(hasGenerationMeter(null)).toBe(false);
  expect(hasGenerationMeter(readAccount(JSON.stringify(without.account)).value)).toBe(true);
});

it('makes months of single days where every day of them is known', () => {
  const days = Array.from({ length: 61 }, (_, at) => ({
    day: addDays(day('2025-04-01'), at),
    wattHours: at === 40 ? null : 10_000,
  }));
  // April has 30 days of 10 units; of May the 11th is not known.
  expect(dayPeriods(days).map(({ period, wattHours }) => [period.to - period.from, wattHours])).toEqual([
    [30, 300_000],
  ]);
  expect(dayPeriods([])).toEqual([]);
});

it('takes the calendar months that a span touches whole', () => {
  const months = calendarMonths(day('2024-12-31'), day('2025-02-02'));
  expect(months.map(({ from, to }) => to - from)).toEqual([31, 31, 28]);
  expect(calendarMonths(day('2025-02-01'), day('2025-02-01'))).toEqual([]);
});
