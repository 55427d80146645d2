import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  codesOf,
  fill,
  readingOf,
  streamOf,
  type ChunkParts,
  type FileParts,
} from '../../../../tests/support/meter-chunks.ts';
import { summariseMeterFile } from './summary.ts';

const B1 = streamOf({ register: 'B1', quantity: 'export' });
const T1 = streamOf({ register: '1.8.0' });

const summaryOf = (parts: FileParts) => {
  const { sink, result } = summariseMeterFile();
  fill(sink, parts);
  return result();
};
const totalOf = (chunks: readonly ChunkParts[]) => summaryOf({ chunks }).streams[0]?.total;

describe('the sum of intervals', () => {
  it('is exact, whatever the decimals', () => {
    // 0.12 + 0.003 + 1.0 = 1.123
    expect(
      totalOf([
        { start: 0, values: [12, null], places: 2 },
        { start: 30, values: [3] },
        { start: 45, values: [10], places: 1 },
      ]),
    ).toBe('1.123');
  });

  it('is exact past 2^53, and below 0', () => {
    const largest = Number.MAX_SAFE_INTEGER;
    // 4 × 9007199254740991 + 5 = 36028797018963969
    expect(totalOf([{ start: 0, values: [largest, largest, largest, 5, largest], places: 0 }])).toBe(
      '36028797018963969',
    );
    expect(totalOf([{ start: 0, values: [-largest, -largest, 1], places: 3 }])).toBe('-18014398509481.981');
  });

  it('is the same as with large whole numbers', () => {
    const values = fc.array(fc.maxSafeInteger(), { minLength: 1, maxLength: 30 });
    fc.assert(
      fc.property(values, (all) => {
        const sum = all.reduce((total, value) => total + BigInt(value), 0n);
        expect(totalOf([{ start: 0, values: all, places: 0 }])).toBe(sum.toString());
      }),
    );
  });
});

describe('the summary of a stream', () => {
  const { streams, findings } = summaryOf({
    chunks: [
      // Across the end of January: 3 in it, 2 in February, one of them missing.
      { start: '2025-01-31 23:15', values: [1, 2, 3, 4, null], quality: 'estimated' },
      { start: '2025-03-01 00:00', values: [50], minutes: 30 },
      { start: '2025-01-31 23:15', values: [7], stream: B1, minutes: 45 },
    ],
  });

  it('has counts, ends, qualities and months', () => {
    const [export1, import1] = streams;
    expect(export1?.stream).toBe(B1);
    const { stream, coverage, ...rest } = import1 ?? {};
    expect(rest).toEqual({
      lengths: [
        { minutes: 15, count: 5 },
        { minutes: 30, count: 1 },
      ],
      count: 6,
      total: '0.06',
      // 2025-01-31 is day 20119 since 1970 (spreadsheet serial 45688 less 25569), 2025-03-01 day 20148.
      first: 20119 * 1440 + 23 * 60 + 15,
      end: 20148 * 1440 + 30,
      qualities: { actual: 1, estimated: 4, substituted: 0, edited: 0, missing: 1 },
      months: [
        { year: 2025, month: 1, count: 3, total: '0.006' },
        { year: 2025, month: 2, count: 1, total: '0.004' },
        { year: 2025, month: 3, count: 1, total: '0.05' },
      ],
    });
    expect([stream?.register, coverage?.gaps.length]).toEqual(['E1', 1]);
  });

  it('tells of gaps and of ends', () => {
    expect(codesOf(findings)).toEqual([
      'meter-file/values-missing',
      'meter-file/ends-early',
      'meter-file/gap',
    ]);
  });

  it('counts months in whatever order they come', () => {
    const chunks = ['2025-02-01', '2025-01-01', '2025-02-02'].map((start) => ({ start, values: [1] }));
    expect(summaryOf({ chunks }).streams[0]?.months.map(({ month, count }) => [month, count])).toEqual([
      [1, 1],
      [2, 2],
    ]);
  });

  it('counts an interval across the end of a month where it begins', () => {
    const chunks = [{ start: '2025-01-31 23:50', values: [1, 2] }];
    expect(summaryOf({ chunks }).streams[0]?.months.map(({ month, total }) => [month, total])).toEqual([
      [1, '0.001'],
      [2, '0.002'],
    ]);
  });

  it('counts what comes twice twice, and says so', () => {
    const { streams: all, findings: said } = summaryOf({
      chunks: [
        { start: 0, values: [1, 2, 3] },
        { start: 15, values: [2] },
      ],
    });
    expect([all[0]?.total, all[0]?.coverage.doubled, codesOf(said)]).toEqual([
      '0.008',
      15,
      ['meter-file/counted-twice'],
    ]);
  });

  it('takes what is missing for no number', () => {
    const { streams: all } = summaryOf({
      chunks: [{ start: 0, values: [1, 2], quality: ['actual', 'missing'] }],
    });
    expect([all[0]?.total, all[0]?.qualities.missing, all[0]?.coverage.missing]).toEqual(['0.001', 1, 1]);
  });

  it('refuses a chunk that no reader should make', () => {
    expect(() => totalOf([{ start: 0, values: [1], minutes: 0 }])).toThrow(RangeError);
  });
});

describe('the summary of a register', () => {
  it('has its first and last reading, and what it counted between them', () => {
    const readings = [
      readingOf(T1, '2025-06-01', '001581.123', { line: 3 }),
      readingOf(T1, '2025-05-01', '1500', { line: 9 }),
      readingOf(T1, '2025-05-01 08:00', '1501.5'),
      readingOf(T1, '2025-07-01', '0', { quality: 'missing' }),
    ];
    const { registers, findings } = summaryOf({ readings });
    expect(registers).toHaveLength(1);
    // 1581.123 − 1500
    expect(registers[0]).toMatchObject({ count: 3, advance: '81.123' });
    expect([registers[0]?.first.line, registers[0]?.last.line]).toEqual([9, 3]);
    expect(findings).toEqual([]);
  });

  it('has no advance where it went back', () => {
    const readings = [readingOf(T1, '2025-05-01', '99990'), readingOf(T1, '2025-06-01', '10')];
    const { registers, findings } = summaryOf({ readings });
    expect([registers[0]?.advance, codesOf(findings)]).toEqual([null, ['meter-file/register-went-back']]);
  });

  it('is none without a reading', () => {
    expect(
      summaryOf({ readings: [readingOf(T1, '2025-05-01', '', { quality: 'missing' })] }).registers,
    ).toEqual([]);
  });
});
