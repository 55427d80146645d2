import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addQuotients, isSameQuotient, NumberTooLarge, subtractQuotients, wholeSteps } from './index.ts';

const COIN = { numerator: 1, denominator: 100 };

describe('exact sums', () => {
  it('stand on the common denominator', () => {
    const terms = [
      { numerator: 19, denominator: 30 },
      { numerator: -1, denominator: 4 },
    ];
    expect(addQuotients(terms)).toEqual({ numerator: 23, denominator: 60 });
    expect(addQuotients([])).toEqual({ numerator: 0, denominator: 1 });
  });

  it('are found in large whole numbers where doubles would lose a digit', () => {
    // 9007199254740991/4 − 9007199254740987/4 is exactly 1; the parts alone fill a double.
    const a = { numerator: 9_007_199_254_740_991, denominator: 4 };
    const b = { numerator: 9_007_199_254_740_987, denominator: 4 };
    expect(subtractQuotients(a, b)).toEqual({ numerator: 1, denominator: 1 });
  });

  it('refuse what no quotient of safe whole numbers can hold', () => {
    const primes = [94_906_247, 94_906_249, 94_906_267];
    const terms = primes.map((denominator) => ({ numerator: 1, denominator }));
    expect(() => addQuotients(terms)).toThrow(NumberTooLarge);
  });

  it('are those of large whole numbers, whatever the terms', () => {
    const term = fc.record({
      numerator: fc.integer({ min: -(2 ** 28), max: 2 ** 28 }),
      denominator: fc.constantFrom(1, 2, 3, 7, 30, 31, 100, 930, 44_640),
    });
    fc.assert(
      fc.property(fc.array(term, { maxLength: 6 }), (terms) => {
        const bottom = terms.reduce((product, { denominator }) => product * BigInt(denominator), 1n);
        const top = terms.reduce(
          (sum, { numerator, denominator }) => sum + (BigInt(numerator) * bottom) / BigInt(denominator),
          0n,
        );
        const { numerator, denominator } = addQuotients(terms);
        expect(BigInt(numerator) * bottom).toBe(top * BigInt(denominator));
      }),
    );
  });
});

describe('whole steps', () => {
  it('round half a coin as the mode says', () => {
    expect(wholeSteps({ numerator: 12_345, denominator: 1000 }, COIN, 'half-up')).toBe(1235);
    expect(wholeSteps({ numerator: 12_345, denominator: 1000 }, COIN, 'half-even')).toBe(1234);
    expect(wholeSteps({ numerator: -12_345, denominator: 1000 }, COIN, 'floor')).toBe(-1235);
  });

  it('do not lose the half in numbers that a double cannot multiply', () => {
    // 4503599627370497 ÷ 2 × 100 = 225179981368524850: beyond 2^53, so it is refused, not rounded wrongly.
    expect(() => wholeSteps({ numerator: 4_503_599_627_370_497, denominator: 2 }, COIN, 'down')).toThrow(
      NumberTooLarge,
    );
    // 4503599627370497 ÷ 2^40 = 4096.0000000009…; in coins 409600.00000009…: up is one more.
    expect(wholeSteps({ numerator: 4_503_599_627_370_497, denominator: 2 ** 40 }, COIN, 'up')).toBe(409_601);
    expect(wholeSteps({ numerator: 4_503_599_627_370_497n, denominator: 2 ** 40 }, COIN, 'down')).toBe(
      409_600,
    );
  });
});

it('the same value has many quotients', () => {
  expect(isSameQuotient({ numerator: 1, denominator: 2 }, { numerator: 465, denominator: 930 })).toBe(true);
  expect(isSameQuotient({ numerator: 1n, denominator: 3 }, { numerator: 1, denominator: 4 })).toBe(false);
});
