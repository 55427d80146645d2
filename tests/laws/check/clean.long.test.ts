import fc from 'fast-check';
import { describe, it } from 'vitest';
import { expectClean } from './clean-comparison.ts';
import { EXAMPLES } from './examples.ts';
import { randomPapers } from './random-papers.ts';

describe('thousands of years of right bills, printed as a utility would and checked', () => {
  it.each(EXAMPLES)('are right: $name', (example) => {
    fc.assert(fc.property(randomPapers(example), expectClean), { numRuns: 25 });
  });
});
