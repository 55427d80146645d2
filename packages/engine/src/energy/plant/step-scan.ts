import {
  differenceStrength,
  isAtLeast,
  isStronger,
  lineThrough,
  stretchOf,
  type Strength,
  type Stretch,
} from './stretch.ts';
import { brightLevel, type LevelDay, type Levels } from './season.ts';

/** A lasting change of level between two stretches of days. */
export interface Step {
  readonly before: Stretch;
  readonly after: Stretch;
  readonly isFall: boolean;
  readonly strength: Strength;
}

/** Lengths of the stretches that are compared, in days with a value. */
const LENGTHS = [30, 45, 60, 90, 120] as const;
/** From so many days on, a stretch tells by its mean; a shorter one only by its bright days. */
const LONG = 45;

/** What a change has to show. Our own rules, chosen so that weather hardly ever shows it all. */
interface StepRule {
  /** The bright days reach this part of the best day, in hundredths: few spells of weather do. */
  readonly brightPercent: number;
  /** Days on the lower side that may still reach the bright level of the upper, in hundredths. */
  readonly reachPercent: number;
  /** The same of the level half-way between. */
  readonly midPercent: number;
  /** How much of the change either half of a stretch has to show, in tenths. */
  readonly halfTenths: number;
  /** How much of the change the halves next to it show, in tenths. */
  readonly sharpTenths: number;
  /**
   * How much of a change the plain units per kWp show as well, in hundredths: what only the season says may be
   * an echo of the year before, or the end of a dull season; 0: a fall by a table need not be plain.
   */
  readonly plainPercent: Readonly<Record<Levels['by'], number>>;
  /** The square of how many standard errors the means differ by. */
  readonly strength: Readonly<Record<Levels['by'], number>>;
}

const LONG_RULE: StepRule = {
  brightPercent: 80,
  reachPercent: 4,
  midPercent: 10,
  halfTenths: 5,
  sharpTenths: 0,
  plainPercent: { table: 0, 'last-year': 50 },
  strength: { table: 20, 'last-year': 30 },
};

const BRIGHT_RULE: StepRule = {
  brightPercent: 95,
  reachPercent: 0,
  midPercent: 4,
  halfTenths: 6,
  sharpTenths: 9,
  plainPercent: { table: 90, 'last-year': 90 },
  strength: { table: 6, 'last-year': 6 },
};

/** The least change that is looked for, in percent of the upper level. */
const LEAST_PERCENT = 8;

/** The two sides of a change by their level. */
interface Sides {
  readonly upper: Stretch;
  readonly lower: Stretch;
  readonly isFall: boolean;
}

/** Whether the bright days changed enough, and the mean along with them. */
function isLarge({ upper, lower }: Sides): boolean {
  const change = upper.bright - lower.bright;
  if (change * 100 < LEAST_PERCENT * upper.bright) return false;
  return 2 * (upper.sum - lower.sum) * upper.bright >= change * upper.sum;
}

/** The least that the plain units show of a rise, in hundredths. */
const PLAIN_RISE = 50;

/** Whether the plain units of the bright days changed along with what they are of the season. */
function isPlain({ upper, lower, isFall }: Sides, { plainPercent }: StepRule, by: Levels['by']): boolean {
  const least = isFall ? plainPercent[by] : PLAIN_RISE;
  const change = upper.bright - lower.bright;
  const plain = upper.brightPeak - lower.brightPeak;
  return least === 0 || 100 * plain * upper.bright >= least * change * upper.brightPeak;
}

function hasBrightDays({ upper, lower }: Sides, { brightPercent }: StepRule): boolean {
  return [upper, lower].every(({ bright, most }) => 100 * bright >= brightPercent * most);
}

/** Whether every half of a stretch keeps its level, and the two next to the change show all of it. */
function isLasting({ upper, lower, isFall }: Sides, { halfTenths, sharpTenths }: StepRule): boolean {
  const change = upper.bright - lower.bright;
  const most = 10 * upper.bright - halfTenths * change;
  const least = 10 * upper.bright - (10 - halfTenths) * change;
  const low = [lower.brightFirst, lower.brightSecond];
  const high = [upper.brightFirst, upper.brightSecond];
  const next = isFall ? upper.brightSecond - lower.brightFirst : upper.brightFirst - lower.brightSecond;
  return (
    low.every((level) => 10 * level <= most) &&
    high.every((level) => 10 * level >= least) &&
    10 * next >= sharpTenths * change
  );
}

/** Days of a block, and how many of them before a change have to lie on one level. */
const BLOCK = 45;
const BLOCKS = 3;

/**
 * Whether the days before lay on one level for months, within half of the change: where a table does not fit
 * the plant, they drift. Blocks without bright days tell nothing.
 */
function wasLevel(days: readonly LevelDay[], before: Stretch, change: number): boolean {
  for (let block = 1; block <= BLOCKS; block += 1) {
    const from = before.to - block * BLOCK;
    if (from < 0) return true;
    const { bright, most } = stretchOf(days, from, from + BLOCK);
    if (100 * bright < LONG_RULE.brightPercent * most) continue;
    if (2 * Math.abs(bright - before.bright) > change) return false;
  }
  return true;
}

/** Whether hardly a day of the lower side reaches the upper level, or half-way to it. */
function isApart(days: readonly LevelDay[], { upper, lower }: Sides, rule: StepRule): boolean {
  const own = days.slice(lower.from, lower.to);
  const reach = own.filter(({ index }) => index >= upper.bright).length;
  const middle = own.filter(({ index }) => 2 * index >= upper.bright + lower.bright).length;
  return reach * 100 <= rule.reachPercent * own.length && middle * 100 <= rule.midPercent * own.length;
}

/** The part of a change that is left where the days are allowed a drift of their own, at least, in tenths. */
const SUDDEN_TENTHS = 5;

/**
 * Whether most of a change is sudden: what a step makes of it beside one straight drift through all the days,
 * fitted together. Where a table does not fit the plant, days drift.
 */
function isSudden(days: readonly LevelDay[], before: Stretch, after: Stretch): boolean {
  const { slope, spread } = lineThrough(days.slice(before.from, after.to).map(({ index }) => index));
  const count = BigInt(before.to - before.from);
  const both = 2n * count * count;
  // Of a step of ±1: its product with the drift is `both`, with itself the number of days.
  const step = BigInt(after.sum - before.sum) * spread - slope * both;
  const scale = 2n * count * spread - both * both;
  const change = BigInt(after.bright - before.bright);
  const isSame = step < 0n === change < 0n;
  const [size, least] = [step < 0n ? -step : step, change < 0n ? -change : change];
  return isSame && 20n * size >= BigInt(SUDDEN_TENTHS) * least * scale;
}

/** The bright level against the year before; null where a day of five is not known there. */
function levelOfLastYear(days: readonly LevelDay[], { from, to }: Stretch): number | null {
  const known = days.slice(from, to).flatMap(({ ofLastYear }) => (ofLastYear === null ? [] : [ofLastYear]));
  return 5 * known.length < 4 * (to - from) ? null : brightLevel(known);
}

/** Whether the year before, where it is known, shows half of the change at least. */
function isNewThisYear(days: readonly LevelDay[], { upper, lower }: Sides): boolean {
  const [high, low] = [levelOfLastYear(days, upper), levelOfLastYear(days, lower)];
  if (high === null || low === null) return true;
  return 2 * (high - low) * upper.bright >= (upper.bright - lower.bright) * high;
}

function meets({ days, by }: Levels, sides: Sides, rule: StepRule): boolean {
  return (
    hasBrightDays(sides, rule) &&
    isPlain(sides, rule, by) &&
    isLasting(sides, rule) &&
    isApart(days, sides, rule)
  );
}

/** The change between two stretches of equal length, if it is one by either rule. */
function stepBetween(levels: Levels, before: Stretch, after: Stretch): Step | null {
  const { days, by } = levels;
  const isFall = before.bright > after.bright;
  const sides = isFall ? { upper: before, lower: after, isFall } : { upper: after, lower: before, isFall };
  if (!isLarge(sides) || !isNewThisYear(days, sides)) return null;
  const isLong = before.to - before.from >= LONG;
  const rules = [
    ...(isLong &&
    meets(levels, sides, LONG_RULE) &&
    isSudden(days, before, after) &&
    wasLevel(days, before, Math.abs(before.bright - after.bright))
      ? [LONG_RULE]
      : []),
    // A rise by bright days alone is what the end of a dull season looks like.
    ...(isFall && meets(levels, sides, BRIGHT_RULE) ? [BRIGHT_RULE] : []),
  ];
  if (rules.length === 0) return null;
  const strength = differenceStrength(days, before, after);
  return rules.some((rule) => isAtLeast(strength, rule.strength[by]))
    ? { before, after, isFall, strength }
    : null;
}

/** Days of the calendar that a stretch may take beyond its days with a value: a quarter more. */
const isDense = (days: readonly LevelDay[], { from, to }: Stretch): boolean =>
  4 * ((days[to - 1]?.day ?? 0) - (days[from]?.day ?? 0) + 1) <= 5 * (to - from);

/** Every change of level that the stretches of one length show. */
function stepsOfLength(levels: Levels, length: number): readonly Step[] {
  const { days } = levels;
  const starts = Array.from({ length: Math.max(0, days.length - length + 1) }, (_, from) => from);
  const stretches = starts.map((from) => stretchOf(days, from, from + length));
  return stretches.flatMap((before) => {
    const after = stretches[before.to];
    if (after === undefined || !isDense(days, before) || !isDense(days, after)) return [];
    const step = stepBetween(levels, before, after);
    return step === null ? [] : [step];
  });
}

/** Whether the stretches of one step lie across the place of another. */
const lieAcross = (one: Step, other: Step): boolean =>
  one.before.from < other.before.to && other.before.to < one.after.to;

/**
 * The lasting changes of level among some days: of those that show the same change, the strongest; none lies
 * across another.
 *
 * @returns in order of days
 */
export function stepsOf(levels: Levels): readonly Step[] {
  const found = LENGTHS.flatMap((length) => stepsOfLength(levels, length));
  const strongest = [...found].sort((one, other) =>
    isStronger(one.strength, other.strength) ? -1 : isStronger(other.strength, one.strength) ? 1 : 0,
  );
  const kept: Step[] = [];
  for (const step of strongest) {
    const isNew = kept.every(
      (one) => !lieAcross(step, one) && !lieAcross(one, step) && step.before.to !== one.before.to,
    );
    if (isNew) kept.push(step);
  }
  return kept.sort((one, other) => one.before.to - other.before.to);
}
