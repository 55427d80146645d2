import { readFileSync } from 'node:fs';
import { addDays, parseDay, type DayNumber } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { chartRows } from '../chart/chart-rows.ts';
import { emptyHousehold, type Household } from '../../household/household.ts';
import { readHousehold } from '../../household/read-household.ts';
import { csvText } from '../csv.ts';
import { judgementWords } from './judgement-words.ts';
import { dayRows, monthRows, percentOf } from './plant-rows.ts';
import { chartOf, viewPlant } from './view-plant.ts';

const path = new URL('../../../../../tariffs-examples/households/demo.json', import.meta.url);
const read = readHousehold(readFileSync(path, 'utf8'));
const demo: Household = read.kind === 'household' ? read.household : emptyHousehold('en-IN');
const today = '2026-05-01';
const day = (text: string): DayNumber => parseDay(text) ?? (0 as DayNumber);

/** The demo with another plant; null: without one. */
function withPlant(plant: Household['plant'] | null): Household {
  const { plant: own, ...rest } = demo;
  return plant === null
    ? rest
    : ({ ...rest, ...(plant === undefined ? { plant: own } : { plant }) } as Household);
}

// Irradiation × days × 3.3 kWp × 0.75, that is × 2.475, is expected of a month; one sigma is the root of
// 10² + 1² percent, that is 10.05 %. What was made is the difference of the readings.
//   April 2025      6.0 × 30 × 2.475 = 445.5     427.6 made   95.98 %
//   May             5.8 × 31 × 2.475 = 445.005   371.7        83.53 %, 1.64 sigma below
//   June            4.5 × 30 × 2.475 = 334.125   317.5        95.02 %
//   July            3.8 × 31 × 2.475 = 291.555   276.4        94.80 %
//   August          4.0 × 29 × 2.475 = 287.1     289.7       100.91 %, two days of outage left out
//   September       4.6 × 30 × 2.475 = 341.55    338.6        99.14 %
//   October         5.0 × 31 × 2.475 = 383.625   391.2       101.97 %
//   November        5.0 × 30 × 2.475 = 371.25    386.7       104.16 %
//   December        4.8 × 31 × 2.475 = 368.28    377.7       102.56 %
//   January 2026    5.2 × 31 × 2.475 = 398.97    401.5       100.63 %
//   February        5.9 × 28 × 2.475 = 408.87    410.2       100.33 %
//   March           6.2 × 31 × 2.475 = 475.695   452.5        95.12 %
const SHARES = [
  '96.0',
  '83.5',
  '95.0',
  '94.8',
  '100.9',
  '99.1',
  '102.0',
  '104.2',
  '102.6',
  '100.6',
  '100.3',
  '95.1',
];

it('judges the months of the demo as worked out by hand', () => {
  const { months, findings, isBlocked, hasMeter } = viewPlant({ household: demo, today, days: [] });
  expect(months.map(({ share }) => percentOf(share))).toEqual(SHARES);
  expect(months.map(judgementWords)).toEqual(SHARES.map((share) => (share === '83.5' ? 'watch' : 'fine')));
  expect([findings, isBlocked, hasMeter]).toEqual([[], false, true]);
});

it('writes the months as lines of a file', () => {
  const { heads, lines } = monthRows(viewPlant({ household: demo, today, days: [] }));
  const text = csvText(heads, lines);
  // May: 371.7 ÷ 3.3 ÷ 31 = 3.63343; ÷ 24 = 15.139 %; ÷ (3.3 × 5.8 × 31 = 593.34) = 0.62645.
  expect(text.split('\n')[2]).toBe(
    '2025-05-01,2025-06-01,31,31,371.7,3.6334,3.6334,15.1,0.6265,445.0,83.5,10.0,watch',
  );
  // August: 289.7 ÷ 3.3 ÷ 31 = 2.83187, and ÷ 29 = 3.02717; ÷ (3.3 × 4 × 31 = 409.2) = 0.70797.
  expect(text.split('\n')[5]).toBe(
    '2025-08-01,2025-09-01,31,29,289.7,2.8319,3.0272,11.8,0.7080,287.1,100.9,10.0,fine',
  );
  expect(text.split('\n')).toHaveLength(14);
});

it('draws made beside expected, and letters the diary in order of days', () => {
  const view = viewPlant({ household: demo, today, days: [] });
  const chart = chartOf(view, null);
  expect(chart?.by).toBe('months');
  // May: 445.005 ÷ 3.3 ÷ 31 = 4.35, less and more by 10.0 %.
  expect(chart?.bands[1]).toMatchObject({ low: 39_150, middle: 43_500, high: 47_850 });
  expect(chart?.bars[1]).toMatchObject({ value: 36_334, judgement: 'watch' });
  expect(chart?.outages).toEqual([{ from: day('2025-08-14'), to: day('2025-08-16') }]);
  expect(chart?.marks.map(({ sign }) => sign)).toEqual(['A', 'B', 'C', 'D']);
  // March: 6.2 × 0.75 = 4.65, and a tenth more is 5.115.
  expect(chart?.top).toBe(6);
  expect(chartRows(view, 'months').lines[1]).toEqual([
    '1 June 2025',
    '3.63',
    '4.35',
    '3.92 to 4.79',
    'watch',
    'A cleaned',
  ]);
});

it('shows yields where nothing is expected yet, by the size that the account says', () => {
  const view = viewPlant({ household: withPlant(null), today, days: [] });
  expect(view.months.map(judgementWords)).toEqual(SHARES.map(() => 'cannot be told'));
  expect(view.months[11]?.finding?.code).toBe('plant/month-cannot-be-told');
  expect(monthRows(view).lines[11]?.[5]).toBe('4.4233');
});

it('has no months while the size of the plant is missing', () => {
  const view = viewPlant({
    household: withPlant({ format: 'unitbook-plant-1', capacity: [{ kWp: '' }] }),
    today,
    days: [],
  });
  expect([view.plant, view.months, chartOf(view, null)]).toEqual([null, [], null]);
});

it('says that later months wait for a reading', () => {
  const readings = demo.readings.map((row, at) => (at === 5 ? { ...row, generation: 'x' } : row));
  const view = viewPlant({ household: { ...demo, readings }, today, days: [] });
  expect([view.months.length, view.isBlocked]).toEqual([4, true]);
});

it('goes by single days where no meter counts what the plant makes', () => {
  const { grid } = demo.account.meters;
  const household = { ...demo, account: { ...demo.account, meters: { grid } } };
  const days = Array.from({ length: 45 }, (_, at) => ({
    day: addDays(day('2025-04-01'), at),
    wattHours: at === 35 ? null : 13_200 + at,
  }));
  const view = viewPlant({ household, today, days });
  // April alone is whole: 30 × 13.2 and the sum of 0 to 29 watt-hours, 435.
  expect(view.months.map(({ made }) => made.numerator)).toEqual([396_435]);
  expect(view.hasMeter).toBe(false);
  const chart = chartOf(view, { from: day('2025-05-06'), to: day('2025-05-07') });
  expect([chart?.by, chart?.bars.length]).toEqual(['days', 44]);
  // 13.2 ÷ 3.3 = 4; of April 6.0 × 0.75 = 4.5 is expected, less and more by 10.0 %.
  expect(dayRows(view).lines[0]).toEqual([
    '2025-04-01',
    '13.2',
    '4.0000',
    '4.5000',
    '4.0500',
    '4.9500',
    '',
    '',
  ]);
  expect(dayRows(view).lines[35]).toEqual([
    '2025-05-06',
    '',
    '',
    '4.3500',
    '3.9150',
    '4.7850',
    '',
    'missing-days',
  ]);
  expect(chartRows(view, 'days').lines[35]?.slice(0, 2)).toEqual(['6 May 2025', 'not known']);
});
