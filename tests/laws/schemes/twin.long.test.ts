import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { yearDifferences } from './scheme-comparison.ts';
import { schemeYear } from './scheme-year.ts';

describe('four thousand years under schemes of ledgers', () => {
  it('are those of the naive twin: every quantity, lot and line', () => {
    fc.assert(
      fc.property(schemeYear, (one) => {
        expect(yearDifferences(one)).toEqual([]);
      }),
      { numRuns: 1_500 },
    );
  });
});
