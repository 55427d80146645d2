import type { Period } from '../../quantity/index.ts';
import type { LifeUnits } from '../life-columns.ts';
import type { PeriodShape } from './period-shape.ts';

/**
 * How much of what a plant makes is used at home, month by month: by a share, by intervals, with or without a
 * battery. Units are whole thousandths of a kWh, and whole steps of the quote.
 */
export interface OwnUse {
  /** Time blocks whose columns it fills; none: only the columns that every row has. */
  readonly blocks: readonly string[];
  /** Measures of the tariff that are netted inside windows and whose columns it fills, after those of blocks. */
  readonly measures: readonly string[];
  /**
   * Fill in what is used at home, taken and given in every month of a life, the first one first: what a battery
   * holds goes over into the next month.
   *
   * @param into  use and generation of each month are there
   */
  readonly take: (into: LifeUnits) => void;
  /**
   * Units of any period that were made and not given to the grid: used at home, or put into a battery.
   *
   * @param made  in the period, and
   * @param used  in it
   */
  readonly kept: (period: Period, made: number, used: number) => number;
  /**
   * Units of any period that were used at home: what is kept, less what a battery loses and holds.
   *
   * @param made  in the period, and
   * @param used  in it
   */
  readonly delivered: (period: Period, made: number, used: number) => number;
  /**
   * When units of any period are used, made, taken and given, as doubles; null: the rule does not tell.
   *
   * @param made  in the period, and
   * @param used  in it
   */
  readonly shape: (period: Period, made: number, used: number) => PeriodShape | null;
  /** The same rule as random draws use it, quick enough for a thousand lives. */
  readonly forDraws: () => OwnUse;
}

/** A rule that fills in no more columns than every row has. */
export const NO_BLOCKS: readonly string[] = [];
/** It does not tell when units are used. */
export const NO_SHAPE = (): null => null;

/** What a double can be off by where it stands for a half: a billionth of a step. */
const DOUBT = 1e-9;

/**
 * Units of a simulation rounded half-up to whole steps. Its energies are doubles: what is less than a billionth
 * of a step below a half counts as the half, so that no last digit of a sum decides.
 *
 * @param value  thousandths, 0 or more
 * @param step   thousandths
 * @example
 * roundedUnits(2499.99, 1000) //=> 2000
 * roundedUnits(2499.9999999999, 1000) //=> 3000
 */
export function roundedUnits(value: number, step: number): number {
  return Math.floor(value / step + 0.5 + DOUBT) * step;
}
