import { readFileSync } from 'node:fs';
import { readTariff, type FlyerDocument, type QuoteDocument } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { flyerCsv } from './flyer-csv.ts';
import { BLANK_FLYER } from './flyer-file.ts';
import { flyerGround, viewFlyer } from './flyer-view.ts';

const EXAMPLES = new URL('../../../../../tariffs-examples/', import.meta.url);
const textOf = (path: string): string => readFileSync(new URL(path, EXAMPLES), 'utf8');
const tariff = readTariff(textOf('tarumira/taresco-domestic/tariff.json')).value;
const quoteDocument = JSON.parse(textOf('quotes/rooftop-4-kilowatt.json')) as QuoteDocument;

const viewOf = (claims: Partial<FlyerDocument>, change: Partial<QuoteDocument> = {}) =>
  viewFlyer({
    flyer: { ...BLANK_FLYER, ...claims },
    ground: flyerGround({ quoteDocument: { ...quoteDocument, ...change }, tariff, profile: null }),
    locale: 'en-IN',
    typing: '',
  });

it('sets the mean bill of a month beside the one that is claimed', () => {
  // The bills with the plant come to 3,336.72 in the first year: 278.06 a month.
  const [line] = viewOf({ monthlyBillAfter: '0' }).lines;
  expect([line?.claimed, line?.ours, line?.moreBy]).toEqual(['₹0.00', '₹278.06', '−₹278.06']);
  // Less than the fixed charges, which stay.
  expect(line?.asks.map(({ code }) => code)).toEqual(['quote/flyer-fixed-charges']);
});

it('says so where the price never comes back by the quote', () => {
  const price = [{ item: 'A plant for a palace', amount: '90000000' }];
  const [line] = viewOf({ claimedPayback: '3.7' }, { price }).lines;
  expect([line?.ours, line?.moreBy, line?.exact]).toEqual(['not within the life', '–', ['3.7', '', '']]);
});

it('has no lines without a quote, and none of what is wrong', () => {
  expect(flyerGround({ quoteDocument: null, tariff, profile: null })).toBe(null);
  expect(flyerGround({ quoteDocument, tariff: null, profile: null })).toBe(null);
  expect(flyerGround({ quoteDocument: { ...quoteDocument, years: 'many' }, tariff, profile: null })).toBe(
    null,
  );
  expect(viewOf({ price: 'dear' }).lines).toEqual([]);
  expect(viewOf({}).isBlank).toBe(true);
  expect(viewOf({ price: 'dear' }).isBlank).toBe(false);
});

it('writes a sheet that no text of a flyer can turn into a formula', () => {
  expect(flyerCsv(viewOf({ words: '=1+1' }))).toContain("\nIts words,'=1+1,,,");
});
