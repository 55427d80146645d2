import { countOfRates, type InternalRates, type Payback, type Quote } from '@unitbook/engine';
import type { PaperCases, PaperSentences } from './quote-words.ts';

type PaybackWords = Pick<PaperSentences, 'atFirst' | 'forGood' | 'owedAtEnd'>;

/** Whether a payback is not the last word: the price is owed again after it, as when a part is replaced. */
export const isOwedAgain = ({ first, last }: Pick<Payback, 'first' | 'last'>): boolean =>
  first !== null && first !== last;

/**
 * When a price has come back, never without saying that it is owed again after that.
 *
 * @param years  writes years with their word; null is that the price does not come back
 * @example
 * paybackText({ first: 2.5, last: 7 }, ENGLISH_SENTENCES, (years) => `${years} years`)
 *   //=> "2.5 years at first, for good after 7 years"
 */
export function paybackText(
  { first, last }: Pick<Payback, 'first' | 'last'>,
  words: PaybackWords,
  years: (years: number | null) => string,
): string {
  if (!isOwedAgain({ first, last })) return years(first);
  return `${words.atFirst(years(first))}, ${last === null ? words.owedAtEnd : words.forGood(years(last))}`;
}

/**
 * Rates of return: one, or that there is none or are several, of which none says whether it pays.
 *
 * @param percent  writes a part of one as a percentage
 * @example
 * returnText({ rates: [0.25, 4] }, ENGLISH_CASES, (part) => `${part * 100} %`) //=> "several: 25 %, 400 %"
 */
export function returnText(
  rates: InternalRates,
  { noReturn, several }: Pick<PaperCases, 'noReturn' | 'several'>,
  percent: (part: number) => string,
): string {
  const texts = rates.rates.map(percent).join(', ');
  switch (countOfRates(rates)) {
    case 'none':
      return noReturn;
    case 'one':
      return texts;
    case 'several':
      return several(texts);
  }
}

/** Whether one of some quotes has several rates of return: that needs a word beside them. */
export const hasSeveralReturns = (quotes: readonly (Pick<Quote, 'measures'> | null)[]): boolean =>
  quotes.some((quote) => quote !== null && countOfRates(quote.measures.rates) === 'several');
