import { describe, expect, it } from 'vitest';
import { makeRegister } from '../readings/index.ts';
import { isOneDigitLonger, oneDigitWrong, transposed, withoutPoint, withZero } from './digits.ts';

const register = (decimals: string) =>
  makeRegister({ id: 'import', digits: '5', decimals, multiplyingFactor: '1' });

describe('digits taken wrongly', () => {
  it('stand in the place of their neighbours, also behind the point', () => {
    // 1289|2.4: the point stays where it is.
    expect(transposed(12_892_400, register('1')).map(({ value }) => value)).toEqual([
      21_892_400, 18_292_400, 12_982_400, 12_829_400, 12_894_200,
    ]);
  });

  it('are not transposed where both are the same', () => {
    expect(transposed(11_111_000, register('0'))).toEqual([]);
    expect(transposed(1_000, register('0')).map(({ id }) => id)).toEqual(['00010']);
  });

  it('lose their point only where there is one', () => {
    expect(withoutPoint(12_892_400, register('1'))).toBe(128_924_000);
    expect(withoutPoint(12_892_000, register('0'))).toBeNull();
  });

  it('have a 0 at their end, and nothing behind the point', () => {
    expect(withZero(12_892_400)).toBe(128_920_000);
  });

  it('are one more anywhere, not two and not others', () => {
    expect(isOneDigitLonger(123_892_000, 12_892_400)).toBe(true);
    expect(isOneDigitLonger(1_238_920_000, 12_892_000)).toBe(false);
    expect(isOneDigitLonger(123_893_000, 12_892_000)).toBe(false);
    expect(isOneDigitLonger(12_892_000, 12_892_000)).toBe(false);
  });

  it('are wrong in one place in nine ways each', () => {
    const wrong = oneDigitWrong(12_892_400, register('1'));
    expect(wrong.length).toBe(45);
    expect(wrong).toContain(13_892_400);
    expect(wrong).toContain(12_890_400);
    expect(wrong).not.toContain(12_892_400);
    // Two digits off.
    expect(wrong).not.toContain(12_982_400);
  });
});
