import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blockClock, dayText, measureIntervalYear, type Period } from '@unitbook/engine';
import {
  codesOf,
  dayOf,
  fileOf,
  minuteOf,
  streamOf,
  type ChunkParts,
} from '../../../../tests/support/meter-chunks.ts';
import { localColumns, type LocalIntervals, type LocalOptions } from './local-columns.ts';
import { minuteText } from './texts.ts';

const E2 = streamOf({ register: 'E2' });
const B1 = streamOf({ register: 'B1', quantity: 'export' });
const NET = streamOf({ register: 'N1', quantity: 'net' });

const AS_IT_STANDS = { offset: null };
const HERE: LocalOptions = { zone: null };

const columnsOf = (
  chunks: readonly ChunkParts[],
  options = HERE,
  clock: { offset: number | null } = AS_IT_STANDS,
) => localColumns(fileOf({ chunks }, clock), options);

/** The sum of a column; a column that is not there has none. */
function sumOf(column: ArrayLike<number> | null | undefined): number {
  let sum = 0;
  if (column === null || column === undefined) return NaN;
  for (let row = 0; row < column.length; row += 1) sum += column[row] ?? NaN;
  return sum;
}

/** Starts and columns as lists. */
const plain = (value: LocalIntervals | null) =>
  value && {
    starts: Array.from(value.columns.starts),
    minutes: value.columns.minutes,
    import: value.columns.import && Array.from(value.columns.import),
    export: value.columns.export && Array.from(value.columns.export),
    generation: value.columns.generation && Array.from(value.columns.generation),
  };

describe('columns', () => {
  it('are whole watt-hours by quantity, and leave out what is missing', () => {
    const { value, findings } = columnsOf([
      { start: 0, values: [25, null, 1], places: 2 },
      { start: 0, values: [7, 8, 9], stream: B1 },
      { start: 0, values: [3, 4, 5], stream: streamOf({ register: 'G', quantity: 'generation' }), places: 3 },
    ]);
    expect(plain(value)).toEqual({
      starts: [0, 30],
      minutes: 15,
      import: [250, 10],
      export: [7, 9],
      generation: [3, 5],
    });
    expect(
      findings.map(({ code, values }) => [code, values['register'], values['count'], values['first']]),
    ).toEqual([['meter-file/incomplete', 'E1', '1', '1970-01-01 00:15']]);
  });

  it('add registers of one quantity up, where all of them have a value', () => {
    const { value, findings } = columnsOf([
      { start: 0, values: [1, 2, 3] },
      { start: 15, values: [10, 20, 30], stream: E2 },
    ]);
    expect(plain(value)).toMatchObject({ starts: [15, 30], import: [12, 23], export: null });
    expect(findings.map(({ code, values }) => [code, values['register'], values['first']])).toEqual([
      ['meter-file/incomplete', 'E1', '1970-01-01 00:45'],
      ['meter-file/incomplete', 'E2', '1970-01-01 00:00'],
    ]);
  });

  it('take a total, not its rates too', () => {
    const rates = ['1', '2'].map((rate) => streamOf({ register: `E1/${rate}`, rate }));
    const { value, findings } = columnsOf([
      { start: 0, values: [5] },
      ...rates.map((stream) => ({ start: 0, values: [2], stream })),
    ]);
    expect([plain(value)?.import, codesOf(findings)]).toEqual([[5], ['meter-file/rates-in-total']]);
    const alone = columnsOf(rates.map((stream) => ({ start: 0, values: [2], stream })));
    expect([plain(alone.value)?.import, alone.findings]).toEqual([[4], []]);
    const elsewhere = columnsOf([
      { start: 0, values: [5] },
      ...rates.map((stream) => ({ start: 0, values: [2], stream: { ...stream, meter: 'M2' } })),
    ]);
    expect([plain(elsewhere.value)?.import, elsewhere.findings]).toEqual([[9], []]);
  });

  it('go on from one meter to the next', () => {
    const [one, other] = [streamOf({ meter: 'M1' }), streamOf({ meter: 'M2' })];
    const { value, findings } = columnsOf([
      { start: 0, values: [1, 2], stream: one },
      { start: 30, values: [3, 4], stream: other },
    ]);
    expect([plain(value)?.import, codesOf(findings)]).toEqual([[1, 2, 3, 4], ['meter-file/several-meters']]);
  });

  it('leave out what one of two meters lacks that count at one time', () => {
    const [one, other] = [streamOf({ meter: 'M1' }), streamOf({ meter: 'M2' })];
    const { value } = columnsOf([
      { start: 0, values: [1, 1, 1, 1, 1], stream: one },
      { start: 15, values: [10, null, 10], stream: other },
    ]);
    expect(plain(value)).toMatchObject({ starts: [0, 15, 45, 60], import: [1, 11, 11, 1] });
  });

  it('sum shorter intervals up to the shortest length that all divide', () => {
    const { value, findings } = columnsOf([
      // From 00:10: the first half hour is not whole; 00:30 to 01:00 is; 01:00 lacks one.
      { start: 10, values: [1, 2, 3, 4, 5, 6, null, 8], minutes: 10 },
      { start: 0, values: [100, 200, 300], minutes: 30, stream: B1 },
    ]);
    expect(plain(value)).toEqual({
      starts: [30],
      minutes: 30,
      import: [12],
      export: [200],
      generation: null,
    });
    expect(findings.map(({ code, values }) => [code, values['count']])).toEqual([
      ['meter-file/summed-up', undefined],
      ['meter-file/partial', '4'],
      ['meter-file/incomplete', '2'],
    ]);
  });

  it('sum up by the local clock, where that is not the grid of the file', () => {
    // Kathmandu is at UTC+5:45: 06:00 is 00:15 UTC.
    const { value, findings } = columnsOf(
      [{ start: '2025-01-01 00:05', values: [1, 2, 4, 8], minutes: 10 }],
      { zone: 'Asia/Kathmandu' },
      { offset: 0 },
    );
    expect(plain(value)).toMatchObject({
      starts: [minuteOf('2025-01-01 06:00')],
      minutes: 30,
      import: [14],
    });
    expect(codesOf(findings)).toEqual(['meter-file/summed-up', 'meter-file/partial']);
  });

  it.each([
    [1, 5],
    [5, 5],
    [3, 15],
    [10, 30],
    [20, 60],
    [60, 60],
  ])('of intervals of %i minutes have %i', (minutes, length) => {
    const values = Array.from({ length: 60 / minutes }, () => 1);
    const { value } = columnsOf([{ start: 0, values, minutes }]);
    expect(value?.columns.minutes).toBe(length);
    expect(sumOf(value?.columns.import)).toBe(60 / minutes);
  });

  it.each([7, 45, 120, 1440])('are none of intervals of %i minutes', (minutes) => {
    const { value, findings } = columnsOf([{ start: 0, values: [1], minutes }]);
    expect([value, codesOf(findings)]).toEqual([null, ['meter-file/no-columns']]);
  });

  it('go over from 30 minutes to 5 in 30', () => {
    const { value } = columnsOf([
      { start: 0, values: [60, 60], minutes: 30 },
      { start: 60, values: [1, 2, 3, 4, 5, 6, 7], minutes: 5 },
    ]);
    expect(plain(value)).toMatchObject({ starts: [0, 30, 60], minutes: 30, import: [60, 60, 21] });
  });

  it('carry what is finer than a watt-hour, each quantity by itself', () => {
    const { value, findings } = columnsOf([
      { start: 0, values: [6, 6, 6], places: 4 },
      { start: 0, values: [5, 5, 20], places: 4, stream: B1 },
    ]);
    expect(plain(value)).toMatchObject({ import: [0, 1, 0], export: [0, 1, 2] });
    expect(
      findings.map(({ code, values }) => [code, values['channel'], values['count'], values['left']]),
    ).toEqual([
      ['meter-file/finer-than-watt-hour', 'import', '3', '0.0008'],
      ['meter-file/finer-than-watt-hour', 'export', '2', '0.0000'],
    ]);
  });

  it('are none where no interval is left', () => {
    const apart = [
      { start: 0, values: [1] },
      { start: 15, values: [1], stream: E2 },
    ];
    const { value, findings } = columnsOf(apart);
    expect([value, codesOf(findings)]).toEqual([
      null,
      ['meter-file/incomplete', 'meter-file/incomplete', 'meter-file/no-whole-interval'],
    ]);
  });

  it('are none where a sum is too large to be exact', () => {
    const largest = Number.MAX_SAFE_INTEGER;
    const both = (more: number) =>
      columnsOf([
        { start: 0, values: [largest - 1] },
        { start: 0, values: [more], stream: E2 },
      ]);
    expect(plain(both(1).value)?.import).toEqual([largest]);
    expect([both(2).value, codesOf(both(2).findings)]).toEqual([null, ['meter-file/too-large']]);
    const group = columnsOf([{ start: 0, values: [largest, 1, 0], minutes: 10 }]);
    expect(codesOf(group.findings)).toEqual(['meter-file/summed-up', 'meter-file/too-large']);
    const watts = columnsOf([{ start: 0, values: [9007199254741], places: 0 }]);
    expect(codesOf(watts.findings)).toEqual(['meter-file/too-large']);
  });
});

describe('streams', () => {
  it('of net energy are an error, unless they are assigned', () => {
    const chunks = [{ start: 0, values: [1], stream: NET }];
    expect(codesOf(columnsOf(chunks).findings)).toEqual(['meter-file/net', 'meter-file/no-intervals']);
    expect(plain(columnsOf(chunks, { zone: null, assign: () => 'export' }).value)?.export).toEqual([1]);
    const none = columnsOf(chunks, { zone: null, assign: () => null });
    expect(codesOf(none.findings)).toEqual(['meter-file/no-intervals']);
  });

  it('of several points are an error, unless they are assigned', () => {
    const chunks = ['P1', 'P2'].map((point) => ({ start: 0, values: [1], stream: streamOf({ point }) }));
    expect(codesOf(columnsOf(chunks).findings)).toEqual(['meter-file/several-points']);
    const assign = ({ point }: { point: string }) => (point === 'P2' ? ('import' as const) : null);
    expect(plain(columnsOf(chunks, { zone: null, assign }).value)?.import).toEqual([1]);
  });

  it('of no active energy are left out', () => {
    const reactive = streamOf({ register: 'Q1', quantity: 'other', unit: 'kVArh' });
    const { value, findings } = columnsOf([
      { start: 0, values: [1] },
      { start: 0, values: [9], stream: reactive },
    ]);
    expect([plain(value)?.import, codesOf(findings)]).toEqual([[1], ['meter-file/other-registers']]);
  });

  it('without a value are left out', () => {
    const { value } = columnsOf([
      { start: 0, values: [1] },
      { start: 0, values: [null], stream: E2 },
    ]);
    expect(plain(value)?.import).toEqual([1]);
  });
});

describe('the clock', () => {
  const day = [{ start: '2025-03-29 23:00', values: Array.from({ length: 24 }, () => 1), minutes: 60 }];

  it('of a file with an offset is moved to the zone', () => {
    const { value, findings } = columnsOf(day, { zone: 'Europe/Amsterdam' }, { offset: 0 });
    expect(findings).toEqual([]);
    // 23:00 UTC is midnight; 00:00 and 01:00, then 03:00.
    const starts = Array.from(value?.columns.starts ?? []).map(minuteText);
    expect([starts[0], starts[1], starts[2], starts.at(-1)]).toEqual([
      '2025-03-30 00:00',
      '2025-03-30 01:00',
      '2025-03-30 03:00',
      '2025-03-31 00:00',
    ]);
    expect(value?.clockChanges.map(dayText)).toEqual(['2025-03-30']);
    expect(value?.span).toEqual({ from: dayOf('2025-03-30'), to: dayOf('2025-04-01') });
  });

  it('of a file with an offset stands where no zone is known, with a question', () => {
    const { value, findings } = columnsOf(day, HERE, { offset: 600 });
    expect(minuteText(value?.columns.starts[0] ?? NaN)).toBe('2025-03-29 23:00');
    expect(codesOf(findings)).toEqual(['meter-file/zone-not-known']);
  });

  it('of a file in local time stands, and the zone tells the days on which clocks change', () => {
    const { value, findings } = columnsOf(day, { zone: 'Europe/Amsterdam' });
    expect(minuteText(value?.columns.starts[0] ?? NaN)).toBe('2025-03-29 23:00');
    expect(value?.clockChanges.map(dayText)).toEqual(['2025-03-30']);
    expect(codesOf(findings)).toEqual(['meter-file/zone-not-needed']);
  });

  it('tells of a day that the calendar leaves out, and of a change that is neither an hour nor half of one', () => {
    const around = (start: string) => [{ start, values: Array.from({ length: 96 }, () => 1), minutes: 30 }];
    const apia = columnsOf(around('2011-12-29 12:00'), { zone: 'Pacific/Apia' }, { offset: 0 });
    expect(codesOf(apia.findings)).toEqual(['meter-file/day-left-out']);
    const howe = columnsOf(around('2025-04-04 12:00'), { zone: 'Australia/Lord_Howe' }, { offset: 0 });
    expect(codesOf(howe.findings)).toEqual([]);
    const nepal = columnsOf(around('1985-12-31 12:00'), { zone: 'Asia/Kathmandu' }, { offset: 0 });
    expect(codesOf(nepal.findings)).toContain('meter-file/odd-clock-change');
  });

  it('is no zone that is not known', () => {
    expect(() => columnsOf(day, { zone: 'Nowhere' })).toThrow(RangeError);
  });
});

const ZONES = [
  ['Europe/Amsterdam', 0],
  ['Australia/Adelaide', 600],
  ['America/St_Johns', 0],
] as const;

describe('a year in a zone with daylight saving', () => {
  it.each(ZONES)('%s: the engine finds every watt-hour of it, and no fault', (zone, offset) => {
    fc.assert(
      fc.property(fc.constantFrom(5, 15, 30), fc.integer({ min: 1, max: 997 }), (minutes, seed) => {
        // The whole of 2025 by the local clock, and a day on either side.
        const count = (367 * 1440) / minutes;
        const values = Array.from({ length: count }, (_, index) => (index * seed) % 101);
        const chunks = [{ start: '2024-12-31', values, minutes }];
        const { value, findings } = columnsOf(chunks, { zone }, { offset });
        expect(findings).toEqual([]);
        if (value === null) throw new RangeError('no columns');
        const { columns, clockChanges } = value;
        expect(sumOf(columns.import)).toBe(values.reduce((sum, one) => sum + one, 0));
        const year: Period = { from: dayOf('2025-01-01'), to: dayOf('2026-01-01') };
        const [measured] = measureIntervalYear(columns, [year], {
          clock: blockClock(null, minutes),
          windows: [],
          clockChanges,
        });
        expect(measured?.findings).toEqual([]);
        expect(measured?.value?.intervals).toBe((365 * 1440) / minutes);
      }),
      { numRuns: 6 },
    );
  });

  it('keeps the half hour that Lord Howe has twice', () => {
    const values = Array.from({ length: 96 }, (_, index) => index);
    const chunks = [{ start: '2025-04-04 12:00', values, minutes: 30 }];
    const { value } = columnsOf(chunks, { zone: 'Australia/Lord_Howe' }, { offset: 0 });
    expect(sumOf(value?.columns.import)).toBe((95 * 96) / 2);
    // 15:00 UTC on the 5th is the second 01:30: row 54, after 27 hours.
    const starts = value?.columns.starts ?? new Int32Array(0);
    expect([53, 54].map((row) => minuteText(starts[row] ?? NaN))).toEqual([
      '2025-04-06 01:30',
      '2025-04-06 01:30',
    ]);
  });
});

describe('the same file in other chunks', () => {
  it('has the same columns', () => {
    const cuts = fc.uniqueArray(fc.integer({ min: 1, max: 199 }), { maxLength: 9 });
    const values = fc.array(fc.option(fc.integer({ min: 0, max: 9999 }), { freq: 20 }), {
      minLength: 200,
      maxLength: 200,
    });
    fc.assert(
      fc.property(values, cuts, (all, at) => {
        const start = minuteOf('2025-10-25 20:00');
        const edges = [0, ...at.sort((a, b) => a - b), 200];
        const pieces = edges.slice(0, -1).map((from, index) => ({
          start: start + from * 15,
          values: all.slice(from, edges[index + 1]),
          places: 4,
        }));
        const options = { zone: 'Europe/Amsterdam' };
        const whole = columnsOf([{ start, values: all, places: 4 }], options, { offset: 0 });
        expect(columnsOf([...pieces].reverse(), options, { offset: 0 })).toEqual(whole);
      }),
    );
  });
});
