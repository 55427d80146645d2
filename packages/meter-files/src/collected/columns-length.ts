import type { IntervalColumns } from '@unitbook/engine';

/** The lengths that interval columns can have, the shortest first. */
const COLUMN_LENGTHS: readonly IntervalColumns['minutes'][] = [5, 15, 30, 60];

/**
 * The shortest length of interval columns to which intervals of all of some lengths can be summed up.
 *
 * @param lengths  in minutes
 * @returns        null where there is none
 * @example
 * columnsLength([10]) //=> 30
 * columnsLength([5, 30]) //=> 30
 * columnsLength([1440]) //=> null
 */
export function columnsLength(lengths: readonly number[]): IntervalColumns['minutes'] | null {
  return COLUMN_LENGTHS.find((length) => lengths.every((one) => length % one === 0)) ?? null;
}
