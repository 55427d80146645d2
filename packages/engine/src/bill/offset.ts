import { LARGEST_WHOLE } from '../quantity/index.ts';
import { PIECE, type LineConstants } from './line-constants.ts';

/** A whole number that a double holds exactly, or NaN, the sign to work it out in whole numbers of any size. */
export function wholeOrNaN(value: number): number {
  return Math.abs(value) <= LARGEST_WHOLE ? value : NaN;
}

/**
 * The offset of a piece in whole numbers of any size: what the pieces below it cost, less what they would
 * cost at its own rate.
 *
 * @param start  where the table of the piece begins in the flat pieces
 * @param piece  where the piece stands in them
 */
export function largeOffset({ pieces }: LineConstants, start: number, piece: number): bigint {
  let offset = 0n;
  for (let at = start; at < piece; at += PIECE) {
    const [limit, rate, , , next] = pieces.subarray(at, at + 2 * PIECE) as unknown as number[];
    offset += BigInt(limit as number) * (BigInt(rate as number) - BigInt(next as number));
  }
  return offset;
}
