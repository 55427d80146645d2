/**
 * The value below which a part of sorted values lies, on the straight line between two of them: at place
 * part × (count − 1), counted from 0. So part 0 is the least, 1 the largest, ½ the median.
 *
 * @param sorted  ascending, at least one; what is not ascending is a caller's bug and not looked for
 * @param part    from 0 to 1
 * @throws RangeError for no values and for a part outside of that: a caller's bug
 * @source definition 7 of Hyndman and Fan, Sample Quantiles in Statistical Packages, The American Statistician
 *         50(4), 1996 (from memory)
 * @example
 * sortedQuantile(Float64Array.of(10, 20, 40), 0.75) //=> 30
 */
export function sortedQuantile(sorted: Float64Array, part: number): number {
  if (!(part >= 0 && part <= 1)) throw new RangeError(`a part must lie from 0 to 1, found ${part}`);
  if (sorted.length === 0) throw new RangeError('no values have no quantile');
  const place = part * (sorted.length - 1);
  const below = Math.floor(place);
  const low = sorted[below] ?? 0;
  const high = sorted[Math.ceil(place)] ?? low;
  return low + (place - below) * (high - low);
}
