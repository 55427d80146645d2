import { describe, expect, it } from 'vitest';
import {
  brightDays,
  dayOf,
  daysFrom,
  plantOf,
  TWENTY_A_DAY,
} from '../../../../../tests/support/plant-days.ts';
import { addDays, dayText, type Finding } from '../../quantity/index.ts';
import type { PlantDay } from './day-series.ts';
import type { PlantDocument } from './plant-document.ts';
import { plantDays } from './plant-days.ts';
import type { Plant } from './plant.ts';

const codesOf = (findings: readonly Finding[]): readonly string[] =>
  findings.map(({ code, path }) => `${code} ${String(path[1])}`);
const codes = (days: readonly PlantDay[], plant: Plant = plantOf()) =>
  codesOf(plantDays(days, plant).findings);
const valuesOf = (days: readonly PlantDay[], plant: Plant, code: string) =>
  plantDays(days, plant).findings.find((finding) => finding.code === code)?.values;

const EIGHT = plantOf({ inverters: { n: '8', kind: 'module' } });
/** Sixty days as they should be, then sixty with one of eight module inverters out. */
const ONE_OUT = brightDays(120, (place) => (place < 60 ? 1000 : 875));
/** 20 whole days, 40 with 0.3 % more dirt each, then clean again. */
const DIRTY = brightDays(90, (place) => (place < 20 || place >= 60 ? 1000 : 1000 - 3 * (place - 19)));

describe('a lasting step', () => {
  it('of one in eight is found on its day, with both means: 18.4 and 16.1 of 20 units', () => {
    const days = daysFrom('2025-01-01', ONE_OUT);
    expect(codes(days, EIGHT)).toEqual(['plant/step-down 2025-03-02']);
    expect(valuesOf(days, EIGHT, 'plant/step-down')).toMatchObject({
      first: '2025-01-01',
      day: '2025-03-02',
      last: '2025-04-30',
      count: '60',
      before: '18.4',
      after: '16.1',
      beforeLevel: '92.0',
      afterLevel: '80.5',
      percent: '12.5',
      part: '1 of the 8 module inverters',
    });
  });

  it.each([
    [750, { inverters: { n: '4', kind: 'string' } }, '1 of the 4 inverters'],
    [750, { inverters: { n: '8', kind: 'module' } }, '2 of the 8 module inverters'],
    [750, {}, '1/4 of the plant'],
    [667, {}, '1/3 of the plant'],
    [500, { inverters: { n: '1', kind: 'string' } }, '1/2 of the plant'],
    [900, {}, '1/10 of the plant'],
  ] as const)('to %i thousandths with %j is about %s', (part, more, words) => {
    const days = daysFrom(
      '2025-01-01',
      brightDays(120, (place) => (place < 60 ? 1000 : part)),
    );
    expect(valuesOf(days, plantOf(more as Partial<PlantDocument>), 'plant/step-down')?.['part']).toBe(words);
  });

  it('is looked for from 8 % on, and lasts 30 days at least', () => {
    const stepped = (count: number, part: number) =>
      codes(
        daysFrom(
          '2025-01-01',
          brightDays(60 + count, (place) => (place < 60 ? 1000 : part)),
        ),
      );
    // 1 March is a dull day anyway: the fall may as well have begun on it.
    expect(stepped(60, 920)).toEqual(['plant/step-down 2025-03-01']);
    expect(stepped(60, 921)).toEqual([]);
    expect(stepped(32, 750)).toEqual(['plant/step-down 2025-03-01']);
    expect(stepped(28, 750)).toEqual([]);
  });

  it('up is capacity that the document does not have: 16.1 to 18.4, 14.3 %', () => {
    const days = daysFrom(
      '2025-01-01',
      brightDays(120, (place) => (place < 60 ? 875 : 1000)),
    );
    expect(codes(days)).toEqual(['plant/step-up 2025-03-02']);
    expect(valuesOf(days, plantOf(), 'plant/step-up')?.['percent']).toBe('14.3');
    const grown = plantOf({ capacity: [{ kWp: '3.5' }, { from: '2025-03-02', kWp: '4' }] });
    expect(codes(days, grown)).toEqual([]);
  });

  it('without a table is told by the year before, and once only', () => {
    const whole = 365 + 366;
    const days = daysFrom(
      '2023-01-01',
      brightDays(whole + 400, (place) => (place < 500 ? 1000 : 750)),
    );
    const plant = plantOf({ expected: { lastYears: true } });
    expect(plantDays(days, plant).value.seasonBy).toBe('last-year');
    expect(codes(days, plant)).toEqual(['plant/step-down 2024-05-15']);
    expect(dayText(addDays(dayOf('2023-01-01'), 500))).toBe('2024-05-15');
  });

  it('a season of the table is none, nor one that the units alone show', () => {
    const steep = ['744', '560', '496', '360', ...TWENTY_A_DAY.slice(4)];
    const line = (place: number): number => 1200 - 5 * place;
    const days = daysFrom('2025-01-15', brightDays(90, line));
    expect(codes(days, plantOf({ expected: { monthly: steep } }))).toEqual([]);
  });
});

describe('a slow slide', () => {
  it('of 0.3 % a day that ends with a cleaning', () => {
    const days = daysFrom('2025-01-01', DIRTY);
    const cleaned = plantOf({ diary: [{ date: '2025-03-02', did: 'cleaning' }] });
    expect(codes(days, cleaned)).toEqual([expect.stringMatching(/^plant\/slow-slide 2025-01-/)]);
    expect(valuesOf(days, cleaned, 'plant/slow-slide')?.['ended']).toBe('with the cleaning of 2025-03-02');
    expect(valuesOf(days, plantOf(), 'plant/slow-slide')?.['ended']).toBe('with rain or a cleaning');
  });

  it('is told once it has ended, and where it is no steeper than dirt', () => {
    expect(codes(daysFrom('2025-01-01', DIRTY.slice(0, 60)))).toEqual([]);
    const steep = brightDays(60, (place) => (place < 30 ? 1000 - 9 * place : 1000));
    expect(codes(daysFrom('2025-01-01', steep)).filter((code) => code.includes('slide'))).toEqual([]);
  });
});

describe('zero and missing days', () => {
  const some = brightDays(12);

  it('at the beginning are taken for days before the plant, unless its first day is known', () => {
    const days = daysFrom('2025-01-01', [0, 0, ...some]);
    expect(codes(days)).toEqual(['plant/nothing-yet 2025-01-01']);
    const begun = plantOf({ capacity: [{ from: '2025-01-01', kWp: '5' }] });
    expect(codes(days, begun)).toEqual(['plant/zero-days 2025-01-01']);
    const later = plantOf({ capacity: [{ from: '2025-01-03', kWp: '5' }] });
    expect(codes(days, later)).toEqual([]);
  });

  it('are told by run, an outage of the diary is not', () => {
    const days = daysFrom('2025-01-01', [...some, 0, 0, ...some, null, ...some, 0]);
    expect(codes(days)).toEqual([
      'plant/zero-days 2025-01-13',
      'plant/missing-days 2025-01-27',
      'plant/zero-days 2025-02-09',
    ]);
    const noted = plantOf({ diary: [{ date: '2025-01-13', did: 'outage' }] });
    expect(codes(days, noted)[0]).toBe('plant/zero-days 2025-01-14');
  });

  it('are a stuck register where energy went to the grid on two of them', () => {
    const days = daysFrom('2025-01-01', [...some, 0, 0, 0, ...some]);
    const given = (...exports: number[]) =>
      days.map((one, place) => ({ ...one, exportWattHours: exports[place - 12] ?? 100 }));
    expect(codes(given(100, 0, 1))).toEqual(['plant/stuck-register 2025-01-13']);
    expect(codes(given(100, 0, 0))).toEqual(['plant/zero-days 2025-01-13']);
  });

  it('days that are not given are missing', () => {
    const days = daysFrom('2025-01-01', some).filter((_, place) => place !== 4 && place !== 5);
    expect(valuesOf(days, plantOf(), 'plant/missing-days')).toMatchObject({
      first: '2025-01-05',
      count: '2',
    });
  });
});

describe('the same value', () => {
  it('is asked about three days in a row, where it is fine', () => {
    const with20 = (count: number) =>
      codes(daysFrom('2025-01-01', [...brightDays(10), ...Array.from({ length: count }, () => 17_001)]));
    expect([with20(2), with20(3)]).toEqual([[], ['plant/same-value 2025-01-11']]);
  });

  it('seven days in a row where values are whole units', () => {
    const whole = [19_000, 18_000, 12_000, 20_000, 17_000, 15_000];
    const row = (count: number) =>
      codes(daysFrom('2025-01-01', [...whole, ...Array.from({ length: count }, () => 16_000), 14_000]));
    expect([row(6), row(7)]).toEqual([[], ['plant/same-value 2025-01-07']]);
  });
});

describe('large days', () => {
  it('are asked about beyond 7.5 a kWp: 37.5 of 5', () => {
    const at = (wattHours: number) => codes(daysFrom('2025-01-01', [...brightDays(10), wattHours]));
    expect([at(37_500), at(37_501)]).toEqual([[], ['plant/spike 2025-01-11']]);
  });

  it('and beyond twice the best of 20 days around', () => {
    const dull = brightDays(40, () => 200);
    const at = (count: number, wattHours: number) =>
      codes(daysFrom('2025-01-01', [...dull.slice(0, count), wattHours]));
    expect([at(20, 8000), at(20, 8001), at(19, 8001)]).toEqual([[], ['plant/spike 2025-01-21'], []]);
  });

  it('after days without any are several days in one, as far as that can be', () => {
    const after = (gap: readonly (number | null)[], wattHours: number) =>
      codes(daysFrom('2025-01-01', [...brightDays(10), ...gap, wattHours, ...brightDays(3)])).slice(-1);
    expect(after([null], 30_000)).toEqual(['plant/missing-days 2025-01-11']);
    expect(after([null], 30_001)).toEqual(['plant/lump 2025-01-12']);
    expect(after([0, 0], 55_000)).toEqual(['plant/lump 2025-01-13']);
    // 7.5 × 5 × 2 = 75 units are all that two days can be.
    expect([after([null], 75_000), after([null], 75_001)]).toEqual([
      ['plant/lump 2025-01-12'],
      ['plant/spike 2025-01-12'],
    ]);
  });
});

describe('shortened days', () => {
  const running = (minutes: (place: number) => readonly [number, number], count = 50): PlantDay[] =>
    daysFrom('2025-01-01', brightDays(count)).map((one, place) => {
      const [firstMinute, lastMinute] = minutes(place);
      return { ...one, firstMinute, lastMinute };
    });

  it('by more than an hour are told from their first on, and at which end', () => {
    const evening = (minutes: number) => running((place) => [360, place < 30 ? 1080 : 1080 - minutes]);
    expect([codes(evening(60)), codes(evening(61))]).toEqual([[], ['plant/short-days 2025-01-31']]);
    expect(valuesOf(evening(61), plantOf(), 'plant/short-days')).toMatchObject({
      minutes: '61',
      end: 'evening',
    });
    const morning = running((place) => [place < 30 ? 360 : 450, 1080]);
    expect(valuesOf(morning, plantOf(), 'plant/short-days')).toMatchObject({ minutes: '90', end: 'morning' });
  });

  it('by the season are none, even by 7 minutes a day', () => {
    expect(codes(running((place) => [360, 1080 - 7 * place]))).toEqual([]);
  });

  it('are told by the year before where it is known', () => {
    const days = running((place) => [360, place < 400 ? 1080 : 1000], 440);
    const found = valuesOf(days, plantOf(), 'plant/short-days');
    expect(found).toMatchObject({ first: '2026-02-05', minutes: '80', than: 'a year before', count: '40' });
  });

  it('of one dark week are none', () => {
    expect(codes(running((place) => (place < 30 || place >= 35 ? [360, 1080] : [450, 1000])))).toEqual([]);
  });
});

describe('the days of a plant', () => {
  it('are in a row, with what they are of their season', () => {
    const { value } = plantDays(daysFrom('2025-06-15', [10_000, null, 25_000]), plantOf());
    expect(value).toEqual({
      seasonBy: 'table',
      days: [
        { day: dayOf('2025-06-15'), wattHours: 10_000, ofSeason: 5000 },
        { day: dayOf('2025-06-16'), wattHours: null, ofSeason: null },
        { day: dayOf('2025-06-17'), wattHours: 25_000, ofSeason: 12_500 },
      ],
    });
  });

  it('without anything to tell the season by are said to be so, from 60 on', () => {
    const { value: bare } = { value: { ...plantOf(), expected: null } };
    expect(codes(daysFrom('2025-01-01', brightDays(59)), bare)).toEqual([]);
    expect(codes(daysFrom('2025-01-01', brightDays(60)), bare)).toEqual(['plant/season-unknown 2025-01-01']);
    expect(plantDays([], bare)).toEqual({ value: { days: [], seasonBy: null }, findings: [] });
  });

  it('given twice, or no whole numbers, are a wrong call', () => {
    const [one] = daysFrom('2025-01-01', [1]);
    if (one === undefined) throw new Error('no day');
    expect(() => plantDays([one, one], plantOf())).toThrow(RangeError);
    expect(() => plantDays([{ ...one, wattHours: 0.5 }], plantOf())).toThrow(RangeError);
    expect(() => plantDays([{ ...one, exportWattHours: -1 }], plantOf())).toThrow(RangeError);
  });
});

describe('laws', () => {
  /** 28 years on, the calendar is the same, leap days and all. */
  const later = (days: readonly PlantDay[]): PlantDay[] =>
    days.map((one) => ({ ...one, day: addDays(one.day, 28 * 365 + 7) }));
  const COURSES = [ONE_OUT, DIRTY, [...brightDays(40), 0, 0, null, 90_000, ...brightDays(20)]] as const;

  it.each(COURSES.map((course) => [course]))('days 28 years later have the same findings', (course) => {
    const days = daysFrom('2025-01-01', course);
    const shifted = plantDays(later(days), plantOf()).findings;
    const moved = codes(days).map((text) => text.replace(' 2025', ' 2053'));
    expect(moved.length).toBeGreaterThan(0);
    expect(codesOf(shifted)).toEqual(moved);
  });

  it.each(COURSES.map((course) => [course]))('a plant ten times the size has the same findings', (course) => {
    const tenfold = plantOf({
      capacity: [{ kWp: '50' }],
      expected: { monthly: TWENTY_A_DAY.map((text) => `${text}0`) },
    });
    const days = daysFrom('2025-01-01', course);
    const large = days.map((one) => ({
      ...one,
      wattHours: one.wattHours === null ? null : one.wattHours * 10,
    }));
    expect(codes(large, tenfold)).toEqual(codes(days));
  });

  it('days in any order have the same findings', () => {
    const days = daysFrom('2025-01-01', ONE_OUT);
    expect(codes([...days].reverse())).toEqual(codes(days));
  });
});
