import {
  calendarDay,
  exactText,
  minorUnitDigits,
  parseDay,
  quotientText,
  type DayNumber,
  type Figure,
  type Notation,
} from '@unitbook/engine';

/** The value of a figure. */
export type Quotient = Pick<Figure, 'numerator' | 'denominator'>;

/** How the page writes numbers, money and days for one household. */
export interface Writing extends Notation {
  /** Money without its sign, for a column that has the sign at its head. */
  readonly amount: (figure: Quotient) => string;
  /** Money with its sign, whole amounts without decimals. */
  readonly sum: (figure: Quotient) => string;
  /** A number of a sentence with the decimals it has: "38,931.60" is money, "38,931.6" is not. */
  readonly printed: (text: string) => string;
  /** Units and other plain figures. */
  readonly plain: (figure: Quotient) => string;
  /** "1 May 2025" */
  readonly day: (day: DayNumber) => string;
  /** The sign of the currency, such as ₹. */
  readonly sign: string;
}

type DecimalText = `${number}`;

/** A name the browser knows, or the plainest one it has. */
export function knownLocale(locale: string | undefined): string {
  try {
    return Intl.getCanonicalLocales(locale ?? '')[0] ?? 'en-IN';
  } catch {
    return 'en-IN';
  }
}

/** A figure as a decimal text; a fraction that does not end is rounded, for people to read. */
export function decimalOf(figure: Quotient, places: number): string {
  const exact = exactText(figure.numerator, figure.denominator);
  return exact.includes('/') ? quotientText(figure.numerator, figure.denominator, places) : exact;
}

function utcDate(day: DayNumber): Date {
  const { year, month, day: dayOfMonth } = calendarDay(day);
  return new Date(Date.UTC(year, month - 1, dayOfMonth));
}

/** Writes numbers with the decimals they have. */
function printedIn(locale: string): (text: string) => string {
  const formats = new Map<number, Intl.NumberFormat>();
  return (text) => {
    const own = text.split('.')[1]?.length ?? 0;
    const format =
      formats.get(own) ??
      new Intl.NumberFormat(locale, { minimumFractionDigits: own, maximumFractionDigits: 20 });
    formats.set(own, format);
    return format.format(text as DecimalText);
  };
}

function makeWriting(locale: string, currency: string): Writing {
  const places = minorUnitDigits(currency) ?? 2;
  const style = { style: 'currency', currency } as const;
  const plain = new Intl.NumberFormat(locale, { maximumFractionDigits: 20 });
  const money = new Intl.NumberFormat(locale, {
    ...style,
    minimumFractionDigits: places,
    maximumFractionDigits: 20,
  });
  const sum = new Intl.NumberFormat(locale, {
    ...style,
    minimumFractionDigits: 0,
    maximumFractionDigits: 20,
  });
  const amount = new Intl.NumberFormat(locale, { minimumFractionDigits: places, maximumFractionDigits: 20 });
  const printed = printedIn(locale);
  const day = new Intl.DateTimeFormat(locale, {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: 'UTC',
  });
  // The page names the same days at each keystroke, and a formatter takes its time.
  const days = new Map<DayNumber, string>();
  const dayName = (number: DayNumber): string => {
    const name = days.get(number) ?? day.format(utcDate(number));
    days.set(number, name);
    return name;
  };
  const minus = (text: string): string => text.replace('-', '−');
  const moneyText = (figure: Quotient): string => {
    const text = decimalOf(figure, places);
    return text.includes('.') ? text.padEnd(text.indexOf('.') + places + 1, '0') : text;
  };
  return {
    printed: (text) => minus(printed(text)),
    number: (text) => minus(plain.format(text as DecimalText)),
    money: (text) => minus(money.format(text as DecimalText)),
    moneyPlaces: places,
    amount: (figure) => minus(amount.format(decimalOf(figure, places) as DecimalText)),
    sum: (figure) => {
      const text = moneyText(figure);
      return minus((text.includes('.') ? money : sum).format(text as DecimalText));
    },
    plain: (figure) => minus(plain.format(decimalOf(figure, 2) as DecimalText)),
    day: dayName,
    sign: sum.formatToParts(0).find((part) => part.type === 'currency')?.value ?? currency,
  };
}

const known = new Map<string, Writing>();

/**
 * How to write for a locale and a currency. Made once for each: formatters are slow to make.
 *
 * @param locale    as the account says it; one the browser does not know falls back to en-IN
 * @param currency  ISO 4217
 */
export function writingFor(locale: string | undefined, currency: string): Writing {
  const key = `${locale ?? ''} ${currency}`;
  const writing = known.get(key) ?? makeWriting(knownLocale(locale), currency);
  known.set(key, writing);
  return writing;
}

/** The ISO dates of an engine's sentence in words. */
export function localDates(text: string, writing: Writing): string {
  return text.replace(/\b\d{4}-\d{2}-\d{2}\b/g, (iso) => {
    const day = parseDay(iso);
    return day === null ? iso : writing.day(day);
  });
}

/** An offered text as the household writes it: a number in its grouping, a date in words. */
export function offerText(text: string, writing: Writing): string {
  return /^-?\d+(?:\.\d+)?$/.test(text) ? writing.number(text) : localDates(text, writing);
}

/** Units are kWh; any other is called by its name. */
export function unitsWord(unit: Figure['unit']): string {
  return unit === 'kWh' ? 'units' : unit;
}

/** "3 days", "1 day". */
export function daysText(days: number): string {
  return days === 1 ? '1 day' : `${String(days)} days`;
}
