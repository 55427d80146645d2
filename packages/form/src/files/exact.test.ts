import { expect, it } from 'vitest';
import { exactOf, minus, plainDecimal, plus, roundedText, widthOf } from './exact.ts';

it('reads decimals digit for digit, however many', () => {
  expect(exactOf('.005')).toEqual({ whole: 5n, places: 3 });
  expect(exactOf('-12')).toEqual({ whole: -12n, places: 0 });
  expect(exactOf('90071992547409931.25')).toEqual({ whole: 9007199254740993125n, places: 2 });
  expect(() => exactOf('')).toThrow(RangeError);
  expect(() => exactOf('1,5')).toThrow(RangeError);
});

it('adds and takes away in the finer places', () => {
  expect(plus(exactOf('0.1'), exactOf('0.25'))).toEqual({ whole: 35n, places: 2 });
  expect(minus(exactOf('0.1'), exactOf('0.25'))).toEqual({ whole: -15n, places: 2 });
});

it('rounds half up, and writes what needs no rounding in as many places', () => {
  expect(roundedText(exactOf('1.2344999'), 3)).toBe('1.234');
  expect(roundedText(exactOf('1.2345'), 3)).toBe('1.235');
  expect(roundedText(exactOf('0.9995'), 3)).toBe('1.000');
  expect(roundedText(exactOf('7'), 3)).toBe('7.000');
});

it('takes off zeros that say nothing', () => {
  expect(['000', '0.00', '010', '10.50', '-0.5'].map(plainDecimal)).toEqual(['0', '0', '10', '10.5', '-0.5']);
  expect(widthOf('000004.420')).toEqual({ digits: 1, decimals: 2 });
  expect(widthOf('123456')).toEqual({ digits: 6, decimals: 0 });
});
