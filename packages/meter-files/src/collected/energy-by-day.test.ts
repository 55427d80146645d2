import fc from 'fast-check';
import { dayText, wholeToDecimal } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import {
  codesOf,
  dayOf,
  fileOf,
  minuteOf,
  streamOf,
  type ChunkParts,
} from '../../../../tests/support/meter-chunks.ts';
import { energyByDay } from './energy-by-day.ts';
import { energyInPeriods } from './energy-in-periods.ts';
import type { LocalOptions } from './local-columns.ts';

const B1 = streamOf({ register: 'B1', quantity: 'export' });
const UTC: LocalOptions = { zone: 'UTC' };

const daysOf = (chunks: readonly ChunkParts[], options = UTC, offset: number | null = 0) =>
  energyByDay(fileOf({ chunks }, { offset }), options);

const ones = (count: number): readonly number[] => Array.from({ length: count }, () => 1);

describe('the energy of days', () => {
  it('is summed up by quantity, with how much of the day is there', () => {
    const { value, findings } = daysOf([
      { start: '2025-04-01 12:00', values: ones(48 + 96) },
      { start: '2025-04-01 00:00', values: [125, 250], minutes: 1440, places: 1, stream: B1 },
    ]);
    expect(value?.days.map(dayText)).toEqual(['2025-04-01', '2025-04-02']);
    expect(value).toMatchObject({
      places: 3,
      import: { energy: [48, 96], minutes: [720, 1440] },
      export: { energy: [12500, 25000], minutes: [1440, 1440] },
      generation: null,
      isWhole: [false, true],
    });
    expect(findings).toEqual([]);
  });

  it('has every day from the first to the last, those without a value, too', () => {
    const { value } = daysOf([
      { start: '2025-04-01', values: ones(96) },
      { start: '2025-04-03', values: ones(96) },
    ]);
    expect(value).toMatchObject({
      import: { energy: [96, null, 96], minutes: [1440, 0, 1440] },
      isWhole: [true, false, true],
    });
  });

  it('adds registers up, and covers what all of them have', () => {
    const { value } = daysOf([
      { start: '2025-04-01', values: ones(96) },
      { start: '2025-04-01', values: ones(95), stream: streamOf({ register: 'E2' }) },
    ]);
    expect(value).toMatchObject({ import: { energy: [191], minutes: [1425] }, isWhole: [false] });
  });

  it('tells of intervals across the end of a day, of which neither is whole', () => {
    // Days by a clock of UTC+10 in a zone of UTC+9:30: each begins at 23:30 of the day before.
    const { value, findings } = daysOf(
      [{ start: '2025-07-01', values: [7, 8], minutes: 1440 }],
      { zone: 'Australia/Adelaide' },
      600,
    );
    expect(value?.days.map(dayText)).toEqual(['2025-06-30', '2025-07-01', '2025-07-02']);
    expect(value).toMatchObject({
      import: { energy: [7, 8, null], minutes: [30, 1440, 1410] },
      isWhole: [false, false, false],
    });
    expect(findings.map(({ code, values }) => [code, values['count']])).toEqual([
      ['meter-file/across-days', '2'],
    ]);
  });

  it('is none where a day is too large to be exact', () => {
    const largest = Number.MAX_SAFE_INTEGER;
    expect(daysOf([{ start: 0, values: [largest - 1, 1] }]).value?.import?.energy).toEqual([largest]);
    const { value, findings } = daysOf([{ start: 0, values: [largest, 1] }]);
    expect([value, codesOf(findings)]).toEqual([null, ['meter-file/day-too-large']]);
  });

  it('is none of net energy', () => {
    const { value, findings } = daysOf([{ start: 0, values: [1], stream: streamOf({ quantity: 'net' }) }]);
    expect([value, codesOf(findings)]).toEqual([null, ['meter-file/net', 'meter-file/no-intervals']]);
  });
});

describe('a day on which clocks change', () => {
  it.each([
    ['Europe/Amsterdam', '2025-03-30', 1380],
    ['Europe/Amsterdam', '2025-10-26', 1500],
    ['Australia/Adelaide', '2025-04-06', 1500],
    ['Australia/Adelaide', '2025-10-05', 1380],
    ['Australia/Lord_Howe', '2025-04-06', 1470],
    ['Australia/Lord_Howe', '2025-10-05', 1410],
    ['America/St_Johns', '2025-03-09', 1380],
    ['America/St_Johns', '2025-11-02', 1500],
  ])('is whole in %s on %s with %i minutes', (zone, text, length) => {
    // Three days around it, by UTC.
    const start = minuteOf(text) - 1440;
    const { value } = daysOf([{ start, values: ones(3 * 288), minutes: 5 }], { zone });
    const at = value?.days.indexOf(dayOf(text)) ?? -1;
    expect([value?.import?.minutes[at], value?.import?.energy[at], value?.isWhole[at]]).toEqual([
      length,
      length / 5,
      true,
    ]);
    expect(value?.import?.energy.reduce((sum: number, one) => sum + (one ?? 0), 0)).toBe(3 * 288);
  });

  it('is whole in local time with 23 hours, if the zone is known', () => {
    const local = [
      { start: '2025-03-30', values: ones(8) },
      { start: '2025-03-30 03:00', values: ones(84) },
    ];
    expect(daysOf(local, { zone: 'Europe/Amsterdam' }, null).value?.isWhole).toEqual([true]);
    expect(daysOf(local, { zone: null }, null).value?.isWhole).toEqual([false]);
  });

  it('is not there where the calendar leaves it out', () => {
    // 29 December begins at 10:00 UTC, 31 December at 10:00 UTC of the 30th.
    const { value, findings } = daysOf([{ start: '2011-12-29 10:00', values: ones(96), minutes: 30 }], {
      zone: 'Pacific/Apia',
    });
    expect([value?.days.map(dayText), value?.import?.energy, value?.isWhole, codesOf(findings)]).toEqual([
      ['2011-12-29', '2011-12-31'],
      [48, 48],
      [true, true],
      ['meter-file/day-left-out'],
    ]);
  });
});

const ZONES = ['Europe/Amsterdam', 'Australia/Adelaide', 'Australia/Lord_Howe', 'America/St_Johns'] as const;

describe('days and periods', () => {
  it('sum to the whole, in every zone, with any gaps', () => {
    const length = 12 * 48;
    const some = fc.array(fc.option(fc.integer({ min: 0, max: 999 }), { freq: 9 }), {
      minLength: length,
      maxLength: length,
    });
    const start = fc.constantFrom(
      '2025-03-25',
      '2025-03-04',
      '2025-10-22',
      '2025-10-30',
      '2025-04-01',
      '2025-10-01',
    );
    fc.assert(
      fc.property(
        some,
        start,
        fc.constantFrom(...ZONES),
        fc.integer({ min: 1, max: 9 }),
        (values, from, zone, cut) => {
          const file = fileOf({ chunks: [{ start: from, values, minutes: 30 }] }, { offset: 0 });
          const sum = values.reduce((total: number, value) => total + (value ?? 0), 0);
          const { value: byDay } = energyByDay(file, { zone });
          const days = byDay?.import?.energy ?? [];
          expect(days.reduce((total: number, value) => total + (value ?? 0), 0)).toBe(sum);
          const first = dayOf(from);
          const day = (offset: number) => (first + offset) as typeof first;
          const periods = [
            { from: day(-2), to: day(cut) },
            { from: day(cut), to: day(20) },
          ];
          const { value } = energyInPeriods(file, periods, { zone });
          // Each period is the sum of its days.
          value.forEach(({ period, import: energy }) => {
            const own = (byDay?.days ?? []).reduce(
              (total, one, index) =>
                one >= period.from && one < period.to ? total + (byDay?.import?.energy[index] ?? 0) : total,
              0,
            );
            expect(energy ?? '0').toBe(wholeToDecimal(own, 3).replace(/\.?0+$/, '') || '0');
          });
        },
      ),
      { numRuns: 40 },
    );
  });
});
