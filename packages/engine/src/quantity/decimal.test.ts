import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  commonDivisor,
  commonMultiple,
  decimalPlaces,
  decimalToWhole,
  exactText,
  isDecimalText,
  quotientText,
  wholeToDecimal,
} from './decimal.ts';

const LARGEST = 9007199254740991;

describe('decimal texts', () => {
  it.each(['0', '7', '3.10', '-0.05', '0.000', '-12', '1234567890.123456789'])('takes "%s"', (text) => {
    expect(isDecimalText(text)).toBe(true);
  });

  it.each([
    '',
    ' ',
    '.5',
    '5.',
    '01',
    '-01',
    '+1',
    '--1',
    '1e5',
    '1,000',
    ' 1',
    '1 ',
    '४',
    'NaN',
    '∞',
    '1\n',
  ])('refuses "%s"', (text) => {
    expect(isDecimalText(text)).toBe(false);
  });

  it('takes forty characters and no more', () => {
    expect(isDecimalText('1'.repeat(40))).toBe(true);
    expect(isDecimalText('1'.repeat(41))).toBe(false);
  });

  it('counts decimals without trailing zeros', () => {
    expect(['3', '3.10', '0.000', '-0.05', '100.0010'].map(decimalPlaces)).toEqual([0, 1, 0, 2, 3]);
    expect(() => decimalPlaces('3,1')).toThrow(new RangeError('"3,1" is not a decimal number'));
  });
});

describe('decimal texts as whole numbers', () => {
  it.each([
    ['3.10', 2, 310],
    ['-0.05', 2, -5],
    ['7', 0, 7],
    ['2.50000', 1, 25],
    ['9007199254740991', 0, LARGEST],
    ['-90071992547409.91', 2, -LARGEST],
  ] as const)('reads %s with %i places', (text, places, whole) => {
    expect(decimalToWhole(text, places)).toBe(whole);
  });

  it('reads a zero without a sign', () => {
    expect(decimalToWhole('-0', 2)).toBe(0);
    expect(decimalToWhole('-0.00', 2)).toBe(0);
  });

  it('refuses what is finer or larger, and what is no decimal', () => {
    expect(() => decimalToWhole('0.005', 2)).toThrow(new RangeError('"0.005" has more than 2 decimals'));
    expect(() => decimalToWhole('9007199254740992', 0)).toThrow(
      new RangeError('"9007199254740992" is too large'),
    );
    expect(() => decimalToWhole('-90071992547409.92', 2)).toThrow(
      new RangeError('"-90071992547409.92" is too large'),
    );
    expect(() => decimalToWhole('1e3', 0)).toThrow(new RangeError('"1e3" is not a decimal number'));
  });

  it.each([
    [-5, 2, '-0.05'],
    [0, 2, '0.00'],
    [-0, 2, '0.00'],
    [5, 3, '0.005'],
    [310, 0, '310'],
    [-310, 0, '-310'],
    [LARGEST, 8, '90071992.54740991'],
  ] as const)('prints %i with %i places', (whole, places, text) => {
    expect(wholeToDecimal(whole, places)).toBe(text);
  });

  it('prints large whole numbers', () => {
    expect(wholeToDecimal(-(10n ** 20n) - 7n, 2)).toBe('-1000000000000000000.07');
    expect(wholeToDecimal(-1n, 0)).toBe('-1');
  });

  it('reads back what it printed', () => {
    fc.assert(
      fc.property(fc.maxSafeInteger(), fc.integer({ min: 0, max: 8 }), (whole, places) => {
        expect(decimalToWhole(wholeToDecimal(whole, places), places)).toBe(whole);
      }),
    );
  });
});

describe('quotients', () => {
  it.each([
    [2, 3, 2, '0.67'],
    [120, 270, 4, '0.4444'],
    [1, 8, 2, '0.13'],
    [-1, 8, 2, '-0.13'],
    [-1, 1000, 2, '0.00'],
    [5, 1, 0, '5'],
    [10n ** 30n, 3, 1, '333333333333333333333333333333.3'],
  ] as const)('prints %i ÷ %i to %i places for people', (top, bottom, places, text) => {
    expect(quotientText(top, bottom, places)).toBe(text);
  });

  it.each([
    [95, 2, '47.5'],
    [6, 3, '2'],
    [0, 7, '0'],
    [-3, 8, '-0.375'],
    [190, 3, '190/3'],
    [2, 3, '2/3'],
    [200, 3, '200/3'],
    [-2, 3, '-2/3'],
    [4, 6, '2/3'],
    [1, 7, '1/7'],
    [618, 868, '309/434'],
    [1, 2 ** 40, '0.0000000000009094947017729282379150390625'],
    [-LARGEST, 1000, '-9007199254740.991'],
  ] as const)('prints %i ÷ %i exactly', (top, bottom, text) => {
    expect(exactText(top, bottom)).toBe(text);
  });

  it('prints quotients of large whole numbers exactly', () => {
    expect(exactText(10n ** 30n + 1n, 1000)).toBe('1000000000000000000000000000.001');
    expect(exactText(10n ** 30n, 7)).toBe('1000000000000000000000000000000/7');
    expect(exactText(2n * 10n ** 30n, 3)).toBe('2000000000000000000000000000000/3');
  });

  it('prints a fraction in lowest terms exactly where the decimal does not end', () => {
    const whole = fc.integer({ min: -1_000_000_000, max: 1_000_000_000 });
    fc.assert(
      fc.property(whole, fc.integer({ min: 1, max: 100_000 }), (top, bottom) => {
        const text = exactText(top, bottom);
        let rest = bottom / commonDivisor(top, bottom);
        const lowest = rest;
        while (rest % 2 === 0) rest /= 2;
        while (rest % 5 === 0) rest /= 5;
        const fraction = `${String(top / commonDivisor(top, bottom))}/${String(lowest)}`;
        if (rest !== 1) expect(text).toBe(fraction);
        else expect(text).toMatch(/^-?\d+(?:\.\d*[1-9])?$/);
      }),
      { numRuns: 2000 },
    );
  });

  it('finds common divisors and multiples', () => {
    expect(commonDivisor(12, 18)).toBe(6);
    expect(commonDivisor(-4, 6)).toBe(2);
    expect(commonDivisor(0, 5)).toBe(5);
    expect(commonDivisor(0, 0)).toBe(1);
    expect(commonMultiple(4, 6)).toBe(12);
    expect(commonMultiple(30, 100)).toBe(300);
  });
});
