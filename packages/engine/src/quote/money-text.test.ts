import { expect, it } from 'vitest';
import { amountText, moneyText } from './money-text.ts';

it.each([
  ['INR', 100, 3_667_388, '36673.88'],
  ['INR', 100, 5_400_000, '54000.00'],
  ['INR', 1000, 2_505, '2.505'],
  ['INR', 1, 7, '7.00'],
  ['JPY', 1, 7, '7'],
  ['KWD', 100, -25, '-0.250'],
  ['XXX', 100, 0, '0.00'],
  // A third does not end: rounded to coins.
  ['INR', 3, 5, '1.67'],
])('writes an amount in %s of 1/%i: %i', (currency, grid, amount, text) => {
  expect(amountText({ grid, currency }, amount)).toBe(text);
});

it('writes an exact value', () => {
  expect(moneyText({ numerator: 162_000n, denominator: 1n }, 'INR')).toBe('162000.00');
});
