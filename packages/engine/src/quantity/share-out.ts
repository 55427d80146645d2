/**
 * Split a whole amount by weights without losing a unit: every share is cut down to whole steps and the
 * steps left over go to the largest remainders, the earlier share first among equals.
 *
 * @param amount   whole (coins, watt-hours), any sign
 * @param weights  whole, 0 or more, at least one above 0
 * @param step     what shares are multiples of, whole and above 0; a part of the amount that is finer than
 *                 a step counts for the remainders and is not given out
 * @returns        multiples of the step that sum to the amount cut down to whole steps
 * @throws         RangeError when no weight is above 0
 * @example
 * shareOut(100001, [31, 28, 31]) //=> [34445,31111,34445]
 * shareOut(2700, [1, 1], 1000) //=> [1000,1000]
 */
export function shareOut(amount: number, weights: readonly number[], step = 1): readonly number[] {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  if (!(total > 0) || weights.some((weight) => weight < 0)) {
    throw new RangeError(`weights must be 0 or more with one above 0, found ${weights.join(', ')}`);
  }
  const magnitude = BigInt(Math.abs(amount));
  const divisor = BigInt(total) * BigInt(step);
  const exact = weights.map((weight) => magnitude * BigInt(weight));
  const shares = exact.map((product) => product / divisor);
  let left = magnitude / BigInt(step) - shares.reduce((sum, share) => sum + share, 0n);
  const byRemainder = exact
    .map((product, index) => ({ index, remainder: product % divisor }))
    .sort((a, b) => (a.remainder === b.remainder ? a.index - b.index : a.remainder > b.remainder ? -1 : 1));
  for (const { index } of byRemainder) {
    if (left === 0n) break;
    shares[index] = (shares[index] ?? 0n) + 1n;
    left -= 1n;
  }
  const sign = amount < 0 ? -BigInt(step) : BigInt(step);
  return shares.map((share) => toWhole(share * sign));
}

/** A large whole number back as an ordinary one; shares of a safe amount are safe. */
function toWhole(value: bigint): number {
  return Number.parseInt(value.toString(), 10);
}
