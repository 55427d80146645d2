import { expect, it } from 'vitest';
import { finite, growthOf, wholePeriods } from './check-arguments.ts';

it('takes rates above -100 % and says what it found otherwise', () => {
  expect([growthOf(0), growthOf(-0.5), growthOf(2)]).toEqual([1, 0.5, 3]);
  for (const rate of [-1, -2, NaN, Infinity]) {
    expect(() => growthOf(rate)).toThrow(`a rate must be above -1, found ${rate}`);
  }
});

it('takes whole periods from the least on', () => {
  expect([wholePeriods(0, 0), wholePeriods(25, 1)]).toEqual([0, 25]);
  for (const periods of [0, 1.5, NaN, Infinity]) {
    expect(() => wholePeriods(periods, 1)).toThrow(`at least 1, found ${periods}`);
  }
});

it('takes finite numbers', () => {
  expect(finite(-3, 'a flow')).toBe(-3);
  expect(() => finite(NaN, 'a flow')).toThrow('a flow must be finite, found NaN');
});
