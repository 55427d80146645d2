import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  chunkOf,
  codesOf,
  fileOf,
  minuteOf,
  streamOf,
  type ChunkParts,
} from '../../../../tests/support/meter-chunks.ts';
import { collectMeterFile, type CollectedFile } from './collect.ts';

const E1 = streamOf();
const E2 = streamOf({ register: 'E2' });

/** A series as plain lists, to compare. */
const plain = ({ intervals }: CollectedFile) =>
  intervals.map(({ stream, minutes, places, starts, values, qualities }) => ({
    register: stream.register,
    minutes,
    places,
    starts: Array.from(starts),
    values: Array.from(values),
    qualities: Array.from(qualities),
  }));

const valuesOf = (chunks: readonly ChunkParts[]): readonly number[] =>
  Array.from(fileOf({ chunks }).intervals[0]?.values ?? []);

describe('intervals', () => {
  it('come in order of time, whatever order they are read in, in the decimals of the finest', () => {
    const file = fileOf({
      chunks: [
        { start: 45, values: [1], places: 4, line: 4, quality: 'estimated' },
        { start: 0, values: [25, null], places: 2, line: 2 },
        { start: 30, values: [120], places: 3, line: 3 },
      ],
    });
    // 0.25, none, 0.120 and 0.0001 kWh, all in 4 decimals.
    expect(plain(file)).toEqual([
      {
        register: 'E1',
        minutes: 15,
        places: 4,
        starts: [0, 15, 30, 45],
        values: [2500, NaN, 1200, 1],
        qualities: [0, 4, 0, 1],
      },
    ]);
    expect(Array.from(file.intervals[0]?.lines ?? [])).toEqual([2, 2, 3, 4]);
    expect(file.findings).toEqual([]);
  });

  it('keep what was read when the columns grow', () => {
    const chunks = Array.from({ length: 40 }, (_, index) => ({
      start: index * 15 * 100,
      values: Array.from({ length: 100 }, (__, at) => index * 100 + at),
    }));
    expect(valuesOf(chunks)).toEqual(Array.from({ length: 4000 }, (_, index) => index));
  });

  it('are told apart by stream and by length, in the order of the names', () => {
    const file = fileOf({
      chunks: [
        { start: 60, values: [4, 5], stream: E2, minutes: 30 },
        { start: 30, values: [3], minutes: 5 },
        { start: 0, values: [1], minutes: 30 },
        { start: 0, values: [2], stream: E2, minutes: 30 },
      ],
    });
    expect(plain(file).map(({ register, minutes, values }) => [register, minutes, values])).toEqual([
      ['E1', 5, [3]],
      ['E1', 30, [1]],
      ['E2', 30, [2, 4, 5]],
    ]);
    expect(file.findings).toEqual([]);
  });

  it('without a number are missing, and missing ones have no number', () => {
    const { values, qualities } = fileOf({
      chunks: [{ start: 0, values: [null, 7], quality: ['actual', 'missing'] }],
    }).intervals[0] ?? { values: [], qualities: [] };
    expect([Array.from(values), Array.from(qualities)]).toEqual([
      [NaN, NaN],
      [4, 4],
    ]);
  });

  it('can be asked for twice', () => {
    const { sink, result } = collectMeterFile();
    sink.intervals(chunkOf({ start: 0, values: [1, 2] }));
    sink.intervals(chunkOf({ start: 0, values: [1, 3] }));
    const clock = { offset: null };
    expect(result(clock)).toEqual(result(clock));
  });
});

describe('values in many decimals', () => {
  // 2^53 - 1 = 9007199254740991
  it('are exact up to 2^53 - 1', () => {
    const file = fileOf({
      chunks: [
        { start: 0, values: [900719925474099], places: 2 },
        { start: 15, values: [1], places: 3 },
      ],
    });
    expect(Array.from(file.intervals[0]?.values ?? [])).toEqual([9007199254740990, 1]);
    expect(file.findings).toEqual([]);
  });

  it('are an error beyond, and have no value then, whichever comes first', () => {
    const chunks = [
      { start: 0, values: [900719925474100], places: 2, line: 2 },
      { start: 15, values: [1], places: 3, line: 3 },
    ];
    for (const order of [chunks, [...chunks].reverse()]) {
      const file = fileOf({ chunks: order });
      expect(Array.from(file.intervals[0]?.values ?? [])).toEqual([NaN, 1]);
      expect(file.findings.map(({ code, position }) => [code, position?.line])).toEqual([
        ['meter-file/interval-too-fine', 2],
      ]);
    }
  });
});

describe('an interval that comes twice', () => {
  it('counts once where the value is the same, with the better quality', () => {
    const file = fileOf({
      chunks: [
        { start: 0, values: [5], quality: 'estimated', line: 2 },
        { start: 0, values: [5], line: 3 },
      ],
    });
    expect(plain(file)[0]).toMatchObject({ starts: [0], values: [5], qualities: [0] });
    expect(codesOf(file.findings)).toEqual(['meter-file/interval-repeated']);
  });

  it.each([
    ['actual', 'edited'],
    ['edited', 'substituted'],
    ['substituted', 'estimated'],
    ['estimated', 'missing'],
  ] as const)('has the %s value rather than the %s one, whichever comes first', (better, worse) => {
    const chunks = [
      { start: 0, values: [5], quality: better, line: 2 },
      { start: 0, values: [6], quality: worse, line: 3 },
    ];
    for (const order of [chunks, [...chunks].reverse()]) {
      const file = fileOf({ chunks: order });
      expect(plain(file)[0]?.values).toEqual([5]);
      expect(codesOf(file.findings)).toEqual(['meter-file/interval-replaced']);
    }
  });

  it('has no value where two of one quality differ', () => {
    const file = fileOf({
      chunks: [
        { start: 0, values: [5, 1], line: 2 },
        { start: 0, values: [6, 1], line: 3 },
      ],
    });
    expect(plain(file)[0]).toMatchObject({ starts: [0, 15], values: [NaN, 1], qualities: [4, 0] });
    expect(codesOf(file.findings)).toEqual(['meter-file/interval-conflict', 'meter-file/interval-repeated']);
  });

  it('has the better value of three where two worse ones differ', () => {
    const file = fileOf({
      chunks: [
        { start: 0, values: [5], quality: 'estimated' },
        { start: 0, values: [6], quality: 'estimated' },
        { start: 0, values: [7] },
      ],
    });
    expect(plain(file)[0]?.values).toEqual([7]);
    expect(codesOf(file.findings)).toEqual(['meter-file/interval-replaced']);
  });
});

describe('intervals over each other', () => {
  it('leave the shorter, and the longer is an error', () => {
    const file = fileOf({
      chunks: [
        { start: 0, values: [100, 200, 300], minutes: 30, line: 2 },
        { start: 40, values: [7, 8], minutes: 5, line: 3 },
      ],
    });
    expect(plain(file).map(({ starts, values }) => [starts, values])).toEqual([
      [
        [40, 45],
        [7, 8],
      ],
      [
        [0, 60],
        [100, 300],
      ],
    ]);
    expect(file.findings.map(({ code, values }) => [code, values['first']])).toEqual([
      ['meter-file/interval-overlap', '1970-01-01 00:30'],
    ]);
  });

  it('of one length leave the earlier', () => {
    const file = fileOf({
      chunks: [
        { start: 0, values: [1, 2] },
        { start: 20, values: [3] },
      ],
    });
    expect(plain(file)[0]).toMatchObject({ starts: [0, 15], values: [1, 2] });
    expect(codesOf(file.findings)).toEqual(['meter-file/interval-overlap']);
  });

  it('without a value give way, and nothing is said', () => {
    const file = fileOf({
      chunks: [
        { start: 0, values: [null, 200], minutes: 30 },
        { start: 0, values: [1, 2, null, null], minutes: 15 },
      ],
    });
    expect(plain(file).map(({ minutes, starts, values }) => [minutes, starts, values])).toEqual([
      [15, [0, 15], [1, 2]],
      [30, [30], [200]],
    ]);
    expect(file.findings).toEqual([]);
  });

  it('are none where a meter goes over to shorter ones on a day', () => {
    const change = minuteOf('2025-04-02');
    const file = fileOf({
      chunks: [
        { start: '2025-04-01', values: Array.from({ length: 48 }, () => 6), minutes: 30 },
        { start: change, values: Array.from({ length: 288 }, () => 1), minutes: 5 },
      ],
    });
    expect(plain(file).map(({ minutes, values }) => [minutes, values.length])).toEqual([
      [5, 288],
      [30, 48],
    ]);
    expect(file.findings).toEqual([]);
  });
});

describe('a chunk that no reader should make', () => {
  it.each([
    [{ minutes: 0 }],
    [{ minutes: 7.5 }],
    [{ start: 0.5 }],
    [{ start: 2 ** 31 - 15 }],
    [{ start: -(2 ** 31) - 1 }],
    [{ places: -1 }],
    [{ places: 19 }],
    [{ values: [0.5] }],
    [{ values: [2 ** 53] }],
    [{ values: [1, 2], quality: ['actual'] as const }],
  ])('is refused: %j', (parts) => {
    expect(() => fileOf({ chunks: [{ start: 0, values: [1], ...parts }] })).toThrow(RangeError);
  });

  it('is not one on the limits', () => {
    const file = fileOf({
      chunks: [
        { start: 2 ** 31 - 16, values: [2 ** 53 - 1], places: 18 },
        { start: -(2 ** 31), values: [1], places: 18 },
        { start: 0, values: [] },
      ],
    });
    expect(plain(file)[0]?.values).toEqual([1, 2 ** 53 - 1]);
  });
});

/** Chunks of two registers with gaps, doubles and values that are missing. */
const chunks = fc.array(
  fc.record({
    start: fc.integer({ min: 0, max: 60 }).map((at) => at * 15),
    values: fc.array(fc.option(fc.integer({ min: 0, max: 9 })), { minLength: 1, maxLength: 12 }),
    stream: fc.constantFrom(E1, E2),
    minutes: fc.constantFrom(15, 30),
    places: fc.integer({ min: 2, max: 5 }),
    quality: fc.constantFrom('actual' as const, 'estimated' as const),
    line: fc.nat({ max: 99 }),
  }),
  { minLength: 1, maxLength: 12 },
);

describe('the same chunks in another order', () => {
  it('give the same series, and findings of the same kinds', () => {
    fc.assert(
      fc.property(
        chunks.chain((all) =>
          fc.tuple(
            fc.constant(all),
            fc.shuffledSubarray(all, { minLength: all.length, maxLength: all.length }),
          ),
        ),
        ([all, shuffled]) => {
          const [one, other] = [fileOf({ chunks: all }), fileOf({ chunks: shuffled })];
          expect(plain(other)).toEqual(plain(one));
          const kinds = ({ findings }: CollectedFile) =>
            findings.map(({ code, values }) => [code, values['count'], values['first'], values['last']]);
          expect(kinds(other)).toEqual(kinds(one));
        },
      ),
    );
  });

  it('cut into single values give the same series', () => {
    fc.assert(
      fc.property(chunks, (all) => {
        const single = all.flatMap((chunk) =>
          chunk.values.map((value, at) => ({
            ...chunk,
            start: chunk.start + at * chunk.minutes,
            values: [value],
          })),
        );
        expect(plain(fileOf({ chunks: single }))).toEqual(plain(fileOf({ chunks: all })));
      }),
    );
  });
});
