import { describe, expect, it } from 'vitest';
import { minorUnitDigits } from './currency.ts';

describe('currencies', () => {
  it.each([
    [0, ['JPY', 'KRW', 'VND', 'CLP', 'ISK', 'UGX']],
    [2, ['INR', 'USD', 'EUR', 'GBP', 'LKR', 'NPR', 'BDT', 'PKR', 'MRU', 'MGA']],
    [3, ['BHD', 'IQD', 'JOD', 'KWD', 'OMR', 'TND', 'LYD']],
    [4, ['CLF', 'UYW']],
  ])('has %i decimals as ISO 4217 lists them', (digits, codes) => {
    expect(codes.map(minorUnitDigits)).toEqual(codes.map(() => digits));
  });

  it.each(['XXQ', 'inr', 'IN', '', 'Rs', '__proto__'])('does not know "%s"', (code) => {
    expect(minorUnitDigits(code)).toBeNull();
  });
});
