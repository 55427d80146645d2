import type { Quotient } from '../../quantity/index.ts';

/** Units of a month, a year or a life. */
export interface UsedUnits {
  readonly use: number;
  readonly generation: number;
  /** Used at home of what was made. */
  readonly selfUse: number;
  readonly exported: number;
}

/** Self-consumption under both of its names, and self-sufficiency. Exact; null where the bottom is 0. */
export interface OwnUseShares {
  /** (generation − export) ÷ generation: what a battery loses and holds counts as used. */
  readonly notExported: Quotient | null;
  /** Delivered to the house ÷ generation. */
  readonly delivered: Quotient | null;
  /** Delivered to the house ÷ use. */
  readonly selfSufficiency: Quotient | null;
}

const ratio = (numerator: number, denominator: number): Quotient | null =>
  denominator === 0 ? null : { numerator, denominator };

/**
 * Self-consumption, which has to say what it counts: without a battery both of its names are the same.
 *
 * @param units  whole numbers of one unit
 * @source       Photovoltaic self-consumption in buildings: A review, Luthander, Widén, Nilsson and Palm, Applied
 *               Energy 142, 2015: self-consumption and self-sufficiency
 * @example
 * ownUseShares({ use: 12, generation: 10, selfUse: 6, exported: 4 }).delivered //=> {"numerator":6,"denominator":10}
 */
export function ownUseShares({ use, generation, selfUse, exported }: UsedUnits): OwnUseShares {
  return {
    notExported: ratio(generation - exported, generation),
    delivered: ratio(selfUse, generation),
    selfSufficiency: ratio(selfUse, use),
  };
}
