import type { LevelDay } from './season.ts';
import { brightLevel } from './season.ts';
import { isAtLeast, isStronger, lineThrough, resemblance, type Strength } from './stretch.ts';

/** A slow fall over some days that ended with a rise. */
export interface Slide {
  /** Places in the row of days: from the first to the place after the last. */
  readonly from: number;
  readonly to: number;
  /** What the bright days of the first and the last third reach. */
  readonly start: number;
  readonly end: number;
  readonly strength: Strength;
}

/** Lengths of slow falls that are looked for, in days with a value: in shorter ones weather looks the same. */
const LENGTHS = [30, 45, 60] as const;
/** The least fall between the first and the last third, in percent. */
const LEAST_PERCENT = 5;
/** The steepest fall that dirt is taken for, in tenths of a percent a day; published rates reach 0.4. */
const STEEPEST_TENTHS = 6;
/** Within a third, a quarter of the days reach this part of its best day, in percent. */
const BRIGHT_PERCENT = 95;
/** The square of how many standard errors the slope is below 0. */
const LEAST_STRENGTH = 36;
/** Days after the fall that show the rise, and the days of the calendar they may take. */
const RISE_DAYS = 7;
const RISE_SPAN = 14;

interface Thirds {
  readonly levels: readonly [number, number, number];
  readonly peaks: readonly [number, number, number];
  /** The best day of the last third. */
  readonly best: number;
  readonly isBright: boolean;
}

function thirdsOf(days: readonly LevelDay[], from: number, to: number): Thirds {
  const third = Math.floor((to - from) / 3);
  const cut = (at: number): readonly LevelDay[] =>
    days.slice(from + at * third, at === 2 ? to : from + (at + 1) * third);
  const parts = [cut(0), cut(1), cut(2)] as const;
  const [first, second, last] = parts;
  const level = (part: readonly LevelDay[]): number => brightLevel(part.map(({ index }) => index));
  const peak = (part: readonly LevelDay[]): number => brightLevel(part.map(({ perPeak }) => perPeak));
  return {
    levels: [level(first), level(second), level(last)],
    peaks: [peak(first), peak(second), peak(last)],
    best: Math.max(...last.map(({ index }) => index)),
    isBright: parts.every(
      (part) => 100 * level(part) >= BRIGHT_PERCENT * Math.max(...part.map(({ index }) => index)),
    ),
  };
}

/** Whether the bright days fall from third to third, and the plain units along with them. */
function isFalling({ levels, peaks, best, isBright }: Thirds, span: number): boolean {
  const [first, second, last] = levels;
  const fall = first - last;
  if (!isBright || !(first > second && second > last) || best >= first) return false;
  if (100 * fall < LEAST_PERCENT * first || 1000 * fall > STEEPEST_TENTHS * span * first) return false;
  return 2 * (peaks[0] - peaks[2]) * first >= fall * peaks[0];
}

/** Whether the bright days after rise again by half of the fall, and above every day of its last third. */
function rises(days: readonly LevelDay[], to: number, { levels, best }: Thirds): boolean {
  const after = days.slice(to, to + RISE_DAYS);
  const last = days[to - 1]?.day ?? 0;
  if (after.length < RISE_DAYS || (after.at(-1)?.day ?? 0) - last > RISE_SPAN) return false;
  const level = brightLevel(after.map(({ index }) => index));
  return level > best && 2 * level >= levels[0] + levels[2];
}

/** Of so many days in a row the best one stands for the clear sky. */
const BLOCK = 3;

/** The best days of every three from a place on; days left over at the end are left out. */
function bestOfThree(days: readonly LevelDay[], from: number, to: number): readonly number[] {
  return Array.from({ length: Math.floor((to - from) / BLOCK) }, (_, block) =>
    Math.max(...days.slice(from + block * BLOCK, from + (block + 1) * BLOCK).map(({ index }) => index)),
  );
}

/**
 * How strongly a straight line through some values falls: the square of its slope over the slope's variance,
 * raised as far as what the line leaves resembles the value before. Exact.
 */
function slopeStrength(values: readonly number[]): Strength {
  const { slope, spread } = lineThrough(values);
  const count = BigInt(values.length);
  const sum = values.reduce((total, value) => total + BigInt(value), 0n);
  let [squares, likeness, before] = [0n, 0n, 0n];
  values.forEach((value, place) => {
    const at = BigInt(2 * place) - (count - 1n);
    // What the line leaves, times the count and the spread.
    const left = count * spread * BigInt(value) - spread * sum - count * slope * at;
    squares += left * left;
    likeness += left * before;
    before = left;
  });
  const [less, more] = resemblance(likeness, squares);
  const scale = count * count * spread * spread;
  const numerator = slope * slope * (count - 2n) * scale * less;
  const denominator = spread * squares * more;
  return { numerator, denominator: denominator === 0n ? 1n : denominator };
}

/** Values on either side of a cut that would make it a step. */
const LEAST_SIDE = 2;

/** Whether no single step explains some values better than a straight line does. */
function isNoStep(values: readonly number[]): boolean {
  const { slope, spread } = lineThrough(values);
  const count = values.length;
  const sum = values.reduce((total, value) => total + value, 0);
  let part = 0;
  return values.every((value, place) => {
    part += value;
    const left = place + 1;
    if (left < LEAST_SIDE || count - left < LEAST_SIDE) return true;
    // Between the two sides: (count × part − left × sum)² ÷ (count × left × right).
    const apart = BigInt(count * part - left * sum);
    return apart * apart * spread <= slope * slope * BigInt(count * left * (count - left));
  });
}

function slideAt(days: readonly LevelDay[], from: number, to: number): Slide | null {
  const span = (days[to - 1]?.day ?? 0) - (days[from]?.day ?? 0) + 1;
  if (4 * span > 5 * (to - from)) return null;
  const thirds = thirdsOf(days, from, to);
  if (!isFalling(thirds, span) || !rises(days, to, thirds)) return null;
  const best = bestOfThree(days, from, to);
  if (lineThrough(best).slope >= 0n || !isNoStep(best)) return null;
  const strength = slopeStrength(best);
  const [start, , end] = thirds.levels;
  return isAtLeast(strength, LEAST_STRENGTH) ? { from, to, start, end, strength } : null;
}

/**
 * The slow falls among some days, each of 30 days or more with a value, without a step and ended by a rise: of those
 * that overlap, the strongest.
 *
 * @returns in order of days
 */
export function slidesOf(days: readonly LevelDay[]): readonly Slide[] {
  const found: Slide[] = [];
  for (const length of LENGTHS) {
    for (let from = 0; from + length <= days.length; from += 1) {
      const slide = slideAt(days, from, from + length);
      if (slide !== null) found.push(slide);
    }
  }
  const strongest = found.sort((one, other) =>
    isStronger(one.strength, other.strength) ? -1 : isStronger(other.strength, one.strength) ? 1 : 0,
  );
  const kept: Slide[] = [];
  for (const slide of strongest) {
    if (kept.every((one) => slide.to <= one.from || one.to <= slide.from)) kept.push(slide);
  }
  return kept.sort((one, other) => one.from - other.from);
}
