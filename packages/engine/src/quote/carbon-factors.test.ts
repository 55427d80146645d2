import { describe, expect, it } from 'vitest';
import { CARBON_FACTORS } from './carbon-factors.ts';
import { exactDecimal } from './exact-decimals.ts';
import { rangeFindings, RANGES } from './ranges.ts';

describe('published factors', () => {
  it.each(CARBON_FACTORS.map((one) => [`${one.of} ${one.factor}`, one] as const))(
    'can stand in a quote, with title, publisher and year: %s',
    (_, { factor, version, variant, title, publisher, year }) => {
      expect(rangeFindings(factor, RANGES.carbon, ['carbon', 'factor'])).toEqual([]);
      expect(exactDecimal(factor).numerator).not.toBe(0n);
      expect([version, variant, title, publisher].every((text) => text.length > 3)).toBe(true);
      expect(year).toBeGreaterThan(2000);
    },
  );

  it('are told apart by kind, edition and variant', () => {
    const names = CARBON_FACTORS.map(({ kind, of, version, variant }) =>
      [kind, of, version, variant].join('; '),
    );
    expect(new Set(names).size).toBe(CARBON_FACTORS.length);
  });
});
