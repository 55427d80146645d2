import { calendarDay, wholeToDecimal, type DayNumber, type Quote } from '@unitbook/engine';
import { decimalOf, knownLocale, type Quotient, type Writing } from '../../writing/writing.ts';
import type { Amount } from '../charts/chart-data.ts';

/** How the numbers of one quote are written. */
export interface QuoteWriting extends Writing {
  /** Money of the quote, in whole 1/grid. */
  readonly cash: (amount: number) => string;
  /** The same without its sign, for columns. */
  readonly column: (amount: number) => string;
  /** Money as a quotient, rounded to coins where it does not end. */
  readonly share: (figure: Quotient) => string;
  /** Thousandths of a unit. */
  readonly units: (thousandths: number) => string;
  /** Years with one decimal, such as "4.6". */
  readonly years: (years: number) => string;
  /** A part of one as a percentage with two decimals, such as "22.01 %". */
  readonly percent: (part: number) => string;
  /** A sum that is a statistic, without coins. */
  readonly about: (sum: number) => string;
  /** Money for a chart: its text, and the exact decimal for a sheet. */
  readonly amountAt: (amount: number) => Amount;
  /** The same for a statistic. */
  readonly aboutAt: (sum: number) => Amount;
  /** The same for money of another quote, which can be in other parts of a coin. */
  readonly atGrid: (grid: number) => QuoteWriting;
  /** "April 2025", or "Apr". */
  readonly month: (day: DayNumber, length: 'long' | 'short') => string;
  /** "31 March" of "03-31". */
  readonly dayOfYear: (monthDay: string) => string;
}

const plainUnits = (thousandths: number): string => wholeToDecimal(thousandths, 3).replace(/\.?0+$/, '');

function utc(day: DayNumber): Date {
  const { year, month } = calendarDay(day);
  return new Date(Date.UTC(year, month - 1, 1));
}

interface Formats {
  readonly years: Intl.NumberFormat;
  readonly percent: Intl.NumberFormat;
  readonly long: Intl.DateTimeFormat;
  readonly short: Intl.DateTimeFormat;
  readonly dayOfYear: Intl.DateTimeFormat;
}

function makeFormats(locale: string): Formats {
  const one = { minimumFractionDigits: 1, maximumFractionDigits: 1 };
  return {
    years: new Intl.NumberFormat(locale, one),
    percent: new Intl.NumberFormat(locale, { minimumFractionDigits: 2, maximumFractionDigits: 2 }),
    long: new Intl.DateTimeFormat(locale, { month: 'long', year: 'numeric', timeZone: 'UTC' }),
    short: new Intl.DateTimeFormat(locale, { month: 'short', timeZone: 'UTC' }),
    dayOfYear: new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'long', timeZone: 'UTC' }),
  };
}

const known = new Map<string, Formats>();

function formatsFor(locale: string | undefined): Formats {
  const name = knownLocale(locale);
  const formats = known.get(name) ?? makeFormats(name);
  known.set(name, formats);
  return formats;
}

/** How the numbers of a quote are written, by the household's locale and the currency of its tariff. */
export function quoteWriting(
  writing: Writing,
  { locale, grid }: { readonly locale: string | undefined; readonly grid: Quote['grid'] },
): QuoteWriting {
  const { years, percent, long, short, dayOfYear } = formatsFor(locale);
  const minus = (text: string): string => text.replace('-', '−');
  const decimal = (amount: number): string =>
    decimalOf({ numerator: amount, denominator: grid }, writing.moneyPlaces);
  const about = (sum: number): string => writing.sum({ numerator: Math.round(sum), denominator: 1 });
  const own: QuoteWriting = {
    ...writing,
    cash: (amount) => writing.money(decimal(amount)),
    column: (amount) => writing.amount({ numerator: amount, denominator: grid }),
    share: (figure) => writing.money(decimalOf(figure, writing.moneyPlaces)),
    units: (thousandths) => writing.number(plainUnits(thousandths)),
    years: (count) => years.format(count),
    percent: (part) => `${minus(percent.format(part * 100))} %`,
    about,
    amountAt: (amount) => ({
      at: amount / grid,
      text: writing.money(decimal(amount)),
      decimal: decimal(amount),
    }),
    atGrid: (other) => (other === grid ? own : quoteWriting(writing, { locale, grid: other })),
    aboutAt: (sum) => ({ at: sum, text: about(sum), decimal: String(Math.round(sum)) }),
    // A leap year has every day.
    dayOfYear: (monthDay) => dayOfYear.format(new Date(`2000-${monthDay}T00:00Z`)),
    month: (day, length) => (length === 'long' ? long : short).format(utc(day)),
  };
  return own;
}
