import type { RoundingMode } from '../quantity/index.ts';

/** Line kinds as small numbers, for the evaluator's one switch. */
export const TABLE = 0;
/** See {@link TABLE}. */
export const SHARE = 1;
/** See {@link TABLE}. */
export const SHORTFALL = 2;
/** See {@link TABLE}. */
export const FLOOR = 3;
/** See {@link TABLE}. */
export const CREDIT = 4;

/** Words of one piece in the flat table: limit, rate, offset. */
export const PIECE = 3;

/** Rounding modes as the evaluator asks for them: half-up inline, others by name, none exact. */
export type LineMode = RoundingMode | 'exact';

/**
 * One line with all numbers whole and ready: the amount is (scale · x · rate + offset) ÷ divisor, rounded,
 * times unit. Amounts are counted in `1 / grid` of a unit of money.
 */
export interface LineConstants {
  readonly kind: number;
  readonly quantity: number;
  /** What the quantity is multiplied by before limits and rates apply. */
  readonly scale: number;
  readonly chooser: number;
  readonly chooserScale: number;
  /** Limits of the tables; empty when there is only one. */
  readonly tableLimits: readonly number[];
  /** Pieces of all tables, flat; `tableStarts` says where each begins. */
  readonly pieces: Float64Array;
  readonly tableStarts: readonly number[];
  /** What a rate of the document is multiplied by in `pieces`. */
  readonly rateScale: number;
  readonly basis: readonly number[];
  /** For credit: the lines that earn it. */
  readonly earned: readonly number[];
  /** For minimums: what the sum of the basis is multiplied by to compare with the amount. */
  readonly basisScale: number;
  readonly divisor: number;
  readonly half: number;
  /** Denominator of the exact amount, before the step is taken into account. */
  readonly denominator: number;
  readonly unit: number;
  readonly mode: LineMode;
  readonly adds: boolean;
}
