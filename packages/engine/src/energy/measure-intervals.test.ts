import { describe, expect, it } from 'vitest';
import { dayOf, periodOf, valueOf } from '../../../../tests/support/make.ts';
import type { Outcome, Period } from '../quantity/index.ts';
import type { TimeBlocks } from '../tariff/index.ts';
import { blockClock } from './block-clock.ts';
import { intervalRowsToColumns, type IntervalColumns, type IntervalRow } from './interval-columns.ts';
import type { IntervalRules, NettingWindow } from './interval-windows.ts';
import {
  intervalFigure,
  measureIntervals,
  measureIntervalYear,
  type IntervalPeriod,
} from './measure-intervals.ts';

const DAY = dayOf('2025-10-26');
const ONE_DAY: Period = periodOf('2025-10-26', '2025-10-27');
const NIGHT_AND_DAY: TimeBlocks = {
  clause: 'T 1',
  blocks: ['night', 'day'].map((id) => ({ id, label: id })),
  calendar: [
    { block: 'night', from: '22:00', to: '06:00' },
    { block: 'day', from: '06:00', to: '22:00' },
  ],
};

type Values = readonly [taken: number, given: number];

/** Rows of some minutes each from midnight of a day, 100 Wh taken and 50 given where nothing else is said. */
function rowsOf(
  count: number,
  minutes: number,
  at: (row: number) => Values = () => [100, 50],
): IntervalRow[] {
  return Array.from({ length: count }, (_, row) => {
    const [taken, given] = at(row);
    return { start: DAY * 1440 + row * minutes, import: taken, export: given };
  });
}

function measure(
  rows: readonly IntervalRow[],
  minutes: IntervalColumns['minutes'],
  rules: Partial<IntervalRules> & { readonly period?: Period } = {},
): Outcome<IntervalPeriod | null> {
  const { period = ONE_DAY, ...more } = rules;
  const clock = blockClock(NIGHT_AND_DAY, minutes);
  return measureIntervals(intervalRowsToColumns(rows, minutes), period, { clock, windows: [], ...more });
}

function good(outcome: Outcome<IntervalPeriod | null>): IntervalPeriod {
  expect(outcome.findings).toEqual([]);
  if (outcome.value === null) throw new Error('no value');
  return outcome.value;
}

const codesOf = ({ findings }: Outcome<unknown>): string[] => findings.map(({ code }) => code);
const netting = (within: NettingWindow['within'], hours: Partial<NettingWindow> = {}): NettingWindow => ({
  id: within,
  of: 'import',
  less: 'export',
  within,
  ...hours,
});

describe('the sums of a period', () => {
  it('are by channel and by block', () => {
    // 32 quarter hours of night, 64 of day
    const value = good(measure(rowsOf(96, 15), 15));
    expect(value.intervals).toBe(96);
    expect(value.totals).toEqual({ import: 9600, export: 4800, generation: null });
    expect(value.blocks).toEqual([
      { id: 'night', import: 3200, export: 1600, generation: null },
      { id: 'day', import: 6400, export: 3200, generation: null },
    ]);
  });

  it('leave out what lies outside the period', () => {
    const value = good(measure(rowsOf(96 * 3, 15), 15, { period: periodOf('2025-10-27', '2025-10-28') }));
    expect([value.intervals, value.totals.import]).toEqual([96, 9600]);
  });

  it('are the same from columns of 32 bits', () => {
    const { starts } = intervalRowsToColumns(rowsOf(96, 15), 15);
    const column = new Int32Array(96).fill(7);
    const columns = { starts, minutes: 15, import: column, export: null, generation: column } as const;
    const rules = { clock: blockClock(NIGHT_AND_DAY, 15), windows: [] };
    expect(good(measureIntervals(columns, ONE_DAY, rules)).totals).toEqual({
      import: 672,
      export: null,
      generation: 672,
    });
    const bad = Int32Array.from(column, (value, row) => (row === 5 ? -1 : value));
    expect(codesOf(measureIntervals({ ...columns, import: bad }, ONE_DAY, rules))).toEqual([
      'energy/interval-not-whole',
    ]);
  });

  it('are exact up to the largest whole number of a double', () => {
    const large = (first: number) =>
      measure(
        rowsOf(24, 60, (row) => [row === 0 ? first : 0, 0]),
        60,
      );
    expect(good(large(9_007_199_254_740_991)).totals.import).toBe(9_007_199_254_740_991);
    const above = measure(
      rowsOf(24, 60, (row) => [row < 2 ? 4_503_599_627_370_496 : 0, 0]),
      60,
    );
    expect(codesOf(above)).toEqual(['energy/interval-too-large']);
  });

  it('become figures in kWh', () => {
    const figure = intervalFigure({ id: 'import@day', label: 'Import by day' }, 6405);
    expect([valueOf(figure), figure.unit, figure.clause, figure.operation]).toEqual([
      '6.405',
      'kWh',
      'intervals',
      'given',
    ]);
  });
});

describe('netting', () => {
  // Quarter hours in turn: 100 taken, then 100 given; every hour takes 200 and gives 200.
  const turns = (row: number): Values => (row % 2 === 0 ? [100, 0] : [0, 100]);

  it('is inside the interval or inside the hour', () => {
    const value = good(
      measure(rowsOf(96, 15, turns), 15, { windows: [netting('interval'), netting('hour')] }),
    );
    expect(value.windows).toEqual([
      // 48 quarter hours of 100: 16 by night, 32 by day
      { id: 'interval', total: 4800, blocks: [1600, 3200] },
      { id: 'hour', total: 0, blocks: [0, 0] },
    ]);
    expect(value.totals.import).toBe(4800);
  });

  it('inside some hours of the day leaves everything outside them', () => {
    // 12:00 to 16:00: 16 quarter hours take 1600 and give 1000; outside, 80 take 8000.
    const rows = rowsOf(96, 15, (row) => (row >= 48 && row < 64 ? [100, row < 58 ? 100 : 0] : [100, 90]));
    const value = good(
      measure(rows, 15, { windows: [netting('day-hours', { from: '12:00', to: '16:00' })] }),
    );
    // Day: 64 − 16 quarter hours of 100, and 600 left of the window.
    expect(value.windows).toEqual([{ id: 'day-hours', total: 8600, blocks: [3200, 5400] }]);
  });

  it('inside hours past midnight takes the first and last of the same day', () => {
    // The night of the 26th: 00:00 to 06:00 gives 2400, 22:00 to 24:00 takes 800 more than that is left of.
    const rows = rowsOf(96, 15, (row) => (row < 24 ? [0, 100] : row < 88 ? [1, 0] : [400, 0]));
    const value = good(
      measure(rows, 15, { windows: [netting('day-hours', { from: '22:00', to: '06:00' })] }),
    );
    // 8 × 400 − 24 × 100 = 800 by night, 64 × 1 by day
    expect(value.windows).toEqual([{ id: 'day-hours', total: 864, blocks: [800, 64] }]);
  });

  it('inside the day is not carried into the next', () => {
    const rows = rowsOf(48, 60, (row) => (row < 24 ? [0, 100] : [100, 0]));
    const rules = {
      clock: blockClock(null, 60),
      windows: [netting('day')],
      period: periodOf('2025-10-26', '2025-10-28'),
    };
    expect(good(measure(rows, 60, rules)).windows).toEqual([{ id: 'day', total: 2400, blocks: [2400] }]);
  });

  it('goes on in the same hour after a missing interval', () => {
    // 02:00 takes 100, 02:15 is missing, 02:30 and 02:45 give 40 each: 20 is left, not 100.
    const rows = rowsOf(96, 15, (row) =>
      row === 8 ? [100, 0] : row === 10 || row === 11 ? [0, 40] : [0, 0],
    );
    const { value, findings } = measure(rows.toSpliced(9, 1), 15, { windows: [netting('hour')] });
    expect(findings.map(({ code, severity }) => [code, severity])).toEqual([
      ['energy/interval-missing', 'question'],
    ]);
    expect(value?.windows).toEqual([{ id: 'hour', total: 20, blocks: [20, 0] }]);
  });

  it('takes hours that are no hours for a bad call', () => {
    const wrong = [netting('day-hours'), netting('day-hours', { from: '10:00', to: '10:00' })];
    for (const window of wrong)
      expect(() => measure(rowsOf(96, 15), 15, { windows: [window] })).toThrow(RangeError);
  });
});

describe('the days on which the clocks change', () => {
  // The hour from 02:00 stands twice: the first takes 100 in each quarter, the second gives 100.
  const second = rowsOf(96, 15, () => [0, 100]).slice(8, 12);
  const back = rowsOf(96, 15, () => [100, 0]).toSpliced(12, 0, ...second);

  it('have 25 hours, two of the same name, which are netted apart by the hour and together by the day', () => {
    const windows = [netting('hour'), netting('day')];
    const value = good(measure(back, 15, { clock: blockClock(null, 15), windows, clockChanges: [DAY] }));
    expect([value.intervals, value.totals]).toEqual([100, { import: 9600, export: 400, generation: null }]);
    expect(value.windows.map(({ total }) => total)).toEqual([9600, 9200]);
  });

  it('are asked about where they are not named', () => {
    const { value, findings } = measure(back, 15);
    expect(findings.map(({ code, severity }) => [code, severity])).toEqual([
      ['energy/interval-hour-twice', 'question'],
    ]);
    expect(value?.totals.import).toBe(9600);
  });

  it('have half an hour more or less on Lord Howe Island, where the day is named', () => {
    // The clocks go back from 02:00 to 01:30: 01:30 and 01:45 stand twice.
    const again = rowsOf(96, 15, () => [7, 0]).slice(6, 8);
    const autumn = rowsOf(96, 15).toSpliced(8, 0, ...again);
    const value = good(measure(autumn, 15, { clockChanges: [DAY] }));
    expect([value.intervals, value.totals.import]).toEqual([98, 96 * 100 + 2 * 7]);
    expect(codesOf(measure(autumn, 15))).toEqual(['energy/interval-conflict']);
    const spring = rowsOf(96, 15).toSpliced(8, 2);
    expect(good(measure(spring, 15, { clockChanges: [DAY] })).intervals).toBe(94);
    expect(codesOf(measure(spring, 15))).toEqual(['energy/interval-missing']);
  });

  it('need a name in hourly data, where one row too many looks the same', () => {
    const rows = rowsOf(24, 60).toSpliced(3, 0, { start: DAY * 1440 + 120, import: 9, export: 9 });
    expect(codesOf(measure(rows, 60))).toEqual(['energy/interval-conflict']);
    expect(good(measure(rows, 60, { clockChanges: [DAY] })).totals.import).toBe(2409);
  });

  it.each([
    ['half an hour', back.toSpliced(14, 2), 2],
    ['an hour that begins later', back.toSpliced(12, 1), 3],
    ['the hour a third time', back.toSpliced(16, 0, ...rowsOf(12, 15, () => [1, 99]).slice(8)), 4],
    [
      'another hour of the day',
      back.toSpliced(44, 0, ...back.slice(40, 44).map((row) => ({ ...row, import: 7 }))),
      4,
    ],
  ])('do not repeat %s', (_, rows, count) => {
    const { value, findings } = measure(rows, 15, { clockChanges: [DAY] });
    expect(value).toBe(null);
    const faults = findings.filter(({ severity }) => severity === 'error');
    expect(faults.map(({ code, values }) => [code, values['count']])).toEqual([
      ['energy/interval-conflict', String(count)],
    ]);
  });

  it('have 23 hours where the hour that is missing is one and the day is named', () => {
    const forward = rowsOf(96, 15).toSpliced(8, 4);
    expect(good(measure(forward, 15, { clockChanges: [DAY] })).intervals).toBe(92);
    const missing = (rows: IntervalRow[], changes: readonly string[]) =>
      measure(rows, 15, { clockChanges: changes.map(dayOf) }).findings.map(({ values }) => values['count']);
    expect(missing(forward, [])).toEqual(['4']);
    expect(missing(forward, ['2025-10-25'])).toEqual(['4']);
    expect(missing(forward.toSpliced(20, 1), ['2025-10-26'])).toEqual(['5']);
    expect(missing(rowsOf(96, 15).toSpliced(8, 3), ['2025-10-26'])).toEqual(['3']);
    expect(missing(back.toSpliced(40, 4), ['2025-10-26'])).toEqual(['4']);
  });
});

describe('data in disorder', () => {
  it('is counted once where a day was pasted twice, with a question', () => {
    const rows = rowsOf(96, 15);
    const { value, findings } = measure([...rows, ...rows], 15);
    expect(findings.map(({ code, path, values }) => [code, path, values['count']])).toEqual([
      ['energy/interval-repeated', ['intervals', 96], '96'],
    ]);
    expect(value?.totals.import).toBe(9600);
  });

  it('knows no row again that begins between two others', () => {
    const rows = rowsOf(96, 15).toSpliced(12, 0, { start: DAY * 1440 + 125, import: 100, export: 50 });
    expect(codesOf(measure(rows, 15))).toEqual(['energy/interval-out-of-order']);
  });

  it('tells everything at once', () => {
    const rows = rowsOf(96, 15);
    rows[50] = { start: DAY * 1440 + 750, import: -1, export: Infinity };
    const { value, findings } = measure(rows.toSpliced(20, 2).toSpliced(70, 0, ...rows.slice(10, 11)), 15);
    expect(value).toBe(null);
    expect(findings.map(({ code, path }) => [code, path.join('.')])).toEqual([
      ['energy/interval-missing', 'intervals'],
      ['energy/interval-repeated', 'intervals.70'],
      ['energy/interval-not-whole', 'intervals.48.import'],
      ['energy/interval-not-whole', 'intervals.48.export'],
    ]);
  });

  it('has nothing in it: a question about every interval', () => {
    const { value, findings } = measure([], 15);
    expect(findings.map(({ values }) => [values['count'], values['first'], values['last']])).toEqual([
      ['96', '2025-10-26 00:00', '2025-10-26 23:45'],
    ]);
    expect(value?.totals).toEqual({ import: null, export: null, generation: null });
  });
});

describe('several periods in one pass', () => {
  it('have each their own sums and findings', () => {
    const rows = rowsOf(72, 60, (row) => [row, 0]).toSpliced(30, 1);
    const clock = blockClock(NIGHT_AND_DAY, 60);
    const days = ['2025-10-26', '2025-10-27', '2025-10-28', '2025-10-29'];
    const periods = days.slice(1).map((to, at) => periodOf(days[at] ?? '', to));
    const columns = intervalRowsToColumns(rows, 60);
    const results = measureIntervalYear(columns, periods, { clock, windows: [netting('hour')] });
    // 0 + … + 23 = 276; 24 + … + 47 = 852, less 30; 48 + … + 71 = 1428
    expect(results.map(({ value }) => value?.totals.import)).toEqual([276, 822, 1428]);
    expect(results.map(({ value }) => value?.windows[0]?.total)).toEqual([276, 822, 1428]);
    expect(results.map(codesOf)).toEqual([[], ['energy/interval-missing'], []]);
  });

  it('find their own where the clocks go back over the edge between two', () => {
    // 00:30 of the 27th is followed by 23:30 of the 26th.
    const rows = rowsOf(192, 15);
    const again = rows.slice(94, 98);
    const columns = intervalRowsToColumns(rows.toSpliced(98, 0, ...again), 15);
    const rules = { clock: blockClock(null, 15), windows: [netting('hour')], clockChanges: [DAY] };
    const periods = [ONE_DAY, periodOf('2025-10-27', '2025-10-28')];
    const results = measureIntervalYear(columns, periods, rules);
    expect(results.map((one) => good(one).totals.import)).toEqual([9800, 9800]);
    expect(results.map(({ value }) => value?.windows[0]?.total)).toEqual([4900, 4900]);
  });

  it('have to be in order, with a clock and columns that fit', () => {
    const columns = intervalRowsToColumns(rowsOf(24, 60), 60);
    const rules = { clock: blockClock(null, 60), windows: [] };
    const year =
      (periods: readonly Period[], parts: Partial<IntervalColumns> = {}) =>
      () =>
        measureIntervalYear({ ...columns, ...parts }, periods, rules);
    const [early, late] = [ONE_DAY, periodOf('2025-10-27', '2025-10-28')];
    expect(year([late, early])).toThrow('in order of time');
    expect(year([early, early])).toThrow('in order of time');
    expect(year([early], { minutes: 30 })).toThrow('clock for 60 minutes');
    expect(year([early], { import: new Int32Array(3) })).toThrow('3 values of import, 24 starts');
  });
});

describe('rows', () => {
  it('start at whole minutes', () => {
    for (const start of [0.5, NaN, 2 ** 31]) {
      expect(() => intervalRowsToColumns([{ start }], 15)).toThrow('row 0');
    }
  });
});
