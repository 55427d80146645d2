import { commonMultiple, LARGEST_WHOLE, minorUnitDigits, roundQuotient } from '../quantity/index.ts';
import { UNSCALED, type DayFactor } from './day-factor.ts';
import { CREDIT, FLOOR, PIECE, SHARE, SHORTFALL, TABLE, type LineConstants } from './line-constants.ts';
import { wholeOrNaN } from './offset.ts';
import { isEnergy, QUANTITY_ORDER } from './quantities.ts';
import { leastCommonDenominator, type Shape, type ShapeLine } from './shape.ts';
import { makeSteps, usedQuantities, type Step } from './steps.ts';

/** All lines of a version for one set of day factors and one split of units. */
export interface Constants {
  readonly shape: Shape;
  readonly lines: readonly LineConstants[];
  /** The same, laid out for the evaluator. */
  readonly steps: readonly Step[];
  /** The quantities that lines use, for the check of size. */
  readonly used: readonly number[];
  /** Amounts are whole numbers of 1/grid of a unit of money. */
  readonly grid: number;
  /** Energy quantities are in thousandths of a unit, times this. */
  readonly energyScale: number;
  /** Whether every constant is exact; where one is not, nothing is billed. */
  readonly isExact: boolean;
  /** Quantities up to here are billed in doubles without loss; larger ones take the large-number path. */
  readonly safeQuantity: number;
  readonly factors: Readonly<Record<string, DayFactor>>;
}

interface LineScale {
  readonly factor: DayFactor;
  readonly limits: boolean;
  readonly amount: boolean;
}

function scaleOf(line: ShapeLine, factors: Readonly<Record<string, DayFactor>>): LineScale {
  const factor = line.dayRule === null ? UNSCALED : (factors[line.dayRule] ?? UNSCALED);
  return {
    factor,
    limits: line.scaling === 'limits' || line.scaling === 'limits-and-amount',
    amount: line.scaling === 'amount' || line.scaling === 'limits-and-amount',
  };
}

/** A limit in thousandths, scaled by the factor, in the units that the scaled quantity has. */
function scaledLimit(line: ShapeLine, limit: number, quantity: number, context: Build): number {
  const { factor, limits } = scaleOf(line, context.factors);
  const energy = isEnergy(context.shape.quantities, quantity);
  const energyScale = energy ? context.energyScale : 1;
  if (limit === Infinity) return Infinity;
  if (!limits || !energy) return limit * energyScale;
  const rounding =
    line.dayRule === null ? undefined : context.shape.document.dayRules?.[line.dayRule]?.limits;
  const isScaled = factor.numerator !== factor.denominator;
  if (rounding === undefined || !isScaled) return limit * factor.numerator * energyScale;
  const step = thousandths(rounding.step);
  const rounded = roundQuotient(limit * factor.numerator, factor.denominator * step, rounding.mode) * step;
  return rounded * factor.denominator * energyScale;
}

/** A step as whole thousandths. */
function thousandths(text: string): number {
  const [whole = '0', decimals = ''] = text.split('.');
  return Number.parseInt(whole + decimals.padEnd(3, '0').slice(0, 3), 10);
}

interface Build {
  readonly shape: Shape;
  readonly factors: Readonly<Record<string, DayFactor>>;
  readonly energyScale: number;
}

/** Whether every number of a line is whole and exact; limits may be endless, and offsets are worked out anew. */
function isExactLine(line: LineConstants): boolean {
  const numbers = [line.divisor, line.denominator, line.unit, line.basisScale, line.scale, line.chooserScale];
  const limits = [...line.tableLimits, ...line.pieces.filter((_, at) => at % PIECE === 0)];
  const rates = line.pieces.filter((_, at) => at % PIECE === 1);
  const isWhole = (value: number): boolean => Number.isInteger(value) && Math.abs(value) <= LARGEST_WHOLE;
  return [...numbers, ...rates, ...limits.filter((limit) => limit !== Infinity)].every(isWhole);
}

/**
 * Offsets fold what the pieces below cost into one number, so that a piece is one multiplication; NaN where
 * no double holds it, which makes the safe quantity 0.
 */
function flatPieces(line: ShapeLine, context: Build): { pieces: Float64Array; starts: number[] } {
  const { factor, amount } = scaleOf(line, context.factors);
  const multiply = amount ? factor.numerator : 1;
  const starts: number[] = [];
  const flat: number[] = [];
  for (const table of line.tables) {
    starts.push(flat.length);
    let offset = 0;
    let before: { limit: number; rate: number } | null = null;
    for (const piece of table.pieces) {
      const rate = piece.rate * multiply;
      if (before !== null) offset = wholeOrNaN(offset + wholeOrNaN(before.limit * (before.rate - rate)));
      const limit = scaledLimit(line, piece.limit, line.quantity, context);
      flat.push(limit, rate, offset);
      before = { limit, rate };
    }
  }
  return { pieces: Float64Array.from(flat), starts };
}

/** What a quantity is multiplied by before it meets scaled limits. */
function limitScale(line: ShapeLine, quantity: number, context: Build): number {
  const { factor, limits } = scaleOf(line, context.factors);
  return limits && isEnergy(context.shape.quantities, quantity) ? factor.denominator : 1;
}

/** The denominator of a line's exact amount before rounding. */
function tableDenominator(line: ShapeLine, context: Build): number {
  const { factor, amount } = scaleOf(line, context.factors);
  const energy = isEnergy(context.shape.quantities, line.quantity) ? context.energyScale : 1;
  const quantityScale = 1000 * energy * limitScale(line, line.quantity, context);
  return quantityScale * 10 ** line.ratePlaces * (amount ? factor.denominator : 1);
}

const PERCENT = 100;

/** What a share's numerator is divided by: 100, or what is left of it where the line is in its own base. */
function shareDenominator(line: ShapeLine): number {
  const whole = PERCENT * 10 ** line.ratePlaces;
  return line.isInside ? whole - (line.tables[0]?.pieces[0]?.rate ?? 0) : whole;
}

/** The denominator that a line's final amount needs, exact or rounded, from those of its basis. */
function amountDenominator(line: ShapeLine, context: Build, before: readonly number[]): number {
  if (line.rounding !== null) return line.rounding.denominator;
  if (line.kind === 'table') return tableDenominator(line, context);
  const basis = leastCommonDenominator([...line.basis, ...line.earned].map((index) => before[index] ?? 1));
  if (line.kind === 'share') return basis * shareDenominator(line);
  if (line.kind === 'credit') return isWholeCredit(line) ? basis : basis * shareDenominator(line);
  const { factor } = scaleOf(line, context.factors);
  return commonMultiple(basis, 10 ** line.ratePlaces * factor.denominator);
}

/** Whether a credit may meet all of the lines it is set against, which takes no share of them. */
function isWholeCredit(line: ShapeLine): boolean {
  return line.tables[0]?.pieces[0]?.rate === PERCENT * 10 ** line.ratePlaces;
}

/** The grid on which every line of the bill is a whole number. */
function gridOf(context: Build, money: number): number {
  const denominators: number[] = [];
  for (const line of context.shape.lines) denominators.push(amountDenominator(line, context, denominators));
  const digits = minorUnitDigits(context.shape.document.currency) ?? 2;
  return leastCommonDenominator([...denominators, 10 ** digits, money]);
}

const KINDS = { table: TABLE, share: SHARE, shortfall: SHORTFALL, floor: FLOOR, credit: CREDIT } as const;

/** Divide a denominator by the step, or say what an exact amount is multiplied by to stand on the grid. */
function quotientParts(
  line: ShapeLine,
  denominator: number,
  grid: number,
): Pick<LineConstants, 'divisor' | 'half' | 'unit' | 'mode'> {
  if (line.rounding === null) {
    const divisor = Math.max(1, denominator / grid);
    return { divisor, half: 0, unit: grid >= denominator ? grid / denominator : 1, mode: 'exact' };
  }
  const divisor = (denominator * line.rounding.numerator) / line.rounding.denominator;
  const unit = (line.rounding.numerator * grid) / line.rounding.denominator;
  return { divisor, half: divisor / 2, unit, mode: line.rounding.rounding.mode };
}

function lineConstants(line: ShapeLine, context: Build, grid: number): LineConstants {
  const { pieces, starts } = flatPieces(line, context);
  const { factor } = scaleOf(line, context.factors);
  const minimum = line.kind === 'shortfall' || line.kind === 'floor';
  const places = 10 ** line.ratePlaces;
  const amountScale = line.scaling === 'none' ? places : places * factor.denominator;
  const denominator =
    line.kind === 'table'
      ? tableDenominator(line, context)
      : line.kind === 'share' || line.kind === 'credit'
        ? grid * shareDenominator(line)
        : grid * amountScale;
  if (minimum) pieces[1] = (pieces[1] ?? 0) * grid;
  const tableLimits = line.tables.map((table) => scaledLimit(line, table.limit, line.chooser, context));
  return {
    kind: KINDS[line.kind],
    quantity: line.quantity,
    scale: limitScale(line, line.quantity, context),
    chooser: line.chooser,
    chooserScale: limitScale(line, line.chooser, context),
    tableLimits: tableLimits.length === 1 ? [] : tableLimits,
    pieces,
    tableStarts: starts,
    rateScale: (scaleOf(line, context.factors).amount ? factor.numerator : 1) * (minimum ? grid : 1),
    basis: line.basis,
    earned: line.earned,
    basisScale: minimum ? amountScale : 1,
    denominator,
    ...quotientParts(line, denominator, grid),
    adds: line.adds,
  };
}

/** Repricing may raise a rate up to so many times: the bounds below leave room for it. */
export const LARGEST_RAISE = 16;

/** The largest magnitude a line can have inside when no quantity exceeds `most`; amounts are remembered. */
function magnitude(line: LineConstants, most: number, amounts: number[]): number {
  const named = [...line.basis, ...line.earned];
  const basis = named.reduce((sum, index) => sum + (amounts[index] ?? 0), 0) * line.basisScale;
  let inside = basis;
  for (let at = 0; at < line.pieces.length; at += PIECE) {
    const rate = Math.abs(line.pieces[at + 1] ?? 0) * LARGEST_RAISE;
    const offset = Math.abs(line.pieces[at + 2] ?? 0) * LARGEST_RAISE;
    const x =
      line.kind === TABLE ? most * line.scale : line.kind === SHARE || line.kind === CREDIT ? basis : 1;
    inside = Math.max(inside, x * rate + offset, x);
  }
  inside = Math.max(inside, most * line.chooserScale);
  const amount = (inside / line.divisor + 1) * line.unit;
  amounts.push(line.kind === FLOOR ? amount + basis : amount);
  return Math.max(inside + line.half, amount);
}

/** The largest power of ten of a quantity for which no number on the way exceeds 2^52. */
function safeQuantityOf(lines: readonly LineConstants[]): number {
  for (let most = 1e12; most >= 1; most /= 10) {
    const amounts: number[] = [];
    const largest = Math.max(...lines.map((line) => magnitude(line, most, amounts)));
    const sum = amounts.reduce((total, amount) => total + amount, 0);
    if (Math.max(largest, sum) * 2 < LARGEST_WHOLE) return most;
  }
  return 0;
}

/**
 * Work out the constants of a version for given day factors.
 *
 * @param shape        the version in normal form
 * @param factors      by name of day rule
 * @param energyScale  energy quantities come in thousandths times this: the days of a split period
 * @param money        balances of money come in 1/money
 */
export function makeConstants(
  shape: Shape,
  factors: Readonly<Record<string, DayFactor>>,
  energyScale: number,
  money = 1,
): Constants {
  const context = { shape, factors, energyScale };
  const grid = gridOf(context, money);
  const lines = shape.lines.map((line) => lineConstants(line, context, grid));
  const safeQuantity = safeQuantityOf(lines);
  const steps = makeSteps(lines, safeQuantity);
  const used = usedQuantities(lines);
  const isExact = grid <= LARGEST_WHOLE && lines.every(isExactLine);
  return { shape, lines, steps, used, isExact, grid, energyScale, safeQuantity, factors };
}

/** A new vector for the quantities of one bill. */
export function quantityVector(constants?: Constants): Float64Array {
  return new Float64Array(constants?.shape.quantities.names.length ?? QUANTITY_ORDER.length);
}
