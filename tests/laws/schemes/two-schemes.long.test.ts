import fc from 'fast-check';
import { describe, it } from 'vitest';
import { expectSame } from './two-schemes-comparison.ts';
import { nettingYear } from './two-schemes.ts';

describe('ten thousand years of unit netting, and the same rule written out as a ledger', () => {
  it('bill, carry, pay and save the same, to the coin and the watt-hour', () => {
    fc.assert(
      fc.property(nettingYear, (one) => {
        expectSame(one);
      }),
      { numRuns: 3_000 },
    );
  });
});
