import { exactText, figureValue, quotientText, type Figure, type Notation } from '@unitbook/engine';

/** How a page writes numbers. */
export interface PageNotation extends Notation {
  /** An amount of money as a column has it: padded to the coin, without the currency. */
  readonly amount: (figure: Figure) => string;
  /** Units as a column has them, without the word. */
  readonly units: (figure: Pick<Figure, 'numerator' | 'denominator'>) => string;
}

/** A plain hyphen is easily lost at the end of a line or beside a digit. */
const withMinus = (text: string): string => text.replace('-', '−');

/** More decimals than this are not for `Intl`; nothing in them is grouped. */
const MOST_PLACES = 20;

/** Digits grouped as a locale does; only decimal texts go in, so that nothing becomes a binary fraction. */
function grouping(locale: string): (text: string) => string {
  const formats = new Map<number, Intl.NumberFormat>();
  const format = (text: string, places: number): string => {
    const options: Intl.NumberFormatOptions = {
      minimumFractionDigits: places,
      maximumFractionDigits: places,
      // Dates and labels have these digits, too.
      numberingSystem: 'latn',
    };
    const one = formats.get(places) ?? new Intl.NumberFormat(locale, options);
    formats.set(places, one);
    return withMinus(one.format(text as Intl.StringNumericLiteral));
  };
  return (text) => {
    const [whole = '', decimals = ''] = text.split('.');
    if (decimals.length <= MOST_PLACES) return format(text, decimals.length);
    const mark = format('0.5', 1).slice(1, -1);
    return `${format(whole, 0)}${mark}${decimals}`;
  };
}

/**
 * Make the notation of a page.
 *
 * @param locale       a language tag that `Intl` knows
 * @param moneyPlaces  decimals of the currency's smallest coin
 * @example
 * makeNotation('en-IN', 2).number('1234567.50') //=> "12,34,567.50"
 */
export function makeNotation(locale: string, moneyPlaces: number): PageNotation {
  const number = grouping(locale);
  const notation: Notation = { number, money: number, moneyPlaces };
  const short = ({ numerator, denominator }: Pick<Figure, 'numerator' | 'denominator'>, places: number) => {
    const text = exactText(numerator, denominator);
    return text.includes('/') ? `≈${number(quotientText(numerator, denominator, places))}` : null;
  };
  return {
    ...notation,
    amount: (figure) => short(figure, moneyPlaces) ?? figureValue(figure, notation),
    units: (figure) => short(figure, 2) ?? number(exactText(figure.numerator, figure.denominator)),
  };
}

/** Whether the locale is one that numbers can be grouped by. */
export function isKnownLocale(locale: string): boolean {
  try {
    return Intl.NumberFormat.supportedLocalesOf([locale]).length === 1;
  } catch {
    return false;
  }
}
