import type { Constants } from './constants.ts';
import { PIECE, SHARE, TABLE, type LineConstants } from './line-constants.ts';
import { ONE, ONE_THOUSANDTHS } from './quantities.ts';
import { raisedAmount, type ExactFactor } from './raised.ts';
import { OTHER, type Step } from './steps.ts';

/** Many bills of the same charges, a column for each quantity and each line. */
export interface BillColumns {
  readonly constants: Constants;
  readonly count: number;
  /** Whole thousandths, in the order of the quantities that the charges use. */
  readonly used: readonly Float64Array[];
  /** For each line the column it is charged on: one of those, or one that is always one. */
  readonly charged: readonly Float64Array[];
  /** Receives the amounts of each line. */
  readonly amounts: readonly Float64Array[];
  /** Receives the sums of the lines that count; NaN where only the long way can say. */
  readonly totals: Float64Array;
  /** Factors of each line that has risen; null: its rates stand. */
  readonly factors: readonly (Float64Array | null)[];
}

/** The exact factor of a line in a bill. */
export type ExactFactorOf = (line: number, bill: number) => ExactFactor;

/** As in `evaluateRaised`: many times what products of doubles can be off. */
const DOUBT = 2 ** -49;

/**
 * Whether charges can be evaluated in columns: none of their lines asks the general rule.
 */
export const isColumnar = ({ steps, isExact }: Constants): boolean =>
  isExact && steps.every(({ kind }) => kind !== OTHER);

/** A table line whose rates stand: rate × quantity + offset, divided and rounded half-up. */
function tableColumn(step: Step, quantity: Float64Array, into: Float64Array): void {
  const { scale, table, divisor, half, unit } = step;
  for (let at = 0; at < into.length; at += 1) {
    const x = (quantity[at] as number) * scale;
    let piece = 0;
    while (x > (table[piece] as number)) piece += PIECE;
    const numerator = x * (table[piece + 1] as number) + (table[piece + 2] as number);
    const rounded =
      numerator < 0 ? 0 - Math.floor((half - numerator) / divisor) : Math.floor((numerator + half) / divisor);
    into[at] = rounded * unit;
  }
}

/** What a line of rates that rose is worked out with. */
interface Raised {
  readonly factors: Float64Array;
  /** The exact amount in a bill where the double may be on the wrong side of a rounding. */
  readonly exact: (at: number) => number;
}

/** A table line whose rates have risen. */
function raisedTableColumn(
  { scale, table, divisor, half, unit }: Step,
  { factors, exact }: Raised,
  quantity: Float64Array,
  into: Float64Array,
): void {
  for (let at = 0; at < into.length; at += 1) {
    const x = (quantity[at] as number) * scale;
    let piece = 0;
    while (x > (table[piece] as number)) piece += PIECE;
    const factor = factors[at] as number;
    const numerator = (x * (table[piece + 1] as number) + (table[piece + 2] as number)) * factor;
    const top = numerator < 0 ? half - numerator : numerator + half;
    const whole = Math.floor(top / divisor);
    const rest = top - whole * divisor;
    const doubt = top * DOUBT;
    const isSure = factor === 1 || (rest > doubt && divisor - rest > doubt);
    into[at] = isSure ? (numerator < 0 ? 0 - whole : whole) * unit : exact(at);
  }
}

/** Sums of the lines that a line is based on. */
function basisColumn({ basis }: Step, amounts: readonly Float64Array[], into: Float64Array): void {
  into.set(amounts[basis[0] as number] ?? new Float64Array(into.length));
  for (let index = 1; index < basis.length; index += 1) {
    const more = amounts[basis[index] as number] as Float64Array;
    for (let at = 0; at < into.length; at += 1) into[at] = (into[at] as number) + (more[at] as number);
  }
}

/** A percentage of sums that stand in the column. */
function shareColumn({ rate, divisor, half, unit }: Step, column: Float64Array): void {
  for (let at = 0; at < column.length; at += 1) {
    const numerator = (column[at] as number) * rate;
    const rounded =
      numerator < 0 ? 0 - Math.floor((half - numerator) / divisor) : Math.floor((numerator + half) / divisor);
    column[at] = rounded * unit;
  }
}

/** What sums that stand in the column fall short of a minimum, whose least may have risen. */
function shortfallColumn(step: Step, raised: Raised | null, column: Float64Array): void {
  const { rate, scale, divisor, half, unit } = step;
  for (let at = 0; at < column.length; at += 1) {
    const factor = raised === null ? 1 : (raised.factors[at] as number);
    const least = rate * factor;
    const top = Math.max(0, least - (column[at] as number) * scale) + half;
    const whole = Math.floor(top / divisor);
    const rest = top - whole * divisor;
    const doubt = (top + least) * DOUBT;
    const isSure = factor === 1 || (rest > doubt && divisor - rest > doubt);
    column[at] = isSure || raised === null ? whole * unit : raised.exact(at);
  }
}

/** The exact amount of a line in one bill. */
function exactAmount(
  { constants, used, amounts }: BillColumns,
  line: number,
  at: number,
  exact: ExactFactorOf,
): number {
  const quantities = new Float64Array(constants.shape.quantities.names.length);
  constants.used.forEach((place, index) => {
    quantities[place] = used[index]?.[at] ?? 0;
  });
  const own = Float64Array.from(amounts, (column) => column[at] as number);
  const constantsOf = constants.lines[line] as LineConstants;
  quantities[ONE] = ONE_THOUSANDTHS;
  return raisedAmount(constantsOf, line, { quantities, amounts: own }, exact(line, at));
}

/**
 * The bills of many periods with the same charges, line by line: what `evaluate` and `evaluateRaised` are for
 * one, and several times as fast, since each line is prepared once.
 *
 * @param columns  receives amounts and totals
 * @param exact    factors themselves, where lines have risen
 * @throws         AmountTooLarge when an amount is beyond 2^53
 */
export function evaluateColumns(columns: BillColumns, exact: ExactFactorOf): void {
  const { constants, charged, amounts, totals, factors, count } = columns;
  totals.fill(0);
  for (let line = 0; line < constants.steps.length; line += 1) {
    const step = constants.steps[line] as Step;
    const column = amounts[line] as Float64Array;
    const risen = factors[line] ?? null;
    const raised =
      risen === null
        ? null
        : { factors: risen, exact: (at: number) => exactAmount(columns, line, at, exact) };
    if (step.kind !== TABLE) {
      basisColumn(step, amounts, column);
      if (step.kind === SHARE) shareColumn(step, column);
      else shortfallColumn(step, raised, column);
    } else if (raised === null) tableColumn(step, charged[line] as Float64Array, column);
    else raisedTableColumn(step, raised, charged[line] as Float64Array, column);
    if (step.counts === 0) continue;
    for (let at = 0; at < count; at += 1) totals[at] = (totals[at] as number) + (column[at] as number);
  }
}

/**
 * Room for so many bills of the same charges.
 *
 * @param rising  for each line whether it can rise
 */
export function billColumns(constants: Constants, count: number, rising: readonly boolean[]): BillColumns {
  const room = (): Float64Array => new Float64Array(count);
  const used = constants.used.map(room);
  const ones = room().fill(ONE_THOUSANDTHS);
  return {
    constants,
    count,
    used,
    charged: constants.steps.map(({ quantity }) => used[constants.used.indexOf(quantity)] ?? ones),
    amounts: constants.lines.map(room),
    totals: room(),
    factors: rising.map((rises) => (rises ? room().fill(1) : null)),
  };
}
