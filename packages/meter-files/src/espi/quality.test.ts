import { describe, expect, it } from 'vitest';
import { VALUE_QUALITIES } from '../stream.ts';
import { DOUBTS, graver, qualityOf } from './quality.ts';

describe('a quality of the standard', () => {
  it.each([
    [0, 'actual', DOUBTS.none],
    [7, 'edited', DOUBTS.none],
    [8, 'estimated', DOUBTS.none],
    [9, 'estimated', DOUBTS.none],
    [10, 'actual', DOUBTS.questionable],
    [11, 'substituted', DOUBTS.none],
    [12, 'estimated', DOUBTS.notMeasured],
    [13, 'estimated', DOUBTS.none],
    [14, 'actual', DOUBTS.none],
    [15, 'substituted', DOUBTS.notMeasured],
    [16, 'estimated', DOUBTS.unknown],
    [17, 'actual', DOUBTS.none],
    [18, 'actual', DOUBTS.none],
    [19, 'actual', DOUBTS.none],
    [20, 'estimated', DOUBTS.unknown],
    [1, 'estimated', DOUBTS.unknown],
    [null, 'estimated', DOUBTS.unknown],
  ] as const)('%s is %s', (code, quality, doubts) => {
    expect(qualityOf(code)).toEqual({ index: VALUE_QUALITIES.indexOf(quality), doubts });
  });

  it('of several is the one that says most against a value, whatever comes first', () => {
    const together = (...codes: readonly number[]): string | undefined =>
      VALUE_QUALITIES[codes.map(qualityOf).reduce(graver).index];
    expect([together(0, 7), together(7, 0)]).toEqual(['edited', 'edited']);
    expect([together(7, 11), together(11, 7)]).toEqual(['substituted', 'substituted']);
    expect([together(11, 8), together(8, 11)]).toEqual(['estimated', 'estimated']);
  });
});
