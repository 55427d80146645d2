import { givenFigure } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { isKnownLocale, makeNotation } from './notation.ts';

const money = (numerator: number, denominator: number) =>
  givenFigure({ id: 'x', label: 'X', unit: 'money', numerator, denominator, clause: '' });

describe('makeNotation', () => {
  it('groups as the locale does', () => {
    expect(makeNotation('en-IN', 2).number('1234567.50')).toBe('12,34,567.50');
    expect(makeNotation('en', 2).number('1234567.50')).toBe('1,234,567.50');
    expect(makeNotation('de', 2).number('1234567.50')).toBe('1.234.567,50');
    expect(makeNotation('mr-IN', 2).number('1234567.5')).toBe('12,34,567.5');
  });

  it('loses no digit of a long number', () => {
    const { number } = makeNotation('en', 2);
    expect(number('12345678901234567890.12345678')).toBe('12,345,678,901,234,567,890.12345678');
    expect(number(`1234.${'3'.repeat(30)}`)).toBe(`1,234.${'3'.repeat(30)}`);
    expect(number('0.1')).toBe('0.1');
  });

  it('writes a minus that is seen', () => {
    expect(makeNotation('en-IN', 2).amount(money(-36, 1))).toBe('−36.00');
  });

  it('pads amounts to the coin and leaves finer ones as they are', () => {
    expect(makeNotation('en', 2).amount(money(230, 1))).toBe('230.00');
    expect(makeNotation('en', 3).amount(money(230, 1))).toBe('230.000');
    expect(makeNotation('en', 0).amount(money(230, 1))).toBe('230');
    expect(makeNotation('en', 2).amount(money(18216, 1000))).toBe('18.216');
  });
});

describe('isKnownLocale', () => {
  it.each([
    ['en-IN', true],
    ['de', true],
    ['zz_Z', false],
    ['', false],
    ['elvish-tongue', false],
  ])('says of %j: %s', (locale, known) => {
    expect(isKnownLocale(locale)).toBe(known);
  });
});
