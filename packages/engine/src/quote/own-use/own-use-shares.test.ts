import { expect, it } from 'vitest';
import { ownUseShares } from './own-use-shares.ts';

it('are two names of one share without a battery, and apart with one', () => {
  const without = ownUseShares({ use: 520, generation: 510, selfUse: 194, exported: 316 });
  expect(without.notExported).toEqual(without.delivered);
  expect(without.selfSufficiency).toEqual({ numerator: 194, denominator: 520 });
  const having = ownUseShares({ use: 520, generation: 510, selfUse: 329, exported: 149 });
  expect([having.notExported?.numerator, having.delivered?.numerator]).toEqual([361, 329]);
});

it('are null where nothing is made, or nothing used', () => {
  const nothing = ownUseShares({ use: 0, generation: 0, selfUse: 0, exported: 0 });
  expect(nothing).toEqual({ notExported: null, delivered: null, selfSufficiency: null });
});
