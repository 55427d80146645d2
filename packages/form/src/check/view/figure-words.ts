import { exactText, groupOf, isDecimalText, type ComparedFigure, type Quotient } from '@unitbook/engine';
import type { Writing } from '../../writing/writing.ts';

const MONEY: readonly string[] = ['line', 'account', 'total'];

/** Whether a figure is money: else it is units, a reading, days, a power or a factor. */
export const isMoney = (name: string): boolean => MONEY.includes(groupOf(name));

/** An exact number in the reader's grouping; a fraction that does not end stays a fraction. */
function numberText(value: Quotient, { number }: Writing): string {
  const exact = exactText(value.numerator, value.denominator);
  return isDecimalText(exact) ? number(exact) : exact;
}

/**
 * A figure of a bill as the page writes it: money to the coin, units and readings as they are.
 *
 * @param name  see `FIGURE` of the engine
 */
export function figureText(name: string, value: Quotient, writing: Writing): string {
  if (!isMoney(name) || typeof value.numerator === 'bigint') return numberText(value, writing);
  return writing.amount({ numerator: value.numerator, denominator: value.denominator });
}

const opposite = ({ numerator, denominator }: Quotient): Quotient => ({
  numerator: -numerator,
  denominator,
});

/** A value without its sign. */
export const magnitude = (value: Quotient): Quotient => (value.numerator < 0 ? opposite(value) : value);

/** An amount of money with its sign of currency, whole amounts without decimals. */
export function sumText({ numerator, denominator }: Quotient, writing: Writing): string {
  return typeof numerator === 'bigint'
    ? numberText({ numerator, denominator }, writing)
    : writing.sum({ numerator, denominator });
}

/** How much a printed figure is too much, with its sign; '' where it agrees, "not known" where nothing is computed. */
export function differenceText({ name, difference, agrees }: ComparedFigure, writing: Writing): string {
  if (difference === null) return 'not known';
  if (agrees && BigInt(difference.numerator) === 0n) return '';
  return signed(difference, figureText(name, difference, writing));
}

/** A text with a plus where the value is above nothing; what is below has its minus. */
export const signed = ({ numerator }: Quotient, text: string): string => (numerator > 0 ? `+${text}` : text);

/** Whether two values are opposite and not nothing: a line typed without its minus. */
export const isOpposite = (one: Quotient, other: Quotient): boolean =>
  one.numerator !== 0 &&
  one.numerator !== 0n &&
  BigInt(one.numerator) * BigInt(other.denominator) === -BigInt(other.numerator) * BigInt(one.denominator);
