import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DayNumber, Period } from '../quantity/index.ts';
import { checkTimeBlocks, type TimeBlockEntry, type TimeBlocks } from '../tariff/index.ts';
import { blockClock } from './block-clock.ts';
import {
  intervalRowsToColumns,
  type IntervalChannel,
  type IntervalColumns,
  type IntervalRow,
} from './interval-columns.ts';
import type { NettingWindow } from './interval-windows.ts';
import { measureIntervals, measureIntervalYear, type IntervalPeriod } from './measure-intervals.ts';

const DAYS = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'] as const;
const CHANNELS = ['import', 'export', 'generation'] as const;

/** A local minute as text, by the calendar of the platform: no arithmetic of ours. */
const textOf = (minute: number): string => new Date(minute * 60_000).toISOString().slice(0, 16);

/** The block of an interval, by comparing texts: what entry applies on this day, in this season, at this time. */
function naiveBlock({ calendar, seasons = {}, holidays }: TimeBlocks, text: string): string {
  const [date = '', time = ''] = text.split('T');
  const isHoliday = calendar.some(({ days }) => days?.includes('holiday')) && holidays?.days.includes(date);
  const kind = isHoliday === true ? 'holiday' : (DAYS[new Date(date).getUTCDay()] ?? 'sun');
  const fitting = calendar.filter(({ from, to, days, season }) => {
    const { from: first = '', through = '' } = seasons[season ?? ''] ?? {};
    const monthDay = date.slice(5);
    const inSeason =
      season === undefined ||
      (first <= through
        ? first <= monthDay && monthDay <= through
        : first <= monthDay || monthDay <= through);
    const inTime = from < to ? from <= time && time < to : from <= time || time < to;
    return inSeason && inTime && (days === undefined || days.includes(kind));
  });
  if (fitting.length !== 1) throw new Error(`${fitting.length.toString()} entries at ${text}`);
  return fitting[0]?.block ?? '';
}

interface Twin {
  readonly totals: Record<IntervalChannel, bigint>;
  readonly blocks: Map<string, Record<IntervalChannel, bigint>>;
  readonly windows: readonly { readonly total: bigint; readonly blocks: Map<string, bigint> }[];
}

const nothing = (): Record<IntervalChannel, bigint> => ({ import: 0n, export: 0n, generation: 0n });

/** What names the window of an interval; null where it is not netted. The second of two hours is another. */
function naiveWindow(
  { within, from = '', to = '' }: NettingWindow,
  text: string,
  pass: number,
): string | null {
  const [date = '', time = ''] = text.split('T');
  if (within === 'interval') return `${text} ${pass.toString()}`;
  if (within === 'hour') return `${text.slice(0, 13)} ${pass.toString()}`;
  if (within === 'day') return date;
  return from <= time && time < to ? date : null;
}

/** Interval by interval, in whole numbers without end. */
function naive(
  rows: readonly IntervalRow[],
  timeBlocks: TimeBlocks,
  period: Period,
  windows: readonly NettingWindow[],
): Twin {
  const [first, end] = [textOf(period.from * 1440), textOf(period.to * 1440)];
  const totals = nothing();
  const blocks = new Map(timeBlocks.blocks.map(({ id }) => [id, nothing()] as const));
  const groups = windows.map(() => new Map<string, { block: string; of: bigint; less: bigint }>());
  const seen = new Map<string, number>();
  for (const row of rows) {
    const text = textOf(row.start);
    if (text < first || text >= end) continue;
    const pass = seen.get(text) ?? 0;
    seen.set(text, pass + 1);
    const block = naiveBlock(timeBlocks, text);
    const values = Object.fromEntries(
      CHANNELS.map((name) => [name, BigInt(row[name] ?? 0)]),
    ) as Twin['totals'];
    const own = blocks.get(block) ?? nothing();
    for (const channel of CHANNELS) {
      totals[channel] += values[channel];
      own[channel] += values[channel];
    }
    windows.forEach((window, at) => {
      const key = naiveWindow(window, text, pass);
      const name = key ?? `alone ${text} ${pass.toString()}`;
      const group = groups[at]?.get(name) ?? { block, of: 0n, less: 0n };
      group.of += values[window.of];
      if (key !== null) group.less += values[window.less];
      groups[at]?.set(name, group);
    });
  }
  const left = groups.map((all) => {
    const byBlock = new Map<string, bigint>(timeBlocks.blocks.map(({ id }) => [id, 0n]));
    let total = 0n;
    for (const { block, of, less } of all.values()) {
      if (of <= less) continue;
      total += of - less;
      byBlock.set(block, (byBlock.get(block) ?? 0n) + of - less);
    }
    return { total, blocks: byBlock };
  });
  return { totals, blocks, windows: left };
}

/** Our result in the twin's words. */
function inTwinWords({ totals, blocks, windows }: IntervalPeriod): Twin {
  const whole = (values: IntervalPeriod['totals']): Twin['totals'] => ({
    import: BigInt(values.import ?? 0),
    export: BigInt(values.export ?? 0),
    generation: BigInt(values.generation ?? 0),
  });
  return {
    totals: whole(totals),
    blocks: new Map(blocks.map(({ id, ...values }) => [id, whole(values)] as const)),
    windows: windows.map(({ total, blocks: left }) => ({
      total: BigInt(total),
      blocks: new Map(left.map((value, at) => [blocks[at]?.id ?? '', BigInt(value)] as const)),
    })),
  };
}

const hourText = (hour: number): string => `${hour.toString().padStart(2, '0')}:00`;
const IDS = ['b0', 'b1', 'b2', 'b3'];

/** Blocks that begin on full hours, of which one covers 10:00 to 16:00, so that it can be netted as a whole. */
const daysCalendar = fc
  .record({
    early: fc.uniqueArray(fc.integer({ min: 0, max: 10 }), { minLength: 0, maxLength: 3 }),
    late: fc.uniqueArray(fc.integer({ min: 16, max: 23 }), { minLength: 1, maxLength: 3 }),
    blocks: fc.array(fc.constantFrom(...IDS), { minLength: 6, maxLength: 6 }),
  })
  .map(({ early, late, blocks }): TimeBlockEntry[] => {
    const cuts = [...early, ...late].sort((a, b) => a - b);
    // The last entry goes past midnight to the first cut.
    return cuts.map((cut, at) => {
      const next = cuts[(at + 1) % cuts.length] ?? 0;
      const isOnly = cuts.length === 1;
      const [from, to] = isOnly ? ['00:00', '24:00'] : [hourText(cut), hourText(next)];
      return { block: blocks[at] ?? 'b0', from, to };
    });
  });

const WORKDAYS = ['mon', 'tue', 'wed', 'thu', 'fri'] as const;
const SEASONS = { cool: { from: '10-01', through: '02-29' }, warm: { from: '03-01', through: '09-30' } };

/** Workdays in two seasons, and other days; holidays with their own entries, or with those of the weekend. */
const anyTimeBlocks = fc
  .tuple(daysCalendar, daysCalendar, daysCalendar, fc.option(daysCalendar))
  .map(([cool, warm, weekend, holiday]): TimeBlocks => {
    const on = (entries: TimeBlockEntry[], parts: Partial<TimeBlockEntry>) =>
      entries.map((one) => ({ ...one, ...parts }));
    const calendar = [
      ...on(cool, { days: [...WORKDAYS], season: 'cool' }),
      ...on(warm, { days: [...WORKDAYS], season: 'warm' }),
      ...on(weekend, { days: holiday === null ? ['sat', 'sun', 'holiday'] : ['sat', 'sun'] }),
      ...on(holiday ?? [], { days: ['holiday'] }),
    ];
    const used = IDS.filter((id) => calendar.some(({ block }) => block === id));
    return {
      clause: 'T 1',
      blocks: used.map((id) => ({ id, label: id })),
      calendar,
      seasons: SEASONS,
      holidays: { clause: 'T 2', days: ['2024-02-29', '2024-03-01', '2025-01-01'] },
    };
  });

const FIRST_DAY = 19_780; // 2024-02-27, so that 29 February and the first of March are among the days
const NETTING = { of: 'import', less: 'export' } as const;
const WINDOWS: readonly NettingWindow[] = [
  { id: 'interval', ...NETTING, within: 'interval' },
  { id: 'hour', ...NETTING, within: 'hour' },
  { id: 'noon', ...NETTING, within: 'day-hours', from: '10:00', to: '16:00' },
];

interface Data {
  readonly minutes: IntervalColumns['minutes'];
  readonly rows: readonly IntervalRow[];
  readonly changes: readonly DayNumber[];
  readonly period: Period;
  readonly gaps: number;
}

/** Days of intervals, some missing, one perhaps with its hour from 02:00 twice, and a period inside them. */
const anyData: fc.Arbitrary<Data> = fc
  .record({
    minutes: fc.constantFrom(5, 15, 30, 60),
    days: fc.integer({ min: 1, max: 5 }),
    seed: fc.integer({ min: 1, max: 1_000_000 }),
    missing: fc.array(fc.nat({ max: 1499 }), { maxLength: 4 }),
    back: fc.option(fc.nat({ max: 4 })),
    from: fc.nat({ max: 2 }),
    length: fc.integer({ min: 1, max: 3 }),
  })
  .map(({ minutes, days, seed, missing, back, from, length }) => {
    let state = seed;
    const next = (): number => {
      state = (state * 48_271) % 2_147_483_647;
      return state % 3 === 0 ? 0 : state % 2000;
    };
    const row = (start: number): IntervalRow => ({
      start,
      import: next(),
      export: next(),
      generation: next(),
    });
    const perDay = 1440 / minutes;
    const all = Array.from({ length: days * perDay }, (_, at) => row(FIRST_DAY * 1440 + at * minutes));
    const backDay = back === null ? null : FIRST_DAY + (back % days);
    // The hour that is repeated stays whole, or the repeat would be a mistake.
    const keeps = ({ start }: IntervalRow): boolean =>
      backDay !== null && start >= backDay * 1440 + 120 && start < backDay * 1440 + 180;
    const dropped = new Set(missing.filter((at) => at < all.length && !keeps(all[at] as IntervalRow)));
    const kept = all.filter((_, at) => !dropped.has(at));
    const again = backDay === null ? [] : kept.filter(keeps).map(({ start }) => row(start));
    const after = kept.findIndex(({ start }) => backDay !== null && start >= backDay * 1440 + 180);
    const rows = backDay === null ? kept : kept.toSpliced(after, 0, ...again);
    const period = { from: FIRST_DAY + from, to: FIRST_DAY + from + length } as Period;
    const present = new Set(rows.map(({ start }) => start));
    let gaps = 0;
    for (let start = period.from * 1440; start < period.to * 1440; start += minutes) {
      if (!present.has(start)) gaps += 1;
    }
    const changes = backDay === null ? [] : [backDay as DayNumber];
    return { minutes: minutes, rows, changes, period, gaps };
  });

const measured = (
  { minutes, rows, changes, period }: Data,
  timeBlocks: TimeBlocks | null,
  windows = WINDOWS,
) =>
  measureIntervals(intervalRowsToColumns(rows, minutes), period, {
    clock: blockClock(timeBlocks, minutes),
    windows,
    clockChanges: changes,
  });

const ONE_BLOCK: TimeBlocks = {
  clause: 'T 1',
  blocks: [{ id: 'all-day', label: 'All day' }],
  calendar: [{ block: 'all-day', from: '00:00', to: '24:00' }],
};

describe('measured intervals', () => {
  it('are what a naive twin sums interval by interval, and so is what is missing', () => {
    fc.assert(
      fc.property(anyTimeBlocks, anyData, (timeBlocks, data) => {
        expect(checkTimeBlocks(timeBlocks)).toEqual([]);
        const { value, findings } = measured(data, timeBlocks);
        if (value === null) throw new Error(JSON.stringify(findings));
        expect(inTwinWords(value)).toEqual(naive(data.rows, timeBlocks, data.period, WINDOWS));
        expect(findings.map(({ code, values }) => [code, values['count']])).toEqual(
          data.gaps === 0 ? [] : [['energy/interval-missing', data.gaps.toString()]],
        );
      }),
      { numRuns: 150 },
    );
  });

  it('are the twin also where whole days are netted', () => {
    const windows: readonly NettingWindow[] = [
      ...WINDOWS,
      { id: 'day', ...NETTING, within: 'day' },
      { id: 'back', of: 'export', less: 'import', within: 'day' },
    ];
    fc.assert(
      fc.property(anyData, (data) => {
        const { value } = measured(data, null, windows);
        if (value === null) throw new Error('no value');
        expect(inTwinWords(value)).toEqual(naive(data.rows, ONE_BLOCK, data.period, windows));
      }),
      { numRuns: 100 },
    );
  });

  it('change in nothing but names when blocks are renamed', () => {
    const renamed = (text: string): string => text.replaceAll(/"b(\d)"/g, '"other-$1"');
    fc.assert(
      fc.property(anyTimeBlocks, anyData, (timeBlocks, data) => {
        const other = JSON.parse(renamed(JSON.stringify(timeBlocks))) as TimeBlocks;
        const [one, two] = [measured(data, timeBlocks), measured(data, other)];
        expect(JSON.stringify(two)).toBe(renamed(JSON.stringify(one)));
      }),
      { numRuns: 50 },
    );
  });

  it('are never more where the window is coarser: interval, hour, day, period', () => {
    const windows = (['interval', 'hour', 'day'] as const).map((within) => ({
      id: within,
      ...NETTING,
      within,
    }));
    fc.assert(
      fc.property(anyData, (data) => {
        const { value } = measured(data, null, windows);
        if (value === null) throw new Error('no value');
        const whole = Math.max(0, (value.totals.import ?? 0) - (value.totals.export ?? 0));
        const sums = [value.totals.import ?? 0, ...value.windows.map(({ total }) => total), whole];
        expect([...sums].sort((a, b) => b - a)).toEqual(sums);
      }),
      { numRuns: 100 },
    );
  });

  it('of several periods in one pass are those of each by itself', () => {
    fc.assert(
      fc.property(anyTimeBlocks, anyData, (timeBlocks, data) => {
        const periods = [0, 1, 3].map(
          (from) => ({ from: FIRST_DAY + from, to: FIRST_DAY + from + 1 }) as Period,
        );
        const rules = {
          clock: blockClock(timeBlocks, data.minutes),
          windows: WINDOWS,
          clockChanges: data.changes,
        };
        const columns = intervalRowsToColumns(data.rows, data.minutes);
        expect(measureIntervalYear(columns, periods, rules)).toEqual(
          periods.map((period) => measureIntervals(columns, period, rules)),
        );
      }),
      { numRuns: 50 },
    );
  });
});
