import type { DayNumber, Path, Period } from '../quantity/index.ts';
import type { RegisterId } from './register.ts';

/** A reading as it was typed: one day, one number for each register. */
export interface ReadingRow {
  readonly date: string;
  readonly import: string;
  readonly export: string;
  readonly generation?: string | undefined;
  readonly status?: 'actual' | 'estimated' | undefined;
  /** The days that the bill prints for the period that this reading closes, to compare with the dates. */
  readonly printedDays?: string | undefined;
  /** Questions that whoever read the meter has answered with "it is right": `code:register` each. */
  readonly confirmed?: readonly string[] | undefined;
}

/** A reading that was understood. Registers in thousandths of a unit, as the meter shows them. */
export interface Reading {
  readonly day: DayNumber;
  readonly isEstimated: boolean;
  readonly import: number;
  readonly export: number;
  /** null where the account has no generation meter. */
  readonly generation: number | null;
  readonly printedDays: number | null;
  readonly confirmed: readonly string[];
  readonly path: Path;
}

/** Two readings in a row, checked against each other: what a bill is made of. */
export interface ReadingPair {
  readonly from: Reading;
  readonly to: Reading;
  readonly period: Period;
  /** The registers that passed their full scale between the two. */
  readonly rolledOver: readonly RegisterId[];
}

/** The key of a question about one register of a reading, as `confirmed` lists it. */
export function confirmationKey(code: string, register: RegisterId | 'date'): string {
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
