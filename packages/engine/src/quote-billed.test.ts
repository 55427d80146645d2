import { describe, expect, it } from 'vitest';
import quoteText from '../../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import blocksText from '../../../tariffs-examples/tarumira/taresco-time-blocks/tariff.json?raw';
import sellAllText from '../../../tariffs-examples/tarumira/taresco-buy-all-sell-all/tariff.json?raw';
import { demoTariff, goodTariff } from '../../../tests/support/demo.ts';
import { EVENING_HOUSE, yearOf } from '../../../tests/support/quote-profile.ts';
import type { Tariff } from './tariff/index.ts';
import { quoteBilledUnits } from './quote-billed.ts';
import { prepareQuote, type PreparedQuote, type PrepareOptions } from './quote-prepare.ts';
import { checkQuote, type QuoteDocument } from './quote/index.ts';

const DOCUMENT = JSON.parse(quoteText) as QuoteDocument;
const FLAT = { escalation: { charges: {}, basis: 'none' }, policies: undefined, uncertainty: undefined };

function prepared(
  tariff: Tariff,
  change: Partial<QuoteDocument> = {},
  options: PrepareOptions = {},
): PreparedQuote {
  const { value } = checkQuote({ ...DOCUMENT, ...change });
  const made = value === null ? null : prepareQuote(value, tariff, undefined, options);
  if (made?.value == null) throw new Error(JSON.stringify(made?.findings));
  return made.value;
}

const whole = (one: PreparedQuote): readonly (number | null)[] =>
  quoteBilledUnits(one).map((units) => {
    if (units === null) return null;
    expect(Number(units.numerator) % units.denominator).toBe(0);
    return Number(units.numerator) / units.denominator;
  });

describe('the units that months are billed for', () => {
  it('are what netting leaves of those taken', () => {
    // Taken less given less bank: 326 − 316, 368 − 313, 320 − 260, 286 − 236, 268 − 248, then a bank.
    expect(whole(prepared(demoTariff()))).toEqual([10, 55, 60, 50, 20, 0, 0, 0, 0, 0, 0, 0]);
  });

  it('are all that is used where everything made is sold', () => {
    const billed = whole(
      prepared(goodTariff(sellAllText), { ...FLAT, quantities: { 'sanctioned-load': '4' } }),
    );
    expect(billed).toEqual([520, 560, 480, 430, 420, 410, 400, 380, 390, 400, 420, 490]);
  });

  it('are those of all time blocks together', () => {
    const profile = yearOf(EVENING_HOUSE);
    const one = prepared(goodTariff(blocksText), { ...FLAT, selfUse: undefined }, { profile });
    const taken = one.biller.periods
      .slice(0, 12)
      .map((_, at) => one.units.withPlant[at * one.units.width] ?? 0);
    const given = taken.map((__, at) => one.units.withPlant[at * one.units.width + 1] ?? 0);
    expect(quoteBilledUnits(one).length).toBe(12);
    whole(one).forEach((units, at) => {
      expect(units).not.toBeNull();
      expect((units ?? 0) * 1000).toBeLessThanOrEqual(taken[at] ?? 0);
      expect((units ?? 0) * 1000).toBeGreaterThanOrEqual((taken[at] ?? 0) - (given[at] ?? 0));
    });
  });
});
