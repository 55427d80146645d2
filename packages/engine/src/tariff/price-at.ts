import {
  calendarDay,
  dayNumber,
  decimalPlaces,
  exactText,
  isDecimalText,
  parseDay,
  roundLargeQuotient,
  type DayNumber,
  type Period,
  type Rounding,
} from '../quantity/index.ts';
import type { Price } from './price-schema.ts';
import type { TariffDocument } from './schema.ts';

/** The number that a price comes to for a period, with its clause; or why there is none. */
export type PriceAt = { readonly text: string; readonly clause: string } | { readonly problem: string };

/** An exact value: numerator and denominator, the denominator above 0. */
type Fraction = readonly [bigint, bigint];

/** The most decimals a price can come to without a rounding that says so. */
const MOST_PLACES = 8;

function fractionOf(text: string): Fraction {
  const places = decimalPlaces(text);
  const [whole = '', decimals = ''] = text.split('.');
  return [BigInt(whole + decimals.slice(0, places)), 10n ** BigInt(places)];
}

const add = ([a, b]: Fraction, [c, d]: Fraction): Fraction => [a * d + c * b, b * d];
const isLess = ([a, b]: Fraction, [c, d]: Fraction): boolean => a * d < c * b;

function roundedTo([top, bottom]: Fraction, { step, mode }: Rounding): Fraction {
  const [stepTop, stepBottom] = fractionOf(step);
  const steps = roundLargeQuotient(top * stepBottom, bottom * stepTop, mode);
  return [steps * stepTop, stepBottom];
}

/** The text of a value, where it ends within the places a price can have. */
function textOf([top, bottom]: Fraction): string | null {
  const scaled = top * 10n ** BigInt(MOST_PLACES);
  if (scaled % bottom !== 0n) return null;
  return exactText(scaled / bottom, 10 ** MOST_PLACES);
}

type Series = Price & { readonly is: 'series' };

/** The entry of a series in force on a day. */
function entryOn(series: Series, day: DayNumber): Series['values'][number] | null {
  if (series.through !== undefined && day > (parseDay(series.through) ?? day)) return null;
  return series.values.findLast(({ from }) => (parseDay(from) ?? Infinity) <= day) ?? null;
}

class NoPrice extends Error {}

interface Reading {
  readonly document: TariffDocument;
  readonly period: Period;
}

function seriesValue(name: string, series: Series, day: DayNumber): Fraction {
  const entry = entryOn(series, day);
  if (entry !== null) return fractionOf(entry.rate);
  const { year, month, day: date } = calendarDay(day);
  const text = [year, month, date].map((part) => String(part).padStart(2, '0')).join('-');
  throw new NoPrice(`the price "${name}" is not in force on ${text}`);
}

/** The first days of some calendar months, the last of them that of a day or the one before. */
function monthStarts(day: DayNumber, count: number, back: number): readonly DayNumber[] {
  const { year, month } = calendarDay(day);
  return Array.from({ length: count }, (_, index) => {
    const at = year * 12 + (month - 1) - back - index;
    return dayNumber({ year: Math.floor(at / 12), month: (at % 12) + 1, day: 1 });
  });
}

function meanValue(price: Price & { is: 'mean' }, { document, period }: Reading): Fraction {
  const series = document.prices?.[price.of];
  if (series?.is !== 'series') throw new NoPrice(`"${price.of}" is no series`);
  const count = Number.parseInt(price.months, 10);
  const back = price.through === 'this-month' ? 0 : 1;
  const days = monthStarts((period.to - 1) as DayNumber, count, back);
  const [top, bottom] = days.map((day) => seriesValue(price.of, series, day)).reduce(add, [0n, 1n]);
  return [top, bottom * BigInt(count)];
}

function operation(price: Price & { of: string[] }, values: readonly Fraction[]): Fraction {
  const [first = [0n, 1n] as const, ...rest] = values;
  switch (price.is) {
    case 'difference':
      return rest.reduce((sum, [top, bottom]) => add(sum, [-top, bottom]), first);
    case 'product':
      return rest.reduce(([a, b], [c, d]) => [a * c, b * d], first);
    case 'least':
      return values.reduce((least, value) => (isLess(value, least) ? value : least));
    case 'greatest':
      return values.reduce((most, value) => (isLess(most, value) ? value : most));
    default:
      return values.reduce(add);
  }
}

function valueOf(name: string, reading: Reading): Fraction {
  if (isDecimalText(name)) return fractionOf(name);
  const price = reading.document.prices?.[name];
  if (price === undefined) throw new NoPrice(`there is no price "${name}"`);
  if (price.is === 'series') {
    const { from, to } = reading.period;
    return seriesValue(name, price, price.inForce === 'first-day' ? from : ((to - 1) as DayNumber));
  }
  const exact = price.is === 'mean' ? meanValue(price, reading) : combined(price, reading);
  return price.rounding === undefined ? exact : roundedTo(exact, price.rounding);
}

function combined(price: Exclude<Price, { is: 'series' | 'mean' }>, reading: Reading): Fraction {
  const value = operation(
    price,
    price.of.map((operand) => valueOf(operand, reading)),
  );
  if (price.is !== 'percent') return value;
  const [top, bottom] = fractionOf(price.percent);
  return [value[0] * top, value[1] * bottom * 100n];
}

/** More digits than a rate of a document may have. */
function isTooLong(text: string): boolean {
  const [whole = '', decimals = ''] = text.replace('-', '').split('.');
  return whole.length > 9 || whole.length + decimals.length > 15;
}

/** The clause of what is in force: of the entry of a series, else of the price. */
function clauseOf(price: Price | undefined, { from, to }: Period): string {
  if (price?.is !== 'series') return price?.clause ?? '';
  const entry = entryOn(price, price.inForce === 'first-day' ? from : ((to - 1) as DayNumber));
  return entry?.clause ?? price.clause;
}

/**
 * The number that a price of a document comes to for a billing period.
 *
 * @param document  whose prices name only prices above them
 * @param name      of the price
 * @param period    the whole billing period
 * @returns         an exact decimal of at most eight places with its clause, or why there is none
 * @example
 * priceAt({ prices: { fuel: { is: 'sum', clause: 'T 1', of: ['1.5', '0.25'] } } }, 'fuel', { from: 0, to: 1 }).text //=> "1.75"
 */
export function priceAt(document: TariffDocument, name: string, period: Period): PriceAt {
  try {
    const text = textOf(valueOf(name, { document, period }));
    if (text !== null && isTooLong(text))
      return { problem: `the price "${name}" comes to ${text}, too large to bill` };
    if (text === null) return { problem: `the price "${name}" does not end within 8 decimals` };
    return { text, clause: clauseOf(document.prices?.[name], period) };
  } catch (error) {
    if (error instanceof NoPrice) return { problem: error.message };
    throw error;
  }
}
