import { describe, expect, it } from 'vitest';
import { lifetimeEnergy, powerLeft, yearlyEnergy } from './degradation.ts';
import { DEGRADATION_STUDIES } from './degradation-studies.ts';

const HALF = { kind: 'compound', rate: 0.5 } as const;
const LINE = { kind: 'linear', rate: 0.4 } as const;

describe('degradation', () => {
  it('takes a part of the year before, or of the first', () => {
    expect([0, 1, 2].map((years) => powerLeft(HALF, years))).toEqual([1, 0.5, 0.25]);
    expect([0, 1, 2].map((years) => powerLeft(LINE, years).toFixed(9))).toEqual([
      '1.000000000',
      '0.600000000',
      '0.200000000',
    ]);
  });

  it('ends at 0', () => {
    expect(powerLeft(LINE, 3)).toBe(0);
    expect(powerLeft({ kind: 'compound', rate: 1 }, 2)).toBe(0);
  });

  it('counts energy in first years', () => {
    expect(yearlyEnergy(HALF, 3)).toEqual([1, 0.5, 0.25]);
    expect(lifetimeEnergy(HALF, 3)).toBe(1.75);
    expect(lifetimeEnergy(LINE, 5).toFixed(9)).toBe('1.800000000');
    expect([lifetimeEnergy(HALF, 0), yearlyEnergy(HALF, 0)]).toEqual([0, []]);
    expect(lifetimeEnergy({ kind: 'compound', rate: 0 }, 25)).toBe(25);
  });

  it('refuses what no plant does', () => {
    expect(() => powerLeft({ kind: 'linear', rate: -0.1 }, 1)).toThrow('cannot lose -0.1');
    expect(() => powerLeft({ kind: 'linear', rate: 1.1 }, 1)).toThrow(RangeError);
    expect(() => powerLeft(HALF, -1)).toThrow('-1 years');
    expect(() => yearlyEnergy(HALF, 2.5)).toThrow(RangeError);
    expect(() => lifetimeEnergy(HALF, -1)).toThrow(RangeError);
  });
});

it('every study is named', () => {
  expect(DEGRADATION_STUDIES.filter(({ title, publisher }) => title === '' || publisher === '')).toEqual([]);
});
