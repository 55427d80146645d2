import type { DayNumber, Path, Period } from '../quantity/index.ts';
import type { MeterSpan } from './meter-spans.ts';
import type { Register, RegisterId } from './register.ts';

/** Ways in which a value came to stand in the place of what was read or printed. */
export const EDIT_METHODS = [
  'own-reading',
  'by-days',
  'mean-of-days',
  'same-month-last-year',
  'typed-again',
] as const;

/** A value that took the place of another: the one before is kept, so that it can be put back. */
export interface ReadingEdit {
  /** By its key: "import", or "import-1" for rate 1. */
  readonly register: string;
  /** What stood there before. */
  readonly raw: string;
  /** Whether that was an estimate. */
  readonly wasEstimated?: boolean | undefined;
  readonly method: (typeof EDIT_METHODS)[number];
  readonly note?: string | undefined;
}

/** A reading as it was typed: one day, one number for each register. */
export interface ReadingRow {
  readonly date: string;
  /** Left out where the account counts rates, and in rows about another meter. */
  readonly import?: string | undefined;
  readonly export?: string | undefined;
  readonly generation?: string | undefined;
  /** The registers of the rates, by rate, where the account has them. */
  readonly rates?:
    Readonly<Partial<Record<'import' | 'export', Readonly<Record<string, string>> | undefined>>> | undefined;
  /** The last reading of a meter that is taken off, or the first of one that begins; left out: a usual one. */
  readonly event?: 'final' | 'first' | undefined;
  readonly status?: 'actual' | 'estimated' | undefined;
  /** The registers that were estimated, where the others were read. */
  readonly estimated?: readonly RegisterId[] | undefined;
  readonly edits?: readonly ReadingEdit[] | undefined;
  /** The days that the bill prints for the period that this reading closes, to compare with the dates. */
  readonly printedDays?: string | undefined;
  /** Questions that whoever read the meter has answered with "it is right": `code:register` each. */
  readonly confirmed?: readonly string[] | undefined;
}

/** A reading that was understood. Registers in thousandths of a unit, as the meter shows them. */
export interface Reading {
  readonly day: DayNumber;
  readonly event: 'final' | 'first' | null;
  readonly isEstimated: boolean;
  /** Which registers were estimated. */
  readonly estimated: readonly RegisterId[];
  /** null where it was not read: rates stand in its place, or the row is about another meter. */
  readonly import: number | null;
  readonly export: number | null;
  readonly generation: number | null;
  /** The registers of the rates by their key, such as "import-1"; null where there are none. */
  readonly rates: Readonly<Record<string, number>> | null;
  readonly printedDays: number | null;
  readonly confirmed: readonly string[];
  readonly path: Path;
}

/** What a register showed in a reading, in thousandths; null where it was not read. */
export function shownBy(reading: Reading, { id, rate, key }: Register): number | null {
  return rate === null ? reading[id] : (reading.rates?.[key] ?? null);
}

/** One register of one meter between two readings of it, or of a part of a period. */
export interface Stretch {
  readonly register: Register;
  readonly from: Reading;
  readonly to: Reading;
  /** Whether it passed its full scale between the two. */
  readonly passed: boolean;
  /** Whether it began anew at 0 in between: it counted at least what it shows. */
  readonly beganAnew: boolean;
}

/** Two readings in a row, checked against each other: what a bill is made of. */
export interface ReadingPair {
  readonly from: Reading;
  readonly to: Reading;
  readonly period: Period;
  /** The registers that passed their full scale between the two. */
  readonly rolledOver: readonly RegisterId[];
  /**
   * What each register counted, where a meter was changed or begins anew or rates are counted; null:
   * each register of the account counted from the one reading to the other.
   */
  readonly stretches: readonly Stretch[] | null;
  /** The meters that counted when it began. */
  readonly span: MeterSpan;
}

/** The key of a question about one register of a reading, as `confirmed` lists it. */
export function confirmationKey(code: string, register: string): string {
  return `${code}:${register}`;
}

const SHORT_BILL = 20;
const LONG_BILL = 70;

/**
 * Whether a bill often has so many days: from a short month to two months.
 *
 * @example
 * isUsualBill(31) //=> true
 */
export function isUsualBill(days: number): boolean {
  return days >= SHORT_BILL && days <= LONG_BILL;
}
