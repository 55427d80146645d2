import type { Period } from '../quantity/index.ts';
import type { AccountDays, PastPeriod } from './settle-context.ts';

/** What periods remember, as sums from the first on: those of any window are one subtraction. */
export interface QuickPast {
  /** The periods that are remembered before the one in hand, with the names each knows. */
  readonly periods: readonly PastPeriod[];
  /** By name: at n, the sum over the first n periods. */
  readonly sums: ReadonlyMap<string, Float64Array>;
}

/**
 * Works out one quantity in place, on ordinary numbers and without making anything.
 *
 * @returns false where the long way has to decide: too large, not whole, or a finding
 */
export type QuickRun = (values: Float64Array) => boolean;

/** The time that quantities are worked out for. */
export interface QuickTime {
  readonly period: Period;
  readonly account: AccountDays;
  readonly past: QuickPast;
}
