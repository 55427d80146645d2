import { exactText, minorUnitDigits, type Figure } from '@unitbook/engine';

/** A figure as an exact text. */
export function plainText(figure: Figure): string {
  return exactText(figure.numerator, figure.denominator);
}

/**
 * An amount of money as an exact text with at least the currency's decimals: "180.00", not "180".
 * Finer amounts keep all their digits: nothing is rounded here.
 */
export function moneyText(figure: Figure, currency: string): string {
  const text = plainText(figure);
  if (text.includes('/')) return text;
  const [whole = '', decimals = ''] = text.split('.');
  const places = minorUnitDigits(currency) ?? 2;
  const padded = decimals.padEnd(places, '0');
  return padded === '' ? whole : `${whole}.${padded}`;
}
