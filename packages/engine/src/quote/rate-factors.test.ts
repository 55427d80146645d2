import { expect, it } from 'vitest';
import { percentFactor } from './factors.ts';
import { rateFactors } from './rate-factors.ts';

const tops = (factors: ReturnType<typeof rateFactors>): readonly bigint[] =>
  factors.exact.map(({ numerator }) => numerator);

it('rises from the second year on', () => {
  expect(tops(rateFactors({ years: 3 }, percentFactor('10')))).toEqual([1n, 110n, 12_100n]);
});

it('stands still up to the year whose rates the tariff has', () => {
  expect(tops(rateFactors({ years: 4, ratesOfYear: 2 }, percentFactor('10')))).toEqual([1n, 1n, 1n, 110n]);
  expect(tops(rateFactors({ years: 2, ratesOfYear: 5 }, percentFactor('10')))).toEqual([1n, 1n]);
});
