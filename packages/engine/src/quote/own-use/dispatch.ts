import type { Battery } from './battery.ts';
import type { Intervals } from './overlap.ts';

/** What a battery did over some intervals, in Wh: sums in doubles, not rounded. */
export interface Dispatched {
  /** What it holds after the last interval; before the first, what it begins with. */
  content: number;
  /** Used as it was made. */
  direct: number;
  /** What went in at its terminals, and what came out of them. */
  charged: number;
  discharged: number;
  /** What was taken from the grid and given to it, by time block; at least one. */
  readonly taken: Float64Array;
  readonly given: Float64Array;
}

/** Intervals as they are dispatched: Wh times a factor each. */
export interface DispatchTerms {
  readonly perUse: number;
  readonly perMade: number;
  /** The most that goes in or out in an interval, in Wh. */
  readonly most: number;
  /** The time block of each interval; null: all the same. */
  readonly block: Uint16Array | null;
  /** Receives what is taken and given in each interval; left out: only the sums are wanted. */
  readonly each?: { readonly taken: Float64Array; readonly given: Float64Array } | undefined;
}

/**
 * Room for what a battery does, with nothing in it.
 *
 * @param blocks  of the tariff, at least one
 * @example
 * emptyBattery(1).content //=> 0
 */
export function emptyBattery(blocks: number): Dispatched {
  return {
    content: 0,
    direct: 0,
    charged: 0,
    discharged: 0,
    taken: new Float64Array(blocks),
    given: new Float64Array(blocks),
  };
}

/** Begin new sums; what the battery holds stays. */
function beginSums(into: Dispatched): void {
  [into.direct, into.charged, into.discharged] = [0, 0, 0];
  into.taken.fill(0);
  into.given.fill(0);
}

/** Charge from surplus as far as power and room allow; what is left of it is given. */
function charge({ capacity, way }: Battery, surplus: number, most: number, into: Dispatched): number {
  const { content } = into;
  const input = Math.min(surplus, most, (capacity - content) / way);
  into.content = Math.min(capacity, content + input * way);
  into.charged += input;
  return surplus - input;
}

/** Discharge as far as power and content allow; what is left of the use is taken. */
function discharge({ way }: Battery, lack: number, most: number, into: Dispatched): number {
  const { content } = into;
  const output = Math.min(lack, most, content * way);
  into.content = Math.max(0, content - output / way);
  into.discharged += output;
  return lack - output;
}

/**
 * Run a battery for own use through some intervals: it is charged from surplus as far as its power and its room
 * allow, and discharged into the house as far as use, its power and its content allow. It never takes from the
 * grid nor gives to it.
 *
 * @param into  sums are made anew; its content goes on
 * @source      Photovoltaic self-consumption in buildings: A review, Luthander, Widén, Nilsson and Palm, Applied
 *              Energy 142, 2015: storage for self-consumption alone (from memory)
 * @example
 * const result = emptyBattery(1);
 * dispatch({ use: [0, 4000], generation: [5000, 0] }, { capacity: 3000, power: 0, way: 1 }, { perUse: 1, perMade: 1, most: 2000, block: null }, result);
 * [result.charged, result.discharged, result.given[0], result.taken[0]] //=> [2000,2000,3000,2000]
 */
export function dispatch(
  { use, generation }: Intervals,
  battery: Battery,
  { perUse, perMade, most, block, each }: DispatchTerms,
  into: Dispatched,
): void {
  beginSums(into);
  const { taken, given } = into;
  let direct = 0;
  for (let at = 0; at < use.length; at += 1) {
    const used = (use[at] as number) * perUse;
    const made = (generation[at] as number) * perMade;
    const own = block === null ? 0 : (block[at] as number);
    const isSurplus = made > used;
    direct += isSurplus ? used : made;
    const left = isSurplus
      ? charge(battery, made - used, most, into)
      : discharge(battery, used - made, most, into);
    if (isSurplus) given[own] = (given[own] as number) + left;
    else taken[own] = (taken[own] as number) + left;
    if (each === undefined) continue;
    each.given[at] = isSurplus ? left : 0;
    each.taken[at] = isSurplus ? 0 : left;
  }
  into.direct = direct;
}
