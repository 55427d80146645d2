import {
  addQuotients,
  dayText,
  exactText,
  subtractQuotients,
  type DayNumber,
  type Period,
  type Quotient,
} from '../../quantity/index.ts';
import type { AccuracyClass } from '../../readings/index.ts';
import type { LedgerEntry, PassbookEntry } from '../../settlement/index.ts';
import type { Bill } from '../../bill/index.ts';
import type { BillFacts } from '../facts.ts';
import type { Figures } from '../figures.ts';
import { quotientOf, type PrintedBill } from '../printed.ts';
import type { RunFacts } from '../search.ts';

/** A right bill with what it is made of. */
export interface KnownBill {
  readonly facts: BillFacts;
  readonly figures: Figures;
}

/** What an app or an inverter says was made, and in which days. */
export interface AppUnits {
  readonly period: Period;
  /** kWh, exact. */
  readonly generation: Quotient;
  /** The class of what counted them; left out: not known. */
  readonly accuracyClass?: AccuracyClass;
}

/** What is known of a right bill that may surprise; whatever is not known is null. */
export interface SurpriseTerms {
  readonly facts: BillFacts;
  readonly right: Figures;
  /** The right bill with its lines, and where its units went. */
  readonly month: {
    readonly bill: Bill;
    readonly passbook: PassbookEntry | null;
    readonly ledgers: readonly LedgerEntry[];
  };
  readonly printed: PrintedBill;
  /** The bill printed before it. */
  readonly printedBefore: PrintedBill | null;
  readonly before: KnownBill | null;
  /** The bill of the same month a year before. */
  readonly yearBefore: KnownBill | null;
  /** The day on which the plant was connected for net metering. */
  readonly connected: DayNumber | null;
  readonly app: AppUnits | null;
  /** Makes bills of other facts, with what was brought forward into this one. */
  readonly run: RunFacts;
}

/** A part of what is said of a surprise: words, a number, or a day. */
export type SurprisePart =
  | string
  | {
      readonly kind: 'number' | 'money';
      readonly value: Quotient;
      /** As `what` has it. */
      readonly plain: string;
    }
  | { readonly kind: 'day'; readonly day: DayNumber };

/** Something that surprises on a bill and is right all the same. */
export interface Surprise {
  /** Short and stable, such as "own-use". */
  readonly id: string;
  /** What surprises, in words with its figures as plain decimals and days as yyyy-mm-dd. */
  readonly what: string;
  /** The same in parts: whoever shows it writes numbers and days as the household does, see `surpriseWords`. */
  readonly said: readonly SurprisePart[];
  /** The figures in those words, by name: units in kWh, amounts in money. */
  readonly figures: Readonly<Record<string, Quotient>>;
  /** The clause behind it; null where it follows from the readings alone. */
  readonly clause: string | null;
}

/** A kind of surprise: looks at what is known and says what surprises, or null. */
export type FindSurprise = (terms: SurpriseTerms) => Surprise | null;

/** An exact value in words. */
export const textOf = ({ numerator, denominator }: Quotient): string => exactText(numerator, denominator);

/** A number in what is said. */
export const numberPart = (value: Quotient): SurprisePart => ({
  kind: 'number',
  value,
  plain: textOf(value),
});

/** A number in what is said, from a decimal text that keeps its zeros. */
export const decimalPart = (plain: string): SurprisePart => ({
  kind: 'number',
  value: quotientOf(plain),
  plain,
});

/** An amount of money in what is said; its plain text has a currency code before it, where one is given. */
export const moneyPart = (value: Quotient, currency = '', plain = textOf(value)): SurprisePart => ({
  kind: 'money',
  value,
  plain: `${currency} ${plain}`.trim(),
});

/** A day in what is said. */
export const dayPart = (day: DayNumber): SurprisePart => ({ kind: 'day', day });

/** Words with parts between them, as a template: said`the ${numberPart(units)} units brought forward`. */
export const said = (
  words: TemplateStringsArray,
  ...between: readonly (SurprisePart | readonly SurprisePart[])[]
): readonly SurprisePart[] =>
  words.flatMap((text, at) => {
    const part = between[at] ?? '';
    return [text, ...(Array.isArray(part) ? (part as readonly SurprisePart[]) : [part as SurprisePart])];
  });

function plainPart(part: SurprisePart): string {
  if (typeof part === 'string') return part;
  return part.kind === 'day' ? dayText(part.day) : part.plain;
}

/** What is said, in parts and as one plain text. */
export const told = (parts: readonly SurprisePart[]): Pick<Surprise, 'what' | 'said'> => ({
  what: parts.map(plainPart).join(''),
  said: parts.filter((part) => part !== ''),
});

/** Whether one exact value is above another. */
export const isAbove = (one: Quotient, other: Quotient): boolean =>
  subtractQuotients(one, other).numerator > 0;

/** Whether an exact value is above 0. */
export const isPositive = ({ numerator }: Quotient): boolean => numerator > 0;

/** Two or more of the figures of a bill; null where one of them is not known. */
export function figuresAt<Name extends string>(
  figures: Figures,
  names: Readonly<Record<Name, string>>,
): Record<Name, Quotient> | null {
  const found: Partial<Record<Name, Quotient>> = {};
  for (const name of Object.keys(names) as Name[]) {
    const value = figures.get(names[name]);
    if (value === undefined) return null;
    found[name] = value;
  }
  return found as Record<Name, Quotient>;
}

/** A value as so many times another: for values for each day, compared without dividing. */
export const timesWhole = ({ numerator, denominator }: Quotient, factor: number): Quotient => ({
  numerator: BigInt(numerator) * BigInt(factor),
  denominator,
});

/** The sum of two exact values. */
export const plus = (one: Quotient, other: Quotient): Quotient => addQuotients([one, other]);
