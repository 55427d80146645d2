import { isNothing, signChanges, signedValue, turningSum, type PowerSum } from './power-sum.ts';

/** The least and the largest growth that are looked at: what is beyond comes as one of them. */
const LEAST = 2 ** -53;
const MOST = Number.MAX_VALUE;

/** A stretch at whose ends the sum has different signs, and the sign at its low end. */
interface Bracket {
  readonly low: number;
  readonly high: number;
  readonly sign: number;
}

/** Halve a wide stretch by its logarithm until its ends are alike in size; growths of usual rates first. */
function narrowed(sum: PowerSum, { low, high, sign }: Bracket): Bracket {
  let [from, to] = [low, high];
  const halve = (middle: number): void => {
    if (Math.sign(signedValue(sum, middle)) === sign) from = middle;
    else to = middle;
  };
  for (const usual of [1, 1.5, 0.75]) if (usual > from && usual < to) halve(usual);
  while (to / from > 2) halve(Math.sqrt(from) * Math.sqrt(to));
  return { low: from, high: to, sign };
}

type Curve = (at: number) => number;

/** Of a place and the doubles beside it the one where the curve is nearest to 0. */
function nearest(curve: Curve, at: number): number {
  const beside = [at, at * (1 - Number.EPSILON), at * (1 + Number.EPSILON)];
  const sizes = beside.map((one) => Math.abs(curve(one)));
  return beside[sizes.indexOf(Math.min(...sizes))] ?? at;
}

/**
 * Where a curve passes 0 between two ends, to the last digit or so, by Ridders' method: C. Ridders, A new
 * algorithm for computing a single root of a real continuous function, IEEE, 1979 (from memory). Every
 * step halves the stretch at least.
 */
function passing(curve: Curve, { low, high, sign }: Bracket): number {
  let [from, to, atFrom, atTo, last] = [low, high, curve(low), curve(high), NaN];
  // An end where rounding has turned the sign round, or left nothing, is the zero itself.
  if (Math.sign(atFrom) !== sign) return low;
  if (Math.sign(atTo) !== -sign) return high;
  const place = (at: number, value: number): void => {
    if (Math.sign(value) === sign) [from, atFrom] = [at, value];
    else [to, atTo] = [at, value];
  };
  for (;;) {
    const middle = from + (to - from) / 2;
    if (middle <= from || middle >= to) return Math.abs(atFrom) <= Math.abs(atTo) ? from : to;
    const value = curve(middle);
    if (value === 0) return middle;
    const [start, end] = [from, to];
    // Of quotients: squares of tiny values would be nothing.
    const root = Math.sqrt(1 - (atFrom / value) * (atTo / value));
    const next = middle + ((middle - from) * sign * Math.sign(value)) / root;
    place(middle, value);
    if (!(next >= start && next <= end)) continue;
    if (Math.abs(next - last) <= 2 * Number.EPSILON * next) return nearest(curve, next);
    last = next;
    place(next, curve(next));
  }
}

/**
 * Every growth above 0 at which a sum of powers is 0, in ascending order; one that the curve only touches
 * counts once. Those of its turning sum part them, and so on down to a sum without a change of sign, which
 * has none (Descartes and Rolle, for powers that need not be whole).
 *
 * @returns from 2^-53 to the largest double: one beyond is set to the end. Two so close that rounding hides
 *          the sum between them are one
 * @example
 * zerosOf({ times: [0, 1, 2], amounts: [-1.6, 10, -10] }) //=> [1.25,5]
 */
export function zerosOf(sum: PowerSum): readonly number[] {
  const count = signChanges(sum);
  if (count === 0) return [];
  const turns = count === 1 ? [] : zerosOf(turningSum(sum)).filter((at) => at > LEAST && at < MOST);
  const ends = [
    { at: LEAST, sign: Math.sign(sum.amounts.at(-1) ?? 0) },
    ...turns.map((at) => ({ at, sign: isNothing(sum, at) ? 0 : Math.sign(signedValue(sum, at)) })),
    { at: MOST, sign: Math.sign(sum.amounts[0] ?? 0) },
  ];
  return ends.slice(1).flatMap(({ at, sign }, index) => {
    const { at: low = 0, sign: before = 0 } = ends[index] ?? {};
    if (sign === 0) return [at];
    if (before * sign >= 0) return [];
    const bracket = narrowed(sum, { low, high: at, sign: before });
    return [passing((growth) => signedValue(sum, growth), bracket)];
  });
}
