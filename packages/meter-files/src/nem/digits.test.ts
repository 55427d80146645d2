import { describe, expect, it } from 'vitest';
import { NO_DIGITS, readDigits } from './digits.ts';

const { empty, notANumber, negative, tooMany } = NO_DIGITS;

describe('readDigits', () => {
  it.each([
    ['0', 0, 0],
    ['.005', 5, 3],
    ['1.', 1, 0],
    ['18.023', 18023, 3],
    ['0000.10', 10, 2],
    [' 2.5 ', 25, 1],
    ['999999999999999', 999_999_999_999_999, 0],
    ['0.999999999999999', 999_999_999_999_999, 15],
    ['000000000000000000001', 1, 0],
  ])('reads %j as %d of %d decimals', (text, whole, places) => {
    const decimals = new Uint8Array([9, 9]);
    expect(readDigits(text, decimals, 1)).toBe(whole);
    expect([...decimals]).toEqual([9, places]);
  });

  it.each([
    ['', empty],
    ['  ', empty],
    ['.', notANumber],
    ['-', notANumber],
    ['-.', notANumber],
    ['--1', notANumber],
    ['+1', notANumber],
    ['1e3', notANumber],
    ['1.2.3', notANumber],
    ['1 000', notANumber],
    ['0x10', notANumber],
    ['NaN', notANumber],
    ['Infinity', notANumber],
    ['١', notANumber],
    ['-0.5', negative],
    ['-.5', negative],
    ['-5.', negative],
    [' -5', negative],
    ['1000000000000000', tooMany],
    ['1.000000000000000', tooMany],
    ['0.0000000000000001', tooMany],
    ['9'.repeat(400), tooMany],
  ])('tells what %j is instead', (text, kind) => {
    const decimals = new Uint8Array([9]);
    expect(readDigits(text, decimals, 0)).toBe(kind);
    expect([...decimals]).toEqual([9]);
  });

  it('is done with a text of 1,000,000 characters', () => {
    const decimals = new Uint8Array(1);
    expect(readDigits('-'.repeat(1_000_000), decimals, 0)).toBe(notANumber);
    expect(readDigits(`-${'1'.repeat(1_000_000)}x`, decimals, 0)).toBe(notANumber);
  });
});
