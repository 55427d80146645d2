import { projectionText, quotientText, type Payback, type Quote, type Quotient } from '@unitbook/engine';
import type { PageNotation } from './notation.ts';
import { moneyFigure } from './sum-figures.ts';

/** Writes the figures of a quote as its page has them. */
export interface QuoteWriter {
  readonly notation: PageNotation;
  /** Money in whole 1/grid, to the coin and beyond where it is finer. */
  readonly money: (amount: number) => string;
  /** Money for a unit, or of a month on the average. */
  readonly quotient: (value: Quotient) => string;
  /** An amount of the document. */
  readonly amount: (text: string) => string;
  /** Money of random draws, whole. */
  readonly drawn: (value: number) => string;
  /** Units in whole thousandths. */
  readonly units: (thousandths: number) => string;
  /** A length of time in years, to a tenth; null or endless: not within the life. */
  readonly years: (value: number | null) => string;
  /** A part of one in percent, to a hundredth. */
  readonly percent: (part: number) => string;
  /** A count, or a number of the document. */
  readonly number: (text: string) => string;
}

/**
 * Make the writer of a quote.
 *
 * @param quote     its grid and its life are taken
 * @param notation  of the page
 */
export function quoteWriter(
  { grid, input }: Pick<Quote, 'grid' | 'input'>,
  notation: PageNotation,
): QuoteWriter {
  const { number } = notation;
  const amountOf = (value: Quotient): string => notation.amount(moneyFigure(value));
  return {
    notation,
    number,
    money: (amount) => amountOf({ numerator: amount, denominator: grid }),
    quotient: ({ numerator, denominator }) =>
      number(quotientText(numerator, denominator, notation.moneyPlaces)),
    amount: (text) => {
      const decimals = text.split('.')[1]?.length ?? 0;
      return number(decimals >= notation.moneyPlaces ? text : padded(text, notation.moneyPlaces - decimals));
    },
    drawn: (value) => number(projectionText(value, 0)),
    units: (thousandths) => notation.units({ numerator: thousandths, denominator: 1000 }),
    years: (value) =>
      value === null || value === Infinity
        ? `not within ${String(input.years)} years`
        : `${number(projectionText(value, 1))} years`,
    percent: (part) => `${number(projectionText(part * 100, 2))} %`,
  };
}

function padded(text: string, zeros: number): string {
  return `${text}${text.includes('.') ? '' : '.'}${'0'.repeat(zeros)}`;
}

/** When a price has come back, and whether it is owed again after that. */
export function paybackWords(
  { first, last }: Pick<Payback, 'first' | 'last'>,
  { years }: Pick<QuoteWriter, 'years'>,
): string {
  if (first === null || first === last) return years(first);
  const again = 'owed again once something is replaced';
  return last === null
    ? `${years(first)}, then ${again}, and still at the end`
    : `${years(first)}, then ${again}, and back for good after ${years(last)}`;
}
