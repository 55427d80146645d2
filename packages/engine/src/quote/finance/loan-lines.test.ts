import { expect, it } from 'vitest';
import { instalmentOf, loanLines } from './loan-lines.ts';

const LOAN = {
  amount: 100_000n,
  rate: { top: 1n, bottom: 100n },
  months: 3,
  kind: 'reducing',
  step: 1n,
  mode: 'half-up',
} as const;

it('has an exact instalment, rounded once', () => {
  // 100 × r² ÷ (r + 2) at r = 1 is 100 × 4 ÷ 3 = 133.33 for two months of 100 %.
  expect(instalmentOf({ ...LOAN, amount: 100n, rate: { top: 1n, bottom: 1n }, months: 2 })).toBe(133n);
  // On the tie: 1 over 2 months without interest is a half.
  expect(instalmentOf({ ...LOAN, amount: 1n, rate: { top: 0n, bottom: 1n }, months: 2 })).toBe(1n);
  expect(
    instalmentOf({ ...LOAN, amount: 1n, rate: { top: 0n, bottom: 1n }, months: 2, mode: 'half-even' }),
  ).toBe(0n);
});

it('ends with nothing owed', () => {
  expect(loanLines(LOAN).map(({ balance }) => balance)).toEqual([66_998n, 33_666n, 0n]);
});
