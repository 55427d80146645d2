/** Shares of remainders that are closer than this are the same: the earlier goes first. */
const SAME = 1e-9;

/** Where shares are written, and what they are made of. */
export interface Shares {
  /** Receives whole units by place. */
  readonly into: Float64Array;
  readonly from: number;
  /** 0 or more each. */
  readonly weights: Float64Array;
  /** The most of each place; null: no limit. */
  readonly most: Float64Array | null;
}

/** The place that is given the next step: the largest part left over, where there is room. */
function nextPlace({ into, from, weights, most }: Shares, perWeight: number, step: number): number {
  let best = -1;
  let largest = -Infinity;
  for (let at = 0; at < weights.length; at += 1) {
    const own = into[from + at] as number;
    if (most !== null && own >= (most[at] as number)) continue;
    const left = (weights[at] as number) * perWeight - own / step;
    if (left <= largest + SAME) continue;
    best = at;
    largest = left;
  }
  return best;
}

/**
 * Share units out by weights in doubles, in whole steps that sum to the whole: every share is cut down, and what is
 * left over goes to the largest remainders, the earlier first among equals.
 *
 * @param total  whole steps; where there are limits, no more than they are together
 * @param step   thousandths
 * @example
 * const into = new Float64Array(3);
 * shareSteps(10_000, 1000, { into, from: 0, weights: Float64Array.of(1, 1, 1), most: null });
 * [...into] //=> [4000,3000,3000]
 */
export function shareSteps(total: number, step: number, shares: Shares): void {
  const { into, from, weights, most } = shares;
  const count = total / step;
  let sum = 0;
  for (let at = 0; at < weights.length; at += 1) sum += weights[at] as number;
  const perWeight = sum > 0 ? count / sum : 0;
  let left = count;
  for (let at = 0; at < weights.length; at += 1) {
    const whole = Math.floor((weights[at] as number) * perWeight + SAME);
    const room = most === null ? whole : Math.min(whole, (most[at] as number) / step);
    into[from + at] = room * step;
    left -= room;
  }
  for (; left > 0; left -= 1) {
    const place = nextPlace(shares, perWeight, step);
    if (place < 0) return;
    into[from + place] = (into[from + place] as number) + step;
  }
}
