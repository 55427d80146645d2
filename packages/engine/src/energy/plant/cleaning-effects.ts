import { addDays, type DayNumber, type Quotient } from '../../quantity/index.ts';
import { lowestTerms } from './exact-figures.ts';
import type { GenerationDay } from './last-years.ts';
import { capacityOn, isOutage, type DiaryEntry, type Plant } from './plant.ts';

/** Days before and after a cleaning that are compared; the day itself is in neither. */
const SIDE = 7;
/** So many days of each side have to be known. */
const LEAST_KNOWN = 4;

/** What the plant made on the days before or after a cleaning. */
export interface CleaningSide {
  /** Half-open: days of the calendar. */
  readonly from: DayNumber;
  readonly to: DayNumber;
  /** How many of them are known, and on none of which the plant stood still. */
  readonly days: number;
  /** Whole watt-hours of those days. */
  readonly wattHours: number;
  /** The mean in units per kWp and day, exact; null without a day that is known. */
  readonly mean: Quotient | null;
}

/** What a cleaning did to the yield. */
export interface CleaningEffect {
  readonly date: DayNumber;
  readonly before: CleaningSide;
  readonly after: CleaningSide;
  /** The mean after over the mean before, exact; null where either side has fewer than 4 days that are known. */
  readonly ratio: Quotient | null;
  /**
   * Whether that is beyond what the weather of so few days does: the means differ by more than three times
   * the standard error of the difference. Our own rule, decided on the squares.
   */
  readonly says: 'more' | 'less' | 'within-the-weather' | 'cannot-be-told';
}

type Dated = Pick<Plant, 'capacities' | 'diary'>;

interface Sample {
  readonly side: CleaningSide;
  /** Ten-thousandths of a kWh per kWp of each day, cut. */
  readonly perPeak: readonly number[];
}

function sampleOf(from: DayNumber, known: ReadonlyMap<DayNumber, number>, plant: Dated): Sample {
  const perPeak: number[] = [];
  let [wattHours, wattDays] = [0, 0];
  const to = addDays(from, SIDE);
  for (let day = from; day < to; day = addDays(day, 1)) {
    const made = known.get(day);
    const watts = capacityOn(plant, day);
    if (made === undefined || watts === 0 || isOutage(plant, day)) continue;
    perPeak.push(Math.floor((made * 10_000) / watts));
    wattHours += made;
    wattDays += watts;
  }
  const mean = wattDays === 0 ? null : { numerator: wattHours, denominator: wattDays };
  return { side: { from, to, days: perPeak.length, wattHours, mean }, perPeak };
}

/** The sum of some whole numbers, and of their squares about the mean, times how many there are. */
function momentsOf(values: readonly number[]): readonly [bigint, bigint] {
  const sum = values.reduce((total, value) => total + value, 0);
  const squares = values.reduce((total, value) => total + BigInt(value) * BigInt(value), 0n);
  return [BigInt(sum), squares * BigInt(values.length) - BigInt(sum) * BigInt(sum)];
}

/** The square of three standard errors. */
const NINE = 9n;

/** Whether two samples differ beyond three standard errors: (m − n)² against 9 (s² ÷ k + t² ÷ l). */
function isBeyondWeather(before: readonly number[], after: readonly number[]): boolean {
  const [k, l] = [BigInt(before.length), BigInt(after.length)];
  const [one, oneSquares] = momentsOf(before);
  const [other, otherSquares] = momentsOf(after);
  const apart = other * k - one * l;
  // Variances of the means: squares ÷ (k² (k − 1)), brought to the denominator (k l)².
  const [ofOne, ofOther] = [oneSquares * l * l * (l - 1n), otherSquares * k * k * (k - 1n)];
  return apart * apart * (k - 1n) * (l - 1n) > NINE * (ofOne + ofOther);
}

const crossed = (one: Quotient, other: Quotient): bigint => BigInt(one.numerator) * BigInt(other.denominator);

const isMore = (one: Quotient, other: Quotient): boolean => crossed(one, other) > crossed(other, one);

const ratioOf = (one: Quotient, other: Quotient): Quotient | null =>
  lowestTerms(crossed(one, other), crossed(other, one));

function verdict(
  before: readonly number[],
  after: readonly number[],
  isMoreAfter: boolean,
): CleaningEffect['says'] {
  if (!isBeyondWeather(before, after)) return 'within-the-weather';
  return isMoreAfter ? 'more' : 'less';
}

function effectOf(
  { date, through }: DiaryEntry,
  known: ReadonlyMap<DayNumber, number>,
  plant: Dated,
): CleaningEffect {
  const before = sampleOf(addDays(date, -SIDE), known, plant);
  const after = sampleOf(addDays(through, 1), known, plant);
  const sides = { date, before: before.side, after: after.side };
  const [one, other] = [before.side.mean, after.side.mean];
  const isKnown = before.side.days >= LEAST_KNOWN && after.side.days >= LEAST_KNOWN;
  if (one === null || other === null || !isKnown || one.numerator === 0) {
    return { ...sides, ratio: null, says: 'cannot-be-told' };
  }
  return {
    ...sides,
    ratio: ratioOf(other, one),
    says: verdict(before.perPeak, after.perPeak, isMore(other, one)),
  };
}

/**
 * What the plant made in the seven days before and the seven days after each cleaning of the diary, side by
 * side, for a chart to draw the cleanings in.
 *
 * Days that are not known or named an outage are left out. Other weather makes a difference too, and mostly
 * a larger one than a cleaning: what `says` is "more" only where days differ beyond that.
 *
 * @param days   in any order, in whole watt-hours
 * @param plant  with its diary
 * @returns      one to each cleaning, in order of days
 * @example
 * cleaningEffects([], { capacities: [{ from: null, watts: 3000 }], diary: [{ date: 9, through: 9, did: 'cleaning', note: '' }] })[0].says //=> "cannot-be-told"
 */
export function cleaningEffects(days: readonly GenerationDay[], plant: Dated): readonly CleaningEffect[] {
  const known = new Map<DayNumber, number>();
  for (const { day, wattHours } of days) if (wattHours !== null) known.set(day, wattHours);
  return plant.diary.filter(({ did }) => did === 'cleaning').map((entry) => effectOf(entry, known, plant));
}
