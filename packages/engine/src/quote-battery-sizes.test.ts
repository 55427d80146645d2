import { describe, expect, it } from 'vitest';
import quoteText from '../../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import { demoTariff } from '../../../tests/support/demo.ts';
import { quoteBatterySizes } from './quote-battery-sizes.ts';
import { prepareQuote, type PreparedQuote } from './quote-prepare.ts';
import { quoteSizes } from './quote-sizes.ts';
import { workOutQuote } from './quote-work-out.ts';
import { checkQuote, usualBatteries, type QuoteDocument } from './quote/index.ts';

const DOCUMENT = JSON.parse(quoteText) as QuoteDocument;
const BATTERY = { capacity: '5', power: '2.5', efficiency: '90', cost: '200000' };
const RANGE = { from: 2000, step: 500, count: 9 };

function prepared(battery?: QuoteDocument['battery']): PreparedQuote {
  const { value } = checkQuote({ ...DOCUMENT, battery });
  const made = value === null ? null : prepareQuote(value, demoTariff()).value;
  if (made === null) throw new Error('the quote cannot be billed');
  return made;
}

describe('sizes beside other batteries', () => {
  const quoted = prepared(BATTERY);
  const all = quoteBatterySizes(quoted, RANGE, usualBatteries(quoted.input.document));

  it('are those of a quote without one, with the quoted one, and with a larger one', () => {
    expect(all.map(({ wattHours }) => wattHours)).toEqual([0, 2500, 5000, 7500, 10_000]);
    expect(all[0]?.sizes).toEqual(quoteSizes(prepared(), RANGE));
    expect(all[2]?.sizes).toEqual(quoteSizes(quoted, RANGE));
    const larger = prepared({ ...BATTERY, capacity: '10', power: '5', cost: '400000' });
    expect(all[4]?.sizes).toEqual(quoteSizes(larger, RANGE));
  });

  it('leave the bills of the quote as they were', () => {
    expect(workOutQuote(quoted)).toEqual(workOutQuote(prepared(BATTERY)));
  });
});
