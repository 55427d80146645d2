import { expect, it } from 'vitest';
import { sayingQuote, workedQuote } from '../../../../tests/support/demo-quote.ts';
import { surplusWarnings } from './surplus-warnings.ts';

const quote = workedQuote();
const { escalation } = quote.input.document;

/** What is asked of the demo where surplus, at some rate, rises. */
const told = (percent: string, surplusRate: string | null = '2.60') =>
  surplusWarnings(sayingQuote(quote, { escalation: { ...escalation, surplus: { percent, step: '0.01' } } }), {
    fixedCharges: null,
    surplusRate,
  }).map(({ path, found, expected }) => [path.join('.'), found, expected]);

it('asks about surplus that rises to the price of a unit bought, in the first such year', () => {
  // Year 4: 2.60 × 1.4³ = 7.1344 against 41,369.61 ÷ 5,300 = 7.81; year 5: 2.60 × 1.4⁴ = 9.98816 against
  // 42,214.98 ÷ 5,300 = 7.97.
  expect(told('40')).toEqual([
    [
      'escalation.surplus.percent',
      'a unit of surplus paid 9.98816 in year 5, risen from 2.60',
      'less than a unit bought costs in that year, 7.97 in the mean',
    ],
  ]);
});

it('says nothing of a rise that stays below it, nor of one that falls', () => {
  // 2.60 × 1.05²⁴ = 8.39 against 63,166.58 ÷ 5,300 = 11.92 in year 25.
  expect(told('5')).toEqual([]);
  expect(told('-5')).toEqual([]);
});

it('says nothing of what the tariff itself pays that much, nor of what is not known', () => {
  // 15.00 is above the price of a unit in every year: that is the tariff, and no rise of the quote.
  expect(told('10', '15.00')).toEqual([]);
  expect(told('40', null)).toEqual([]);
  expect(surplusWarnings(quote, { fixedCharges: null, surplusRate: '2.60' })).toEqual([]);
});
