import { addDays, format, parseISO, startOfMonth, subMonths } from 'date-fns';
import type { TariffDocument, UnitsPeriod } from '@unitbook/engine';
import {
  dividedBy,
  fraction,
  largest,
  least,
  minus,
  plus,
  roundFraction,
  times,
  ZERO,
  type Fraction,
} from './fraction.ts';

type Price = NonNullable<TariffDocument['prices']>[string];

const iso = (date: Date): string => format(date, 'yyyy-MM-dd');

/** The value of a series on a day: of the last entry that has begun. */
function valueOn({ values }: Price & { is: 'series' }, day: string): Fraction {
  const begun = values.filter(({ from }) => from <= day).map(({ rate }) => rate);
  const rate = begun.at(-1);
  if (rate === undefined) throw new Error(`no price on ${day}`);
  return fraction(rate);
}

/**
 * What a price comes to for a period, by the document's own words, in decimal.js.
 *
 * @param rate  the name of a price, or a number
 */
export function priceOf(document: TariffDocument, rate: string, period: UnitsPeriod): Fraction {
  const price = document.prices?.[rate];
  if (price === undefined) return fraction(rate);
  const last = iso(addDays(parseISO(period.to), -1));
  if (price.is === 'series') return valueOn(price, price.inForce === 'first-day' ? period.from : last);
  const exact = price.is === 'mean' ? meanOf(document, price, last) : combined(document, price, period);
  return price.rounding === undefined ? exact : roundFraction(exact, price.rounding);
}

/** The mean of a series on the first days of so many months. */
function meanOf(document: TariffDocument, price: Price & { is: 'mean' }, last: string): Fraction {
  const series = document.prices?.[price.of];
  if (series?.is !== 'series') throw new Error(price.of);
  const count = Number.parseInt(price.months, 10);
  let month = startOfMonth(parseISO(last));
  if (price.through === 'month-before') month = subMonths(month, 1);
  let total = ZERO;
  for (let at = 0; at < count; at += 1) total = plus(total, valueOn(series, iso(subMonths(month, at))));
  return dividedBy(total, fraction(count));
}

function combined(
  document: TariffDocument,
  price: Exclude<Price, { is: 'series' | 'mean' }>,
  period: UnitsPeriod,
): Fraction {
  const values = price.of.map((operand) => priceOf(document, operand, period));
  switch (price.is) {
    case 'sum':
      return values.reduce(plus);
    case 'difference':
      return values.reduce(minus);
    case 'product':
      return values.reduce(times);
    case 'least':
      return values.reduce(least);
    case 'greatest':
      return values.reduce(largest);
    case 'percent':
      return times(values.reduce(plus), dividedBy(fraction(price.percent), fraction(100)));
  }
}
