import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { codesOf, fileOf, fill, streamOf, type ChunkParts } from '../../../../tests/support/meter-chunks.ts';
import { fileCoverage, type StreamCoverage } from './coverage.ts';
import { summariseMeterFile } from './summary.ts';
import { coverageFindings } from './tell-coverage.ts';

const B1 = streamOf({ register: 'B1', quantity: 'export' });
const week = 7 * 1440;

const coverageOf = (chunks: readonly ChunkParts[]): readonly StreamCoverage[] =>
  fileCoverage(fileOf({ chunks }));
const told = (chunks: readonly ChunkParts[]): readonly string[] =>
  codesOf(coverageFindings(coverageOf(chunks)));

describe('what a stream covers', () => {
  it('are the stretches with values; missing values are gaps as those that are not there', () => {
    const [one, ...others] = coverageOf([
      { start: 0, values: [1, 1, null, 1, null] },
      { start: 90, values: [1, 1] },
      { start: 120, values: [1, 1], minutes: 30 },
    ]);
    expect(others).toEqual([]);
    expect(one).toMatchObject({
      covered: [
        { from: 0, to: 30 },
        { from: 45, to: 60 },
        { from: 90, to: 180 },
      ],
      gaps: [
        { from: 30, to: 45 },
        { from: 60, to: 90 },
      ],
      missing: 2,
      doubled: 0,
      minutes: 15,
    });
  });

  it('is nothing where there is no value', () => {
    expect(coverageOf([{ start: 0, values: [null] }])[0]).toMatchObject({
      covered: [],
      gaps: [],
      missing: 1,
    });
  });
});

describe('what is said of it', () => {
  it('is nothing where all is there', () => {
    expect(
      told([
        { start: 0, values: [1, 1] },
        { start: 30, values: [1], minutes: 5 },
        { start: 0, values: [1], minutes: 35, stream: B1 },
      ]),
    ).toEqual([]);
  });

  it.each([
    [week - 15, 'meter-file/short-gaps'],
    [week, 'meter-file/gap'],
    [week + 15, 'meter-file/gap'],
  ])('tells a gap of %i minutes with %s', (length, code) => {
    expect(
      told([
        { start: 0, values: [1] },
        { start: 15 + length, values: [1] },
      ]),
    ).toEqual([code]);
  });

  it('sums short gaps up, and tells long ones one by one', () => {
    const chunks = [0, 30, 75, 75 + week + 15, 75 + 3 * week, 105 + 3 * week].map((start) => ({
      start,
      values: [1],
    }));
    const findings = coverageFindings(coverageOf(chunks));
    expect(codesOf(findings)).toEqual(['meter-file/gap', 'meter-file/gap', 'meter-file/short-gaps']);
    // 15 to 30, 45 to 75 and the last of 15 minutes.
    expect(findings[2]?.values).toMatchObject({ count: '3', length: '1 h', first: '1970-01-01 00:15' });
  });

  it('compares where registers of one point begin and end, not of two', () => {
    const early = { start: 0, values: [1, 1, 1] };
    const late = { start: 15, values: [1], stream: B1 };
    expect(told([early, late])).toEqual(['meter-file/begins-late', 'meter-file/ends-early']);
    const elsewhere = { ...late, stream: { ...B1, point: 'P2' } };
    expect(told([early, elsewhere])).toEqual([]);
    const reactive = { ...late, stream: { ...B1, quantity: 'other' as const } };
    expect(told([early, reactive])).toEqual([]);
  });

  it('takes meters that counted a register one after another as one', () => {
    const [one, other] = ['M1', 'M2'].map((meter) => streamOf({ meter }));
    const chunks = [
      { start: 0, values: [1, 1], stream: one ?? B1 },
      { start: 30, values: [1, 1], stream: other ?? B1 },
      { start: 0, values: [1, 1, 1, 1], stream: B1 },
    ];
    expect(told(chunks)).toEqual([]);
  });

  it('names a register without any value', () => {
    expect(told([{ start: 0, values: [null] }])).toEqual(['meter-file/no-values']);
  });
});

const chunk = fc.record({
  start: fc.integer({ min: 0, max: 40 }).map((at) => at * 15),
  values: fc.array(fc.option(fc.integer({ min: 0, max: 9 })), { minLength: 1, maxLength: 6 }),
});

describe('coverage while a file is read', () => {
  it('is that of the collected file', () => {
    fc.assert(
      fc.property(fc.array(chunk, { maxLength: 10 }), (all) => {
        // Each minute once: of doubles only the one is kept that has a value.
        const seen = new Set<number>();
        const chunks = all.flatMap(({ start, values }) =>
          values.flatMap((value, at) => {
            const own = start + at * 15;
            if (seen.has(own)) return [];
            seen.add(own);
            return [{ start: own, values: [value] }];
          }),
        );
        const { sink, result } = summariseMeterFile();
        fill(sink, { chunks });
        expect(result().streams.map(({ coverage }) => coverage)).toEqual(coverageOf(chunks));
      }),
    );
  });
});
