import { describe, expect, it } from 'vitest';
import { METER_LIMITS, meterBand, meterBandText, meterLimit } from './meter-accuracy.ts';
import { rootText } from './whole-root.ts';

describe('meter limits', () => {
  /** Directive 2014/32/EU, Annex V, Table 2, 2014. The rows of IEC 62053-21 and -22, 2003, from memory. */
  it.each([
    ['1', 150, 100],
    ['2', 250, 200],
    ['0.5S', 100, 50],
    ['0.2S', 40, 20],
    ['A', 350, 350],
    ['B', 200, 200],
    ['C', 100, 70],
  ])('class %s: %i and %i hundredths of a percent', (name, low, usual) => {
    expect(meterLimit(name)).toMatchObject({ low, usual });
  });

  it('say which of them are from memory, and know no other class', () => {
    const remembered = Object.entries(METER_LIMITS).filter(([, { isFromMemory }]) => isFromMemory);
    expect(remembered.map(([name]) => name).sort()).toEqual(['0.2S', '0.5S', '1', '2']);
    expect([meterLimit('3'), meterLimit('toString'), meterLimit('')]).toEqual([null, null, null]);
  });
});

describe('the band of a sum', () => {
  it('of one meter is its limit, at low current the larger one', () => {
    // 2 % of 100 kWh are 2 kWh, 2.5 % are 2.5 kWh.
    const one = [{ wattHours: 100_000, classText: '2' }];
    const texts = (current: 'low' | 'usual') => {
      const band = meterBand(one, current);
      return band === null ? null : meterBandText(band);
    };
    expect(texts('usual')).toMatchObject({ worst: '2.00', rootSum: '2.00', rootSumPercent: '2.00' });
    expect(texts('low')).toMatchObject({ worst: '2.50', rootSum: '2.50', worstPercent: '2.50' });
  });

  it('of nothing is 0, and no percentage is made of it', () => {
    const same = meterBand([
      { wattHours: 3000, classText: 'C' },
      { wattHours: -3000, classText: 'C' },
    ]);
    // 0.7 % of 3 kWh are 21 Wh, twice 42 Wh, times √2 29.7 Wh.
    expect(same && meterBandText(same)).toEqual({
      worst: '0.04',
      rootSum: '0.03',
      rootSumPercent: null,
      worstPercent: null,
    });
    expect(meterBand([])).toEqual({
      wattHours: 0,
      worst: { numerator: 0, denominator: 10_000 },
      rootSumSquared: { numerator: 0, denominator: 100_000_000 },
    });
  });

  it('stays exact where squares are beyond 2^53', () => {
    const large = meterBand([{ wattHours: 9_000_000_000, classText: '1' }]);
    expect(large?.rootSumSquared.numerator).toBe(900_000_000_000n * 900_000_000_000n);
    expect(large && meterBandText(large).rootSum).toBe('90000.00');
  });

  it('is not made up for a class that is not known', () => {
    expect(meterBand([{ wattHours: 1, classText: 'D' }])).toBeNull();
  });
});

describe('a root as text', () => {
  it.each([
    [0n, 1n, 2, '0.00'],
    [1n, 4n, 2, '0.50'],
    [2n, 1n, 5, '1.41421'],
    [49n, 400n, 2, '0.35'],
    // √(0.0225 ÷ 1) = 0.15 exactly, a half that goes up at one place.
    [225n, 10_000n, 1, '0.2'],
    [10n ** 40n, 1n, 0, '100000000000000000000'],
  ])('√(%s ÷ %s) to %i places is %s', (top, bottom, places, text) => {
    expect(rootText(top, bottom, places)).toBe(text);
  });
});
