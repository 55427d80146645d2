import { expect, it } from 'vitest';
import { blankQuote, generationBy, generationKind } from './blank-quote.ts';
import { addItem, fieldIdOf, putAt, takeAt, textAt, valueAt } from './edit-quote.ts';

const blank = blankQuote('en-IN', '2026-05-01');

it('replaces a value and leaves the document before as it was', () => {
  const typed = putAt(blank, ['plant', 'kWp'], '4');
  expect(textAt(typed, ['plant', 'kWp'])).toBe('4');
  expect(textAt(blank, ['plant', 'kWp'])).toBe('');
});

it('makes what a value stands in, and takes a field out whole', () => {
  const typed = putAt(blank, ['use', 'months', '03'], '480');
  expect(valueAt(typed, ['use', 'months'])).toEqual({ '03': '480' });
  expect(valueAt(putAt(typed, ['use', 'months', '03'], undefined), ['use', 'months'])).toEqual({});
});

it('takes an item of a list out and puts it back where it was', () => {
  const two = addItem(blank, ['price'], { item: 'Meter', amount: '8000' });
  const taken = takeAt(two, ['price', 0]);
  expect(taken?.quote.price).toEqual([{ item: 'Meter', amount: '8000' }]);
  expect(taken?.putBack(taken.quote)).toEqual(two);
});

it('takes a part out and puts it back', () => {
  const loan = { amount: '1', rate: '2', months: '3', kind: 'flat' };
  const taken = takeAt(putAt(blank, ['loan'], loan), ['loan']);
  expect(taken?.quote.loan).toBe(undefined);
  expect(taken?.putBack(taken.quote).loan).toEqual(loan);
  expect(takeAt(blank, ['loan'])).toBe(null);
});

it('keeps source and yield when the generation is said another way', () => {
  const said = putAt(blank, ['generation', 'usualYield'], '1400');
  const other = putAt(said, ['generation'], generationBy(said, 'irradiation'));
  expect(generationKind(other)).toBe('irradiation');
  expect(other.generation.usualYield).toBe('1400');
  expect(generationKind(putAt(said, ['generation'], generationBy(said, 'year')))).toBe('year');
  expect(generationBy(other, 'months')).toEqual({ months: {}, source: '', usualYield: '1400' });
});

it('names an input after its place', () => {
  expect(fieldIdOf(['price', 0, 'amount'])).toBe('quote-price-0-amount');
});
