import { expect, it } from 'vitest';
import { byRuleOfThumb, RULE_OF_THUMB } from './rule-of-thumb.ts';

it.each([
  // 2.5 × 4 × 360, and 3,600 × 6.25.
  ['2.5', '6.25', '3600', '22500'],
  ['0.001', '0.01', '1.44', '0.0144'],
  ['0', '7', '0', '0'],
  ['3', '0', '4320', '0'],
])('reckons %s kW at %s a unit', (kilowatts, price, units, saving) => {
  expect(byRuleOfThumb(kilowatts, price)).toEqual({
    isRuleOfThumb: true,
    unitsPerKilowatt: '1440',
    units,
    saving,
    rule: RULE_OF_THUMB,
  });
});

it('takes decimal texts only', () => {
  expect(() => byRuleOfThumb('3 kW', '7')).toThrow('"3 kW" is not a decimal number');
});
