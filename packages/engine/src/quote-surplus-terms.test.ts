import { describe, expect, it } from 'vitest';
import quoteText from '../../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import anniversaryText from '../../../tariffs-examples/tarumira/taresco-anniversary/tariff.json?raw';
import chosenText from '../../../tariffs-examples/tarumira/taresco-chosen-day/tariff.json?raw';
import { demoTariff, goodTariff } from '../../../tests/support/demo.ts';
import type { Tariff } from './tariff/index.ts';
import { dayText } from './quantity/index.ts';
import { quoteKeptUnits } from './quote-billed.ts';
import { prepareQuote, type PreparedQuote } from './quote-prepare.ts';
import { quoteGround } from './quote-surplus-terms.ts';
import { workOutQuote } from './quote-work-out.ts';
import { checkQuote, type QuoteDocument } from './quote/index.ts';

const DOCUMENT = JSON.parse(quoteText) as QuoteDocument;
/** No rises: the other tariffs have other charges. */
const FLAT: Partial<QuoteDocument> = {
  tariff: undefined,
  escalation: { charges: {}, basis: 'none' },
  policies: undefined,
  uncertainty: undefined,
};

function tried(tariff: Tariff, change: Partial<QuoteDocument> = {}) {
  const { value, findings } = checkQuote({ ...DOCUMENT, ...change });
  return value === null ? { value, findings } : prepareQuote(value, tariff);
}

function prepared(tariff: Tariff, change: Partial<QuoteDocument> = {}): PreparedQuote {
  const { value, findings } = tried(tariff, change);
  if (value === null) throw new Error(JSON.stringify(findings));
  return value;
}

describe('the ground of a quote', () => {
  it('names the orders in force as the plant begins, the day of settlement and the rate', () => {
    const { charges, settlement, surplus } = quoteGround(prepared(demoTariff()));
    expect([charges?.title, charges?.year, charges === null ? '' : dayText(charges.from)]).toEqual([
      'Tariff Order 2024',
      '2024',
      '2024-04-01',
    ]);
    expect([settlement?.title, settlement === null ? '' : dayText(settlement.from)]).toEqual([
      'Net Metering Regulations 2021',
      '2021-04-01',
    ]);
    expect(surplus).toEqual({ days: ['03-31'], rate: '2.60', inBill: 'next' });
  });

  it('has the rate before it rises', () => {
    const surplus = { percent: '2', step: '0.01' };
    const escalation = { ...DOCUMENT.escalation, surplus };
    expect(quoteGround(prepared(demoTariff(), { escalation })).surplus.rate).toBe('2.60');
  });

  it('has the day before the anniversary, and the day that the quote chooses', () => {
    // The account begins on 1 April: its year ends on 31 March.
    expect(quoteGround(prepared(goodTariff(anniversaryText), FLAT)).surplus.days).toEqual(['03-31']);
    const chosen = prepared(goodTariff(chosenText), { ...FLAT, settlementDay: '09-30' });
    expect(quoteGround(chosen).surplus).toEqual({ days: ['09-30'], rate: '2.50', inBill: 'same' });
  });
});

describe('units of surplus that the first year pays', () => {
  it('are those that the bank holds as it closes', () => {
    // The scenario: 360 + 338 − 283 = 415 in March, at 2.60: 1,079.00.
    const { paid, lapsed } = quoteKeptUnits(prepared(demoTariff()));
    expect([Number(paid.numerator) / paid.denominator, Number(lapsed.numerator)]).toEqual([415, 0]);
  });
});

describe('a settlement day that the account chooses', () => {
  const tariff = goodTariff(chosenText);

  it('is wanted of the quote, once, where the tariff goes by it', () => {
    const { value, findings } = tried(tariff, FLAT);
    expect(value).toBeNull();
    const errors = findings.filter(({ severity }) => severity === 'error');
    expect(errors.map(({ code, path }) => [code, path.join('.')])).toEqual([
      ['quote/settlement-day-needed', 'settlementDay'],
    ]);
  });

  it('says in which month surplus is paid, with the plant and without it', () => {
    const one = prepared(tariff, { ...FLAT, settlementDay: '09-30' });
    const { months, years } = workOutQuote(one);
    // Import less export without a day of the bank: 326 − 316, 368 − 313, 320 − 260, 286 − 236, 268 − 248, then
    // 267 − 247 = 20 are left over in September, which closes: 20 × 2.50 = 50.00.
    expect(months.map(({ surplus }) => surplus)).toEqual([0, 0, 0, 0, 0, 50_00, 0, 0, 0, 0, 0, 0]);
    // From then on 60, 60, 60, 80, 80, 55 a month are banked until the year is out: nothing more is paid in it.
    expect(months.map(({ bank }) => bank / 1000)).toEqual([0, 0, 0, 0, 0, 0, 60, 120, 180, 260, 340, 395]);
    // 5,300 units at 6.00 without the plant, with the same day: nothing is settled there.
    expect(years[0]?.before).toBe(31_800_00);
  });
});
