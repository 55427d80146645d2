import { describe, expect, it } from 'vitest';
import {
  compared,
  dividedBy,
  exactDecimal,
  exactParts,
  exactPlaces,
  isZero,
  lessExact,
  printedPlaces,
  roundedText,
  toldApart,
} from './exact-decimals.ts';

describe('exact decimals', () => {
  it('are read to the last digit', () => {
    expect(exactDecimal('-3.10')).toEqual({ numerator: -310n, denominator: 100n });
    expect(exactDecimal('-0.25')).toEqual({ numerator: -25n, denominator: 100n });
    expect(exactDecimal('12345678901234567890.5').numerator).toBe(123456789012345678905n);
    expect(() => exactDecimal('1,000')).toThrow('"1,000" is not a decimal number');
  });

  it.each([
    ['3.00', '3', 0],
    ['3.001', '3', 1],
    ['2.999', '3', -1],
    ['-1', '0.5', -1],
  ])('are compared: %s with %s', (one, other, sign) => {
    expect(compared(exactDecimal(one), exactDecimal(other))).toBe(sign);
  });

  it.each([
    ['0', true],
    ['-0.00', true],
    ['0.001', false],
  ])('tell whether %s is nothing', (text, is) => {
    expect(isZero(text)).toBe(is);
  });

  it('are divided and taken from each other', () => {
    expect(dividedBy(exactDecimal('1'), exactDecimal('-4'))).toEqual({ numerator: -1n, denominator: 4n });
    expect(dividedBy(exactDecimal('1'), exactDecimal('0.0'))).toBeNull();
    expect(roundedText(lessExact(exactDecimal('3.7'), exactParts(46, 10)), 1)).toBe('-0.9');
  });

  it('are printed half-up', () => {
    expect(roundedText(exactDecimal('0.125'), 2)).toBe('0.13');
    expect(roundedText(exactDecimal('-0.125'), 2)).toBe('-0.13');
    expect(roundedText(exactDecimal('2'), 0)).toBe('2');
  });

  it.each([
    ['0', 0],
    ['1.250', 2],
    ['0.000000000001', 12],
    ['0.0000000000001', null],
  ])('tell how many places %s needs', (text, places) => {
    expect(exactPlaces(exactDecimal(text))).toBe(places);
  });

  it('do not end where a third is left', () => {
    expect(exactPlaces({ numerator: 1n, denominator: 3n })).toBeNull();
    expect(exactPlaces({ numerator: 3n, denominator: 3n })).toBe(0);
  });

  it('are told apart from a limit', () => {
    const limit = exactDecimal('1400');
    expect(toldApart(exactDecimal('1400.1'), limit, 1)).toBe('1400.1');
    expect(toldApart(exactDecimal('1400.04'), limit, 1)).toBe('1400.04');
    expect(toldApart({ numerator: 14_000_001n, denominator: 10_000n }, limit, 1)).toBe('1400.0001');
    // The same value is told with the most places there are.
    expect(toldApart(limit, limit, 11)).toBe('1400.000000000000');
  });

  it.each([
    ['4', 0],
    ['3.7', 1],
    ['3.70', 2],
  ])('keep the decimals that %s is printed with', (text, places) => {
    expect(printedPlaces(text)).toBe(places);
  });
});
