import { describe, expect, it } from 'vitest';
import { codesOf, fileOf, readingOf, streamOf } from '../../../../tests/support/meter-chunks.ts';

const T1 = streamOf({ register: '1-0:1.8.1', rate: '1' });
const T2 = streamOf({ register: '1-0:1.8.2', rate: '2' });

const textsOf = (readings: Parameters<typeof fileOf>[0]['readings'] = []) => {
  const { registers, findings } = fileOf({ readings });
  const values = registers.map(({ readings: all }) => all.map(({ value }) => value));
  return [values, codesOf(findings)];
};

describe('readings of registers', () => {
  it('come by register in order of time, those of a day alone before those of a minute', () => {
    const readings = [
      readingOf(T2, '2025-05-01', '9'),
      readingOf(T1, '2025-05-01 06:00', '3'),
      readingOf(T1, '2025-05-01 00:00', '2'),
      readingOf(T1, '2025-05-01', '1'),
      readingOf(T1, '2025-04-01 12:00', '0'),
    ];
    expect(textsOf(readings)).toEqual([[['0', '1', '2', '3'], ['9']], []]);
  });

  it('that are the same count once, though they are written in another way', () => {
    const readings = [readingOf(T1, '2025-05-01', '001581.120'), readingOf(T1, '2025-05-01', '1581.12')];
    expect(textsOf(readings)).toEqual([[['001581.120']], []]);
  });

  it('of one time and different quality leave the better one, whichever comes first', () => {
    const readings = [
      readingOf(T1, '2025-05-01', '10', { quality: 'estimated' }),
      readingOf(T1, '2025-05-01', '11', { line: 2 }),
    ];
    for (const order of [readings, [...readings].reverse()])
      expect(textsOf(order)).toEqual([[['11']], ['meter-file/reading-replaced']]);
  });

  it('of one time and one quality that differ are neither used', () => {
    const readings = [
      readingOf(T1, '2025-05-01', '10'),
      readingOf(T1, '2025-05-01', '10.001'),
      readingOf(T1, '2025-05-02', '12'),
    ];
    expect(textsOf(readings)).toEqual([[['12']], ['meter-file/reading-conflict']]);
  });

  it('without a value are left out', () => {
    const readings = [
      readingOf(T1, '2025-05-01', '0', { quality: 'missing' }),
      readingOf(T1, '2025-05-01', '7'),
    ];
    expect(textsOf(readings)).toEqual([[['7']], []]);
  });

  it('are refused where a reader hands on what is no decimal text', () => {
    const readings = ['1,5', '1.'].map((value) => readingOf(T1, '2025-05-01', value));
    expect(() => fileOf({ readings })).toThrow(RangeError);
  });
});
