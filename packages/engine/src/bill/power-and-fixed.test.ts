import { describe, expect, it } from 'vitest';
import { lineOf, periodOf, tariffOf } from '../../../../tests/support/make.ts';
import type { Charge } from '../tariff/index.ts';

const perKilowatt = {
  id: 'fixed',
  label: 'Fixed charge',
  clause: 'T 4.1',
  kind: 'per-kilowatt',
  on: 'sanctioned-load',
} as const;
const BANDS = [{ upTo: '2', rate: '40' }, { upTo: '5', rate: '75.5' }, { rate: '110.25' }];

const MONTH = { month: { rule: 'days-over', clause: 'T 4.3', divisor: '30' } } as const;
/** 38 days: the factor is 38/30 = 19/15. */
const LONG = periodOf('2025-04-01', '2025-05-09');

describe('a charge per kilowatt', () => {
  it('charges the sanctioned load or the plant', () => {
    expect(lineOf(tariffOf([{ ...perKilowatt, rate: '60' }]), { 'sanctioned-load': '4' })).toBe('240');
    const onPlant = tariffOf([{ ...perKilowatt, on: 'plant-capacity', rate: '60' }]);
    expect(lineOf(onPlant, { 'sanctioned-load': '4', 'plant-capacity': '5' })).toBe('300');
    expect(lineOf(onPlant, { 'plant-capacity': '0' })).toBe('0');
    expect(lineOf(onPlant, { 'plant-capacity': '3.333' })).toBe('199.98');
  });

  it.each([
    ['2', '80'],
    ['2.001', '80.08'], // 80 + 0.0755
    ['5', '306.5'],
    ['5.001', '306.61'], // 306.50 + 0.11025
    ['6', '416.75'],
  ])('charges %s kW band by band: %s', (load, amount) => {
    const tariff = tariffOf([{ ...perKilowatt, bands: BANDS, method: 'telescopic' }]);
    expect(lineOf(tariff, { 'sanctioned-load': load })).toBe(amount);
  });

  it.each([
    ['2', '80'],
    ['2.001', '151.08'], // 2.001 × 75.5 = 151.0755
    ['5', '377.5'],
    ['5.001', '551.36'], // 5.001 × 110.25 = 551.36025
    ['6', '661.5'],
  ])('charges the whole of %s kW at the band reached: %s', (load, amount) => {
    const tariff = tariffOf([{ ...perKilowatt, bands: BANDS, method: 'whole' }]);
    expect(lineOf(tariff, { 'sanctioned-load': load })).toBe(amount);
  });

  it('can be chosen by units: 60 per kW up to 500 units of use, 75 above', () => {
    const bands = [{ upTo: '500', rate: '60' }, { rate: '75' }];
    const tariff = tariffOf([{ ...perKilowatt, bands, method: 'whole', chosenBy: 'total-use' }]);
    expect(lineOf(tariff, { 'sanctioned-load': '4', 'total-use': '412' })).toBe('240');
    expect(lineOf(tariff, { 'sanctioned-load': '4', 'total-use': '500' })).toBe('240');
    expect(lineOf(tariff, { 'sanctioned-load': '4', 'total-use': '714' })).toBe('300');
  });

  it('is multiplied by the day factor, its bands of power are not', () => {
    const dayRules = { dayRules: MONTH };
    const flat = tariffOf([{ ...perKilowatt, rate: '60', scaledBy: 'month' }], dayRules);
    expect(lineOf(flat, { period: LONG, 'sanctioned-load': '4' })).toBe('304');
    const banded = (method: 'telescopic' | 'whole'): string => {
      const charge: Charge = { ...perKilowatt, bands: BANDS, method, scaledBy: 'month' };
      return lineOf(tariffOf([charge], dayRules), { period: LONG, 'sanctioned-load': '3.042' });
    };
    expect(banded('telescopic')).toBe('200.98'); // (80 + 1.042 × 75.5) × 19/15 = 200.9832…
    expect(banded('whole')).toBe('290.92'); // 3.042 × 75.5 × 19/15 = 290.9166
  });
});

describe('a fixed charge', () => {
  const fixed = { id: 'fixed', label: 'Fixed charge', clause: 'T 4.1', kind: 'fixed' } as const;
  const byUnits: Charge = {
    ...fixed,
    chosenBy: 'billed',
    steps: [{ upTo: '50', amount: '20' }, { upTo: '150', amount: '45' }, { amount: '90' }],
  };

  it('is the same whatever is used', () => {
    const tariff = tariffOf([{ ...fixed, amount: '45.50' }]);
    expect(lineOf(tariff, {})).toBe('45.5');
    expect(lineOf(tariff, { billed: '1000' })).toBe('45.5');
  });

  it.each([
    ['0', '20'],
    ['50', '20'],
    ['50.001', '45'],
    ['51', '45'],
    ['150', '45'],
    ['151', '90'],
  ])('can depend on the slab that %s units reach: %s', (billed, amount) => {
    expect(lineOf(tariffOf([byUnits]), { billed })).toBe(amount);
  });

  it('is multiplied by the day factor, and so are the limits of its steps', () => {
    const dayRules = { dayRules: MONTH };
    const flat = tariffOf([{ ...fixed, amount: '45.50', scaledBy: 'month' }], dayRules);
    expect(lineOf(flat, { period: LONG })).toBe('57.63'); // 45.50 × 19/15 = 57.6333…
    // The first limit is 50 × 19/15 = 63.33…
    const stepped = tariffOf([{ ...byUnits, scaledBy: 'month' }], dayRules);
    expect(lineOf(stepped, { period: LONG, billed: '63' })).toBe('25.33'); // 20 × 19/15
    expect(lineOf(stepped, { period: LONG, billed: '64' })).toBe('57'); // 45 × 19/15
  });
});
