import {
  calendarDay,
  checkPlant,
  parseDay,
  plantDays,
  quotientText,
  decimalToWhole,
  type Finding,
  type PlantDay,
  type PlantDocument,
} from '@unitbook/engine';
import { describe, expect, it } from 'vitest';

/** Measured days of two homes; where they come from stands in the first line of each file. */
const FILES = import.meta.glob<string>('./data/plant/*.csv', {
  query: '?raw',
  import: 'default',
  eager: true,
});

function daysOf(name: string): readonly PlantDay[] {
  return (FILES[`./data/plant/${name}-generation.csv`] ?? '')
    .split('\n')
    .filter((line) => /^\d/.test(line))
    .map((line) => {
      const [date = '', units = ''] = line.split(',');
      const day = parseDay(date);
      if (day === null) throw new Error(`${date} is no day`);
      return { day, wattHours: decimalToWhole(units, 3) };
    });
}

const LENGTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** A table as a quote would have it: the mean of each month, over all the years there are. */
function tableOf(days: readonly PlantDay[]): string[] {
  return LENGTHS.map((length, month) => {
    const own = days.filter(({ day, wattHours }) => calendarDay(day).month === month + 1 && wattHours !== 0);
    const sum = own.reduce((total, { wattHours }) => total + (wattHours ?? 0), 0);
    return quotientText(sum * length, own.length * 1000, 0);
  });
}

const findingsOf = (
  days: readonly PlantDay[],
  kWp: string,
  more: Partial<PlantDocument>,
): readonly Finding[] => {
  const { value } = checkPlant({ format: 'unitbook-plant-1', capacity: [{ kWp }], ...more });
  if (value === null) throw new Error('no plant');
  return plantDays(days, value).findings;
};

const told = (findings: readonly Finding[]): readonly string[] =>
  findings.map(({ code, found }) => `${code}: ${found}`);

/**
 * Everything that is told stands in the data: the first home began its plant on 18 May 2020, and made nothing
 * on 23 December 2022, after a fortnight of 0.1 to 9 units a day; the second made nothing on three winter days.
 */
describe.each([
  [
    'home-1',
    '11',
    [
      'plant/nothing-yet: 0 units on 17 days, from 2020-05-01 to 2020-05-17, at the beginning',
      'plant/zero-days: 0 units on 2022-12-23',
    ],
  ],
  // Its best day made 33 units: 4.5 kWp would make that in seven hours of full sun.
  [
    'home-2',
    '4.5',
    [
      'plant/zero-days: 0 units on 2 days, from 2019-12-12 to 2019-12-13',
      'plant/zero-days: 0 units on 2021-12-27',
    ],
  ],
] as const)('%s, over all its years', (name, kWp, expected) => {
  const days = daysOf(name);

  it('has the days that were measured', () => {
    expect(days.length).toBe(name === 'home-1' ? 975 : 841);
  });

  it('gives no false alarm by its own monthly means', () => {
    expect(told(findingsOf(days, kWp, { expected: { monthly: tableOf(days) } }))).toEqual(expected);
  });

  it('gives no false alarm by the year before', () => {
    expect(told(findingsOf(days, kWp, { expected: { lastYears: true } }))).toEqual(expected);
  });

  it.each(['2021-05-15', '2021-06-01', '2021-06-15', '2021-07-01', '2021-07-15', '2021-08-01'])(
    'shows that half of the plant is out from %s on',
    (text) => {
      const from = parseDay(text) ?? 0;
      const faulty = days.map(({ day, wattHours }) => ({
        day,
        wattHours: day < from ? wattHours : Math.floor((wattHours ?? 0) / 2),
      }));
      const falls = findingsOf(faulty, kWp, { expected: { monthly: tableOf(days) } }).filter(
        ({ code }) => code === 'plant/step-down',
      );
      expect(falls.map(({ values }) => values['part'])).toEqual(['1/2 of the plant']);
      const found = parseDay(falls[0]?.values['day'] ?? '') ?? 0;
      expect(Math.abs(found - from) <= 10).toBe(true);
    },
  );
});
