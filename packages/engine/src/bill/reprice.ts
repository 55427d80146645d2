import { LARGEST_RAISE, type Constants } from './constants.ts';
import { PIECE, type LineConstants } from './line-constants.ts';
import { wholeOrNaN } from './offset.ts';
import type { Step } from './steps.ts';

/**
 * The rates of a version in the order of its lines, tables and pieces: whole numbers of 10^-ratePlaces.
 *
 * @param constants  of the version
 */
export function ratesOf({ shape }: Constants): Float64Array {
  const rates = shape.lines.flatMap((line) =>
    line.tables.flatMap((table) => table.pieces.map((piece) => piece.rate)),
  );
  return Float64Array.from(rates);
}

/** Write new rates into one line; offsets follow. Returns where the next line's rates begin. */
function repriceLine(line: LineConstants, step: Step, rates: Float64Array, first: number): number {
  const { pieces, rateScale } = line;
  const { table } = step;
  let next = first;
  let offset = 0;
  for (let at = 0; at < pieces.length; at += PIECE) {
    const rate = (rates[next] as number) * rateScale;
    const isFirst = at === 0 || line.tableStarts.includes(at);
    offset = isFirst
      ? 0
      : wholeOrNaN(
          offset + wholeOrNaN((pieces[at - PIECE] as number) * ((pieces[at - PIECE + 1] as number) - rate)),
        );
    pieces[at + 1] = rate;
    pieces[at + 2] = offset;
    if (at < table.length) {
      table[at + 1] = rate;
      table[at + 2] = offset;
    }
    next += 1;
  }
  step.rate = pieces[1] as number;
  return next;
}

/**
 * Give the lines of a version new rates, in place, without preparing it anew: for projections in which
 * rates rise year by year. Limits, bases and roundings stay. Bills from repriced constants are evaluated
 * only: their explanations would still quote the document.
 *
 * @param constants  changed in place; make them for the purpose, they are shared otherwise
 * @param rates      as `ratesOf` lists them
 * @throws           RangeError when a rate is more than 16 times the prepared one: prepare anew instead
 */
export function reprice(constants: Constants, rates: Float64Array): void {
  const { lines, steps, shape } = constants;
  let next = 0;
  for (let at = 0; at < lines.length; at += 1) {
    const from = next;
    next = repriceLine(lines[at] as LineConstants, steps[at] as Step, rates, from);
    const most = shape.largestRates[at] as number;
    for (let index = from; index < next; index += 1) {
      if (Math.abs(rates[index] as number) > most * LARGEST_RAISE) {
        throw new RangeError(
          `rate ${String(rates[index])} is more than ${String(LARGEST_RAISE)} times ${String(most)}`,
        );
      }
    }
  }
}
