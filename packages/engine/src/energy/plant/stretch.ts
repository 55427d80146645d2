import type { LevelDay } from './season.ts';
import { brightLevel } from './season.ts';

/** What is known of a stretch of days, in whole numbers: of their indexes and of their units per kWp. */
export interface Stretch {
  /** Places in the row of days: from the first to the place after the last. */
  readonly from: number;
  readonly to: number;
  readonly sum: number;
  readonly most: number;
  /** What a quarter of the days reach. */
  readonly bright: number;
  /** The same of units per kWp. */
  readonly brightPeak: number;
  /** The same of the first and of the second half of the days. */
  readonly brightFirst: number;
  readonly brightSecond: number;
}

/**
 * Describe a stretch of days.
 *
 * @param days  in order, the stretch is part of them
 */
export function stretchOf(days: readonly LevelDay[], from: number, to: number): Stretch {
  const own = days.slice(from, to);
  const indexes = own.map(({ index }) => index);
  const half = Math.floor(own.length / 2);
  return {
    from,
    to,
    sum: indexes.reduce((sum, value) => sum + value, 0),
    most: Math.max(...indexes),
    bright: brightLevel(indexes),
    brightPeak: brightLevel(own.map(({ perPeak }) => perPeak)),
    brightFirst: brightLevel(indexes.slice(0, half)),
    brightSecond: brightLevel(indexes.slice(half)),
  };
}

/** The spread within stretches, so that the days of one resemble the day before: squares and neighbours. */
interface Spread {
  readonly squares: bigint;
  readonly neighbours: bigint;
}

/** Sums of squares and of products of neighbours about the mean, times the number of days squared. */
function spreadOf(days: readonly LevelDay[], { from, to, sum }: Stretch): Spread {
  const count = to - from;
  let [squares, neighbours] = [0n, 0n];
  let before = 0n;
  for (let place = from; place < to; place += 1) {
    const apart = BigInt(count * (days[place]?.index ?? 0) - sum);
    squares += apart * apart;
    neighbours += apart * before;
    before = apart;
  }
  return { squares, neighbours };
}

/** A strength as an exact quotient: compared by cross products. */
export interface Strength {
  readonly numerator: bigint;
  readonly denominator: bigint;
}

/**
 * How strongly the means of two stretches of equal length differ: the square of their difference over its
 * variance, the variance raised as far as a day resembles the day before: (1 + r) ÷ (1 − r), with r from 0
 * to 0.8. Exact.
 */
export function differenceStrength(days: readonly LevelDay[], one: Stretch, other: Stretch): Strength {
  const count = BigInt(one.to - one.from);
  const [a, b] = [spreadOf(days, one), spreadOf(days, other)];
  const squares = a.squares + b.squares;
  const likeness = a.neighbours + b.neighbours;
  const difference = BigInt(one.sum - other.sum);
  const [less, more] = resemblance(likeness, squares);
  return {
    numerator: difference * difference * count * (count - 1n) * less,
    denominator: squares * more === 0n ? 1n : squares * more,
  };
}

/** 1 − r and 1 + r on one scale, with r = likeness ÷ squares held from 0 to 0.8. */
export function resemblance(likeness: bigint, squares: bigint): readonly [bigint, bigint] {
  if (likeness <= 0n || squares === 0n) return [1n, 1n];
  if (likeness * 5n > squares * 4n) return [1n, 9n];
  return [squares - likeness, squares + likeness];
}

/** Whether one strength is above another. */
export function isStronger(one: Strength, other: Strength): boolean {
  return one.numerator * other.denominator > other.numerator * one.denominator;
}

/** Whether a strength is at least some whole number. */
export function isAtLeast({ numerator, denominator }: Strength, least: number): boolean {
  return numerator >= BigInt(least) * denominator;
}

/**
 * A straight line through some whole numbers: of what it explains of the sum of squares, the root of the
 * numerator (`slope`, below 0 where it falls) and the denominator (`spread`). Exact.
 *
 * @example
 * lineThrough([3, 2, 1]).slope //=> -4n
 */
export function lineThrough(values: readonly number[]): { readonly slope: bigint; readonly spread: bigint } {
  let [slope, spread] = [0, 0];
  values.forEach((value, place) => {
    // Twice the distance from the middle is a whole number.
    const at = 2 * place - (values.length - 1);
    slope += at * value;
    spread += at * at;
  });
  return { slope: BigInt(slope), spread: BigInt(spread) };
}
