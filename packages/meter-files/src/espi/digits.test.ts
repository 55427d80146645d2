import { describe, expect, it } from 'vitest';
import { shiftedText, wholeNumber } from './digits.ts';

describe('a whole number', () => {
  it.each([
    ['0', 0],
    ['703', 703],
    ['-0703', -703],
    ['+5', 5],
    [' \t\r\n12\n', 12],
    ['999999999999999', 999_999_999_999_999],
    ['0000000000000000000001', 1],
  ])('%j is %d', (text, value) => {
    expect(wholeNumber(text)).toBe(value);
  });

  it('is never -0', () => {
    expect(Object.is(wholeNumber('-0'), 0)).toBe(true);
  });

  it.each([
    ['', 'empty'],
    [' \n', 'empty'],
    ['1000000000000000', 'too-many-digits'],
    ['1.0', 'not-whole'],
    ['1e3', 'not-whole'],
    ['1,000', 'not-whole'],
    ['--1', 'not-whole'],
    ['1 2', 'not-whole'],
    // A blank of no XML, and digits of another script.
    ['1\u00a0', 'not-whole'],
    ['१२', 'not-whole'],
    ['NaN', 'not-whole'],
  ])('%j is none: %s', (text, fault) => {
    expect(wholeNumber(text)).toBe(fault);
  });
});

describe('a whole number times a power of ten', () => {
  it.each([
    [12345, -3, '12.345'],
    [5, -3, '0.005'],
    [0, -3, '0.000'],
    [0, 9, '0'],
    [-7, -1, '-0.7'],
    [4342, 0, '4342'],
    [-7, 2, '-700'],
    [999_999_999_999_999, 9, '999999999999999000000000'],
    [1, -9, '0.000000001'],
  ])('%d and %d is %s', (value, power, text) => {
    expect(shiftedText(value, power)).toBe(text);
  });
});
