import { describe, expect, it } from 'vitest';
import quoteText from '../../../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import type { QuoteDocument } from './document/quote-document.ts';
import { usualBatteries, withBatteryOf } from './sized-battery.ts';

const BATTERY = {
  capacity: '5',
  power: '2.5',
  efficiency: '90',
  cost: '200000.05',
  replacement: { year: '13', amount: '120000' },
};
const DOCUMENT: QuoteDocument = { ...(JSON.parse(quoteText) as QuoteDocument), battery: BATTERY };

describe('batteries beside that of a quote', () => {
  it('are none, half, as quoted, half as much again and twice as much', () => {
    expect(usualBatteries(DOCUMENT)).toEqual([0, 2500, 5000, 7500, 10_000]);
    expect(usualBatteries({ battery: { ...BATTERY, capacity: '0.001' } })).toEqual([0, 1, 2]);
  });

  it('are none where the quote has none', () => {
    expect(usualBatteries({})).toEqual([]);
    expect(usualBatteries({ battery: { ...BATTERY, capacity: '0' } })).toEqual([]);
  });
});

describe('a quote with another battery', () => {
  it('has power and prices by capacity, rounded half-up', () => {
    // 200,000.05 ÷ 2 is 100,000.025.
    expect(withBatteryOf(DOCUMENT, 2500).battery).toEqual({
      capacity: '2.500',
      power: '1.250',
      efficiency: '90',
      cost: '100000.03',
      replacement: { year: '13', amount: '60000.00' },
    });
  });

  it('is the same with the same, and has none of 0', () => {
    expect(withBatteryOf(DOCUMENT, 5000)).toBe(DOCUMENT);
    expect(withBatteryOf(DOCUMENT, 0).battery).toBeUndefined();
  });

  it('has none where the quote has none', () => {
    const bare = { ...DOCUMENT, battery: undefined };
    expect(withBatteryOf(bare, 5000).battery).toBeUndefined();
  });
});
