import { describe, expect, it } from 'vitest';
import { batteryOf } from './battery.ts';

const GOOD = { capacity: '5', power: '2.5', efficiency: '85', cost: '100000' };

describe('batteryOf', () => {
  it('has Wh, Wh in an hour, and the square root of the round trip', () => {
    expect(batteryOf({ battery: { ...GOOD, efficiency: '100' } })).toEqual({
      capacity: 5000,
      power: 2500,
      way: 1,
    });
    expect(batteryOf({ battery: GOOD })?.way).toBe(Math.sqrt(0.85));
    expect(batteryOf({ battery: { ...GOOD, efficiency: '20.25' } })?.way).toBe(0.45);
  });

  it.each(['capacity', 'power', 'efficiency'])('is none without %s', (part) => {
    expect(batteryOf({ battery: { ...GOOD, [part]: '0' } })).toBeNull();
    expect(batteryOf({ battery: { ...GOOD, [part]: '0.000' } })).toBeNull();
  });

  it('is none where a quote has none', () => {
    expect(batteryOf({})).toBeNull();
  });
});
