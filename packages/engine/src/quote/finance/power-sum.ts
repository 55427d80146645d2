/**
 * A sum of amounts divided by powers of one growth: Σ amount ÷ growth^time. Times ascend, no two are the
 * same, and no amount is 0.
 */
export interface PowerSum {
  readonly times: readonly number[];
  readonly amounts: readonly number[];
}

/** One amount of such a sum. */
export interface Term {
  readonly time: number;
  readonly amount: number;
}

/** Amounts of any size made ones near 1 by a power of 2, which loses nothing but what is 10^300 smaller. */
function scaled(terms: readonly Term[]): PowerSum {
  const largest = terms.reduce((most, { amount }) => Math.max(most, Math.abs(amount)), 0);
  const scale = 2 ** Math.floor(Math.log2(largest));
  // With nothing but zeros the scale is 0 too.
  const kept = terms.filter(({ amount }) => amount !== 0 && amount / scale !== 0);
  return { times: kept.map(({ time }) => time), amounts: kept.map(({ amount }) => amount / scale) };
}

/**
 * Put terms in order, add up those of the same time, and leave out what comes to 0. The whole is divided by
 * a power of 2.
 *
 * @example
 * powerSum([{ time: 1, amount: 4 }, { time: 0, amount: -3 }, { time: 1, amount: 1 }]) //=> {"times":[0,1],"amounts":[-0.75,1.25]}
 */
export function powerSum(terms: readonly Term[]): PowerSum {
  const summed: { time: number; amount: number }[] = [];
  for (const { time, amount } of [...terms].sort((a, b) => a.time - b.time)) {
    const last = summed.at(-1);
    if (last?.time === time) last.amount += amount;
    else summed.push({ time, amount });
  }
  return scaled(summed);
}

/** Where the sign changes: the place of the amount before each change. */
function changes({ amounts }: PowerSum): readonly number[] {
  const places: number[] = [];
  for (let at = 1; at < amounts.length; at += 1) {
    if ((amounts[at - 1] ?? 0) < 0 !== (amounts[at] ?? 0) < 0) places.push(at - 1);
  }
  return places;
}

/**
 * How often the sign changes from one amount to the next: by the rule of Descartes no fewer than the growths
 * at which the sum is 0.
 *
 * @example
 * signChanges({ times: [0, 1, 2], amounts: [-1, 3, -1] }) //=> 2
 */
export function signChanges(sum: PowerSum): number {
  return changes(sum).length;
}

/**
 * A sum that is 0 wherever the given one, seen as a curve over the growth, turns: with a time between those
 * of a change of sign, the sum times growth^time has a derivative with the signs after the change turned
 * round, so with one change fewer. Between two of its zeros the sum itself has one zero at most (Rolle).
 *
 * @param sum  with a change of sign
 * @example
 * turningSum({ times: [0, 1], amounts: [-1, 2] }) //=> {"times":[0,1],"amounts":[-0.5,-1]}
 */
export function turningSum(sum: PowerSum): PowerSum {
  const places = changes(sum);
  // A change in the middle keeps the factors alike in size.
  const place = places[places.length >> 1] ?? 0;
  const between = ((sum.times[place] ?? 0) + (sum.times[place + 1] ?? 0)) / 2;
  return scaled(sum.times.map((time, at) => ({ time, amount: (sum.amounts[at] ?? 0) * (between - time) })));
}

/** A growth to the power of the time between two terms; years follow each other by 1. */
const power = (growth: number, gap: number): number => (gap === 1 ? growth : growth ** gap);

/** From the last term to the first, each step divided by the growth of the time between. */
function dividedDown({ times, amounts }: PowerSum, growth: number): number {
  let value = 0;
  let later = times.at(-1) ?? 0;
  for (let at = times.length - 1; at >= 0; at -= 1) {
    const time = times[at] ?? 0;
    value = value / power(growth, later - time) + (amounts[at] ?? 0);
    later = time;
  }
  return value;
}

/** From the first term to the last, each step multiplied by the growth of the time between. */
function multipliedUp({ times, amounts }: PowerSum, growth: number): number {
  let value = 0;
  let earlier = times[0] ?? 0;
  for (let at = 0; at < times.length; at += 1) {
    const time = times[at] ?? 0;
    value = value * power(growth, time - earlier) + (amounts[at] ?? 0);
    earlier = time;
  }
  return value;
}

/**
 * The value of the sum times a power of the growth: of its first time where the growth is 1 or more, of its
 * last below. So it has the sign of the sum and never becomes infinite.
 *
 * @param growth  above 0
 * @example
 * signedValue({ times: [0, 1, 2], amounts: [-1.5, 0, 1] }, 2) //=> -1.25
 */
export function signedValue(sum: PowerSum, growth: number): number {
  return growth >= 1 ? dividedDown(sum, growth) : multipliedUp(sum, growth);
}

/**
 * Whether the value of the sum cannot be told from 0 in doubles: it is not above what rounding can make of
 * its parts.
 *
 * @param growth  above 0
 * @example
 * isNothing({ times: [0, 1, 2], amounts: [4, -12, 9] }, 1.5) //=> true
 */
export function isNothing({ times, amounts }: PowerSum, growth: number): boolean {
  const size = signedValue({ times, amounts: amounts.map(Math.abs) }, growth);
  const value = signedValue({ times, amounts }, growth);
  // Two roundings a term, each of half of the last digit, and one more for a power.
  return Math.abs(value) <= 2 * times.length * Number.EPSILON * size;
}
