import { INTERVAL_MINUTES } from '../layout-document.ts';
import { commonest } from './split-head.ts';

/** A number of a series: `whole` of 10^-`places`. */
export interface SeriesValue {
  readonly whole: number;
  readonly places: number;
}

/** How often a series rises, falls and stays from one row to the next. */
export interface Movement {
  readonly rises: number;
  readonly falls: number;
  readonly stays: number;
}

const scaled = ({ whole, places }: SeriesValue, to: number): bigint =>
  BigInt(whole) * 10n ** BigInt(to - places);

function compare(one: SeriesValue, other: SeriesValue): number {
  const places = Math.max(one.places, other.places);
  const [first, second] = [scaled(one, places), scaled(other, places)];
  return first < second ? -1 : first > second ? 1 : 0;
}

/**
 * How several series move, in order of time.
 *
 * @example
 * movementOf([[{ whole: 10, places: 0 }, { whole: 105, places: 1 }]]) //=> {"rises":1,"falls":0,"stays":0}
 */
export function movementOf(series: readonly (readonly SeriesValue[])[]): Movement {
  const moves = series.flatMap((values) =>
    values.slice(1).map((value, at) => compare(value, values[at] as SeriesValue)),
  );
  const count = (sign: number): number => moves.filter((move) => move === sign).length;
  return { rises: count(1), falls: count(-1), stays: count(0) };
}

/** What a column holds: a register never falls, intervals jump about; null where nothing moves. */
export interface SeriesKind {
  readonly holds: 'registers' | 'intervals' | null;
  readonly certain: boolean;
}

/** So many moves and none down: no interval values do that but by chance in the thousands. */
const MANY = 10;

/**
 * What a column holds, by how it moves.
 *
 * @example
 * kindOf({ rises: 12, falls: 0, stays: 3 }) //=> {"holds":"registers","certain":true}
 * kindOf({ rises: 2, falls: 0, stays: 0 }) //=> {"holds":"registers","certain":false}
 */
export function kindOf({ rises, falls }: Movement): SeriesKind {
  if (rises + falls === 0) return { holds: null, certain: false };
  if (falls === 0) return { holds: 'registers', certain: rises >= MANY };
  // A register falls where the meter is changed or passes all nines, which is seldom.
  const isSeldom = rises >= MANY && falls * 20 <= rises;
  return { holds: isSeldom ? 'registers' : 'intervals', certain: !isSeldom && falls > 1 };
}

/** How long intervals are, as far as the times of the rows show it. */
export interface MinutesGuess {
  readonly minutes: (typeof INTERVAL_MINUTES)[number];
  readonly evidence: string;
  readonly certain: boolean;
}

/**
 * How long intervals are: the commonest step from one row to the next.
 *
 * @param steps  in minutes, without those of rows at the same time
 * @example
 * minutesOf([30, 30, 60, 30]).minutes //=> "30"
 */
export function minutesOf(steps: readonly number[]): MinutesGuess {
  const step = commonest(steps, 'least');
  const found = INTERVAL_MINUTES.find((minutes) => minutes === String(step));
  if (step === null)
    return { minutes: '15', evidence: 'there are no two rows to tell it by', certain: false };
  if (found === undefined)
    return {
      minutes: '60',
      evidence: `the commonest step is ${step} minutes, which is not read`,
      certain: false,
    };
  const share = steps.filter((one) => one === step).length;
  return {
    minutes: found,
    evidence: `${share} of ${steps.length} steps are so long`,
    certain: share > 2 && share * 2 > steps.length,
  };
}
