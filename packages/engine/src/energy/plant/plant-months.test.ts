import { describe, expect, it } from 'vitest';
import { unexplained } from '../../../../../tests/support/recompute.ts';
import { daysFrom, dayOf, plantOf, TWENTY_A_DAY } from '../../../../../tests/support/plant-days.ts';
import { exactText, type Figure } from '../../quantity/index.ts';
import type { GenerationDay, GenerationPeriod } from './last-years.ts';
import type { PlantMonth } from './month-notes.ts';
import type { Plant } from './plant.ts';
import { plantMonths } from './plant-months.ts';

type Row = readonly [from: string, to: string, units: number];

const periodOf = ([from, to, units]: Row, more: Partial<GenerationPeriod> = {}): GenerationPeriod => ({
  period: { from: dayOf(from), to: dayOf(to) },
  wattHours: Math.round(units * 1000),
  ...more,
});

const textOf = (figure: Figure | null): string | null =>
  figure === null ? null : exactText(figure.numerator, figure.denominator);

/** The last month; every figure of it follows from what it shows. */
function monthOf(
  rows: readonly GenerationPeriod[],
  plant: Plant,
  days: readonly GenerationDay[] = [],
): PlantMonth {
  const month = plantMonths(rows, plant, days).value.at(-1);
  if (month === undefined) throw new Error('no month');
  const { generation, specificYield, specificYieldInService, capacityUtilisation, performanceRatio } = month;
  const figures = [
    generation,
    specificYield,
    specificYieldInService,
    capacityUtilisation,
    performanceRatio,
    month.expected,
    month.share,
  ];
  expect(figures.filter((figure) => figure !== null).flatMap(unexplained)).toEqual([]);
  return month;
}

const TWO_MONTHS = ['620', '280', ...TWENTY_A_DAY.slice(2)];
const LAST_YEARS = plantOf({ expected: { lastYears: true } });

describe('what is expected of a period', () => {
  it('follows the days of each month: 11 × 620 ÷ 31 + 10 × 280 ÷ 28 = 320', () => {
    const month = monthOf(
      [periodOf(['2025-01-21', '2025-02-11', 320])],
      plantOf({ expected: { monthly: TWO_MONTHS } }),
    );
    expect(textOf(month.expected)).toBe('320');
    expect([textOf(month.share), month.judgement]).toEqual(['1', 'fine']);
    expect(month.basis).toBe('the monthly table of the quote, by days of each month');
  });

  it('of a leap February is the month in 29 parts: 28 × 280 ÷ 29', () => {
    const month = monthOf(
      [periodOf(['2024-02-01', '2024-02-29', 280])],
      plantOf({ expected: { monthly: TWO_MONTHS } }),
    );
    expect(textOf(month.expected)).toBe('7840/29');
  });

  it('by irradiation of a day: 5 × 30 × 5 × 0.8 = 600; of a month: 150 × 5 × 0.8', () => {
    const june = [periodOf(['2025-06-01', '2025-07-01', 600], { irradiation: 160_000 })];
    const by = (unit: 'kWh/m2/day' | 'kWh/m2/month', value: string) =>
      plantOf({
        expected: {
          irradiation: Array.from({ length: 12 }, () => value),
          unit,
          performanceRatio: '0.8',
          source: 'a map',
        },
      });
    const month = monthOf(june, by('kWh/m2/day', '5'));
    expect(textOf(month.expected)).toBe('600');
    expect(textOf(monthOf(june, by('kWh/m2/month', '150')).expected)).toBe('600');
    // 600 ÷ 5 ÷ 160 = 0.75; 600 ÷ 5 ÷ 30 = 4; 4 ÷ 24.
    expect(textOf(month.performanceRatio)).toBe('0.75');
    expect(textOf(month.specificYield)).toBe('4');
    expect(textOf(month.capacityUtilisation)).toBe('1/6');
  });

  it('grows with capacity: 15 days of 10, 15 days of 10 × 5 ÷ 3', () => {
    const plant = plantOf({
      capacity: [{ kWp: '3' }, { from: '2025-06-16', kWp: '5' }],
      expected: { monthly: Array.from({ length: 12 }, () => '300') },
    });
    const month = monthOf([periodOf(['2025-06-01', '2025-07-01', 400], { irradiation: 150_000 })], plant);
    expect(textOf(month.expected)).toBe('400');
    // (3 × 15 + 5 × 15) ÷ 30 = 4 kWp: 400 ÷ 4 ÷ 30, 400 ÷ 4 ÷ 150.
    expect(textOf(month.specificYield)).toBe('10/3');
    expect(textOf(month.performanceRatio)).toBe('2/3');
  });

  it('leaves out the days of an outage: 20 of 30', () => {
    const plant = plantOf({ diary: [{ date: '2025-06-11', through: '2025-06-20', did: 'outage' }] });
    const month = monthOf([periodOf(['2025-06-01', '2025-07-01', 400])], plant);
    expect([textOf(month.expected), month.daysInService, month.judgement]).toEqual(['400', 20, 'fine']);
    // 400 ÷ 5 ÷ 20 and ÷ 30.
    expect([textOf(month.specificYieldInService), textOf(month.specificYield)]).toEqual(['4', '8/3']);
  });
});

describe('expected by earlier years', () => {
  const now = periodOf(['2025-06-01', '2025-07-01', 600]);

  it('is the mean of the same days, by period or by day', () => {
    const one = monthOf([periodOf(['2024-06-01', '2024-07-01', 540]), now], LAST_YEARS);
    expect([textOf(one.expected), one.basis]).toEqual(['540', 'the same days of 2024, by capacity']);
    const earlier = [
      periodOf(['2023-06-01', '2023-07-01', 660]),
      periodOf(['2024-06-01', '2024-07-01', 540]),
    ];
    const two = monthOf([...earlier, now], LAST_YEARS);
    expect([textOf(two.expected), two.basis]).toEqual(['600', 'the same days of 2024, 2023, by capacity']);
    const days = daysFrom(
      '2024-06-01',
      Array.from({ length: 30 }, () => 18_000),
    );
    expect(textOf(monthOf([now], LAST_YEARS, days).expected)).toBe('540');
  });

  it('takes the days that overlap: 15 of 30 from 600, 15 of 30 from 300', () => {
    const earlier = [
      periodOf(['2024-05-17', '2024-06-16', 600]),
      periodOf(['2024-06-16', '2024-07-16', 300]),
    ];
    expect(textOf(monthOf([...earlier, now], LAST_YEARS).expected)).toBe('450');
  });

  it('is scaled by capacity: 300 of 3 kWp are 500 of 5', () => {
    const plant = plantOf({
      capacity: [{ kWp: '3' }, { from: '2025-01-01', kWp: '5' }],
      expected: { lastYears: true },
    });
    expect(textOf(monthOf([periodOf(['2024-06-01', '2024-07-01', 300]), now], plant).expected)).toBe('500');
  });

  it('leaves out an outage of the earlier year: 600 in 20 days are 900 in 30', () => {
    const plant = plantOf({
      expected: { lastYears: true },
      diary: [{ date: '2024-06-05', through: '2024-06-14', did: 'outage' }],
    });
    expect(textOf(monthOf([periodOf(['2024-06-01', '2024-07-01', 600]), now], plant).expected)).toBe('900');
  });

  it('of a period from 29 February is by the days from 1 March: 290 in 29 days are 300 in 30', () => {
    const rows = [periodOf(['2023-03-01', '2023-03-30', 290]), periodOf(['2024-02-29', '2024-03-30', 300])];
    expect(textOf(monthOf(rows, LAST_YEARS).expected)).toBe('300');
  });

  it.each([
    ['no earlier year', []],
    ['a day of it missing', [periodOf(['2024-06-01', '2024-06-30', 580])]],
    ['an estimated reading', [periodOf(['2024-06-01', '2024-07-01', 600], { isEstimated: true })]],
  ])('cannot be told with %s', (_, earlier) => {
    const { value, findings } = plantMonths([...earlier, now], LAST_YEARS);
    expect(value.at(-1)).toMatchObject({ judgement: 'cannot-be-told', expected: null, share: null });
    expect(findings.at(-1)?.code).toBe('plant/month-cannot-be-told');
  });

  it('a long period is no measure of itself', () => {
    const long = periodOf(['2022-01-01', '2025-01-01', 9000]);
    expect(monthOf([long], LAST_YEARS).judgement).toBe('cannot-be-told');
  });
});

describe('the judgement', () => {
  const at = (units: number, plant: Plant, to = '2025-07-01') =>
    monthOf([periodOf(['2025-06-01', to, units])], plant).judgement;

  it('of 600 expected with one sigma of 10 %: 540 is fine, 480 to be watched, below to be looked at', () => {
    const plant = plantOf();
    expect([540, 539.999, 480, 479.999].map((units) => at(units, plant))).toEqual([
      'fine',
      'watch',
      'watch',
      'look-at-it',
    ]);
    expect([600, 660.001, 720, 720.001].map((units) => at(units, plant))).toEqual([
      'fine',
      'fine',
      'fine',
      'look-at-it',
    ]);
  });

  it('counts the meter in: √(10² + 1²) = 10.05 %, 60.299 units', () => {
    const plant = plantOf({ meterClass: '1' });
    expect([at(539.702, plant), at(539.7, plant)]).toEqual(['fine', 'watch']);
    const { judged } = monthOf([periodOf(['2025-06-01', '2025-07-01', 480])], plant);
    // 120 ÷ 60.2993 = 1.99.
    expect(judged).toMatchObject({ sigmaPercent: '10.0', sigmas: '-1.99', side: 'below' });
  });

  it('goes by local data: 4.5 % of 600 are 27', () => {
    const plant = plantOf({ uncertainty: { yearToYear: '4.5' } });
    expect([at(573, plant), at(572.999, plant), at(546, plant), at(545.999, plant)]).toEqual([
      'fine',
      'watch',
      'watch',
      'look-at-it',
    ]);
  });

  it('is more careful with fewer days: of 14, sigma is √2 × 10 %, 39.598 of 280 units', () => {
    const plant = plantOf();
    expect([at(240.403, plant, '2025-06-15'), at(240.402, plant, '2025-06-15')]).toEqual(['fine', 'watch']);
    expect([at(126, plant, '2025-06-08'), at(100, plant, '2025-06-07')]).toEqual(['fine', 'cannot-be-told']);
  });

  it('is more careful with one earlier year: √2 × 10 % of 600 are 84.853; with two √1.5 × 10 %, 73.485', () => {
    const one = [periodOf(['2024-06-01', '2024-07-01', 600])];
    const two = [periodOf(['2023-06-01', '2023-07-01', 600]), ...one];
    const by = (earlier: readonly GenerationPeriod[], units: number) =>
      monthOf([...earlier, periodOf(['2025-06-01', '2025-07-01', units])], LAST_YEARS).judgement;
    expect([by(one, 515.148), by(one, 515.147), by(two, 526.516), by(two, 526.515)]).toEqual([
      'fine',
      'watch',
      'fine',
      'watch',
    ]);
  });

  it('is none where a reading was estimated, nothing is expected or the plant was not there', () => {
    const june: Row = ['2025-06-01', '2025-07-01', 10];
    const judged = (plant: Plant, more: Partial<GenerationPeriod> = {}) =>
      monthOf([periodOf(june, more)], plant).judgement;
    expect(judged(plantOf(), { isEstimated: true })).toBe('cannot-be-told');
    const bare = plantOf({ capacity: [{ from: '2025-06-02', kWp: '5' }] });
    expect(judged(bare)).toBe('cannot-be-told');
    expect(
      judged(
        plantOf({ expected: { monthly: TWENTY_A_DAY.map((text, month) => (month === 5 ? '0' : text)) } }),
      ),
    ).toBe('cannot-be-told');
  });
});

describe('a plant that was not there yet', () => {
  it('has no yields, and those of its own days once it was', () => {
    const plant = plantOf({ capacity: [{ from: '2025-06-21', kWp: '5' }] });
    const before = monthOf([periodOf(['2025-05-01', '2025-06-01', 0])], plant);
    expect([before.specificYield, before.capacityUtilisation, before.daysInService]).toEqual([null, null, 0]);
    const half = monthOf([periodOf(['2025-06-01', '2025-07-01', 200], { irradiation: 150_000 })], plant);
    // 200 ÷ 5 ÷ 10; the irradiation is of 30 days.
    expect([textOf(half.specificYield), half.performanceRatio]).toEqual(['4', null]);
  });
});

it('a wrong call throws', () => {
  const plant = plantOf();
  expect(() => plantMonths([periodOf(['2025-06-01', '2025-06-01', 1])], plant)).toThrow(RangeError);
  expect(() => plantMonths([periodOf(['2025-06-01', '2025-06-02', -1])], plant)).toThrow(RangeError);
  expect(() => plantMonths([periodOf(['2025-06-01', '2025-06-02', 1], { wattHours: 0.5 })], plant)).toThrow(
    RangeError,
  );
  expect(plantMonths([], plant)).toEqual({ value: [], findings: [] });
});
