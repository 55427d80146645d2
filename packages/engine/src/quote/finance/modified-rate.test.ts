import { expect, it } from 'vitest';
import { modifiedInternalRate } from './modified-rate.ts';

const RATES = { finance: 0.1, reinvestment: 0.5 };

it('compounds what is paid to what is received', () => {
  // 50 × 1.5 + 150 = 225 = 100 × 1.5².
  expect(modifiedInternalRate([-100, 50, 150], RATES)?.toFixed(12)).toBe('0.500000000000');
  // 100 + 110 ÷ 1.1 = 200; 450 = 200 × 1.5².
  expect(modifiedInternalRate([-100, -110, 450], RATES)?.toFixed(12)).toBe('0.500000000000');
});

it('has a value where the internal rate has several, and below 0', () => {
  // Paid 100 + 121 ÷ 1.21 = 200, received 100 × 1.5 = 150 after two periods: (150 ÷ 200)^½ − 1.
  expect(modifiedInternalRate([-100, 100, -121], RATES)?.toFixed(6)).toBe('-0.133975');
});

it('is null without a payment, a receipt or a period', () => {
  expect(modifiedInternalRate([100, 100], RATES)).toBeNull();
  expect(modifiedInternalRate([-100, -100], RATES)).toBeNull();
  expect(modifiedInternalRate([-100], RATES)).toBeNull();
  expect(modifiedInternalRate([], RATES)).toBeNull();
});

it('refuses rates of -100 %', () => {
  expect(() => modifiedInternalRate([-1, 1], { finance: -1, reinvestment: 0 })).toThrow(RangeError);
  expect(() => modifiedInternalRate([-1, 1], { finance: 0, reinvestment: -1 })).toThrow(RangeError);
});
