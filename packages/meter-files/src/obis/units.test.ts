import { describe, expect, it } from 'vitest';
import { compareDecimals, energyUnit, scaled, shiftDecimal } from './units.ts';

describe('units', () => {
  it.each([
    ['kWh', 0],
    ['KWH', 0],
    ['kwh', 0],
    ['Wh', -3],
    ['wh', -3],
    ['MWh', 3],
    ['MWH', 3],
    ['mWh', null],
    ['mwh', null],
    ['kvarh', null],
    ['kW', null],
    ['', null],
    [' kWh', null],
  ])('%j moves the point by %j', (text, shift) => {
    expect(energyUnit(text)?.shift ?? null).toBe(shift);
  });

  it.each([
    ['0004342.1', 0, '0004342.1'],
    ['0004342100', -3, '0004342.100'],
    ['7', -3, '0.007'],
    ['7.5', -3, '0.0075'],
    ['1234', -3, '1.234'],
    ['4.3421', 3, '4342.1'],
    ['4.342', 3, '4342'],
    ['4.34', 3, '4340'],
    ['4', 3, '4000'],
    ['-12', -3, '-0.012'],
    ['-1.5', 3, '-1500'],
  ])('%s moved by %i is %s, digit for digit', (text, shift, expected) => {
    expect(shiftDecimal(text, shift)).toBe(expected);
  });

  it.each([
    ['0012.5', '12.50', 0],
    ['9', '10', -1],
    ['10.001', '10', 1],
    ['-1', '0', -1],
    // Beyond 2^53, where doubles are the same.
    ['9007199254740993', '9007199254740992', 1],
  ])('%s beside %s: %i', (first, second, expected) => {
    expect(compareDecimals(first, second)).toBe(expected);
  });

  it('are scaled without loss', () => {
    expect(scaled('-0012.5', 3)).toBe(-12500n);
  });
});
