import { wholeToDecimal } from '../quantity/index.ts';

/** The largest whole number whose square is not above a whole number from 0 on. */
function wholeRoot(square: bigint): bigint {
  if (square < 2n) return square;
  let root = BigInt(`0b1${'0'.repeat(Math.ceil(square.toString(2).length / 2))}`);
  for (;;) {
    const next = (root + square / root) / 2n;
    if (next >= root) return root;
    root = next;
  }
}

/**
 * The root of an exact quotient, rounded half-up to some places: for people to read. What is decided is
 * decided on the squares.
 *
 * @param numerator    from 0 on
 * @param denominator  above 0
 * @example
 * rootText(2n, 1n, 3) //=> "1.414"
 */
export function rootText(numerator: bigint, denominator: bigint, places: number): string {
  const scale = 10n ** BigInt(places);
  // Twice the root, cut to a whole number, and one more, halved, is the root rounded half-up.
  const twice = wholeRoot((4n * numerator * scale * scale) / denominator);
  return wholeToDecimal((twice + 1n) / 2n, places);
}
