import { describe, expect, it } from 'vitest';
import quoteText from '../../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import tariffText from '../../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';
import { readTariff } from './tariff/index.ts';
import { readQuote } from './quote/index.ts';
import { quoteFacts } from './quote-facts.ts';
import { prepareQuote } from './quote-prepare.ts';
import { workOutQuote } from './quote-work-out.ts';

function prepared(change: (text: string) => string = (same) => same) {
  const [quote, tariff] = [readQuote(quoteText).value, readTariff(change(tariffText)).value];
  const made = quote === null || tariff === null ? null : prepareQuote(quote, tariff).value;
  if (made === null) throw new Error('the demo quote cannot be prepared');
  return made;
}

describe('quoteFacts', () => {
  it('is what the demo tariff says: 4 kW at 60.00 a month, the last slab at 8.00, surplus at 2.60', () => {
    expect(quoteFacts(prepared())).toEqual({ fixedCharges: 288000, topRate: '8.00', surplusRate: '2.60' });
  });

  it('finds the highest rate by its digits, not by its text', () => {
    const dearer = prepared((text) => text.replaceAll('"rate": "4.80"', '"rate": "10.5"'));
    expect(quoteFacts(dearer).topRate).toBe('10.5');
  });

  it('leaves the bills of the quote as they were', () => {
    const quote = prepared();
    const before = workOutQuote(quote).years;
    quoteFacts(quote);
    expect(workOutQuote(quote).years).toEqual(before);
  });
});
