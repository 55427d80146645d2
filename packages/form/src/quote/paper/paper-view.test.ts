import { quoteGround, type DrawSummary } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { preparedQuote, workedQuote } from '../../../../../tests/support/demo-quote.ts';
import { writingFor } from '../../writing/writing.ts';
import { quoteWriting } from '../view/quote-writing.ts';
import { ENGLISH } from '../words/english.ts';
import { FRENCH } from '../words/french.ts';
import { SPANISH } from '../words/spanish.ts';
import { countedText, paybackOn, rangeText, yearsText, type PaperView } from './paper-view.ts';

const quote = workedQuote();
const ground = quoteGround(preparedQuote());

function paperIn(locale: string, words = ENGLISH): PaperView {
  const writing = quoteWriting(writingFor(locale, 'INR'), { locale, grid: quote.grid });
  return {
    quote,
    kept: null,
    ground,
    words,
    writing,
    draws: null,
    cases: [],
    charges: [],
    tariff: '',
    isTrial: false,
  };
}

const english = paperIn('en-IN');
const french = paperIn('fr-FR', FRENCH);
const spanish = paperIn('es-ES', SPANISH);
const draws = (p50: number, p90: number): DrawSummary =>
  ({ payback: { p10: 0, p25: 0, p50, p75: 0, p90 } }) as unknown as DrawSummary;

it('counts years by the number that is written', () => {
  expect(yearsText(1.96, french)).toBe('2,0 ans');
  expect(yearsText(1.94, french)).toBe('1,9 an');
  expect(yearsText(0.96, spanish)).toBe('1,0 año');
  expect(yearsText(4.597, spanish)).toBe('4,6 años');
  expect(yearsText(1, english)).toBe('1.0 years');
});

it('says where the price does not come back', () => {
  expect(yearsText(null, spanish)).toBe('no dentro de la vida útil');
  expect(yearsText(Infinity, english)).toBe('not within the life');
});

it('says the word of a range once, and none where even the middle does not come back', () => {
  expect(rangeText(draws(4.62, 5.44), french)).toBe('4,6 – 5,4 ans');
  expect(rangeText(draws(24, Infinity), english)).toBe('24.0 years – not within the life');
  expect(rangeText(draws(Infinity, Infinity), english)).toBe('not within the life');
});

it('has a whole number of the document as it is written, and as it is counted', () => {
  expect(countedText('1200', english)).toEqual({ text: '1,200', count: 1200 });
});

it('says in the words of the paper that the price is owed again', () => {
  expect(paybackOn({ first: 4.62, last: 4.62 }, french)).toBe('4,6 ans');
  expect(paybackOn({ first: 4.62, last: 9.81 }, french)).toBe(
    '4,6 ans dans un premier temps, 9,8 ans pour de bon',
  );
  expect(paybackOn({ first: 4.62, last: null }, spanish)).toBe(
    '4,6 años en un primer momento, de nuevo pendiente al final',
  );
});
