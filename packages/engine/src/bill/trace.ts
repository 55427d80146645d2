import {
  addQuotients,
  subtractQuotients,
  type AppliedRounding,
  type Choice,
  type Figure,
  type FigureKind,
} from '../quantity/index.ts';
import type { Constants } from './constants.ts';
import { CREDIT, FLOOR, PIECE, SHARE, TABLE, type LineConstants } from './line-constants.ts';
import type { LineTrace, PieceTrace } from './line-trace.ts';
import { largeOffset } from './offset.ts';
import { ONE_THOUSANDTHS } from './quantities.ts';
import { roundedFigure } from './step-rounding.ts';

/** An evaluated bill or part of one: what its lines are explained from. */
export interface BillSource {
  readonly constants: Constants;
  /** A figure for each quantity, null for those not known; `one` has none. */
  readonly figures: readonly (Figure | null)[];
  /** The lines, amounts as evaluated. */
  readonly lines: readonly Figure[];
}

const NONE: readonly never[] = [];

/** Exact numerators beyond this are kept as large whole numbers. */
const SAFE = 2 ** 52;

/** x · rate + offset without loss. */
function exactNumerator(x: number, rate: number, offset: number): number | bigint {
  const value = x * rate + offset;
  return Math.abs(x * rate) < SAFE && Math.abs(offset) < SAFE
    ? value
    : BigInt(x) * BigInt(rate) + BigInt(offset);
}

/** One line of an evaluated bill under explanation. */
interface LineAt {
  readonly trace: LineTrace;
  readonly constants: LineConstants;
  readonly source: BillSource;
}

/** A quantity as the evaluator took it; `one`, which has no figure, is 1000 thousandths. */
const quantityOf = (source: BillSource, index: number): number =>
  (source.figures[index]?.numerator as number | undefined) ?? ONE_THOUSANDTHS;

/** The quantity a line is charged on, in the units of its limits. */
const scaledQuantity = ({ constants, source }: LineAt): number =>
  quantityOf(source, constants.quantity) * constants.scale;

/** The table that a quantity chose. */
function chosenTable({ constants, source }: LineAt): number {
  const chooser = quantityOf(source, constants.chooser) * constants.chooserScale;
  let table = 0;
  while (constants.tableLimits.length > 0 && chooser > (constants.tableLimits[table] ?? Infinity)) table += 1;
  return table;
}

/** Which table was chosen, and by what; null where there is only one. */
function choiceOf(line: LineAt): Choice | null {
  const { constants, trace, source } = line;
  const by = source.figures[constants.chooser];
  const limits = trace.choices[chosenTable(line)];
  return by === null || by === undefined || limits === undefined ? null : { by, ...limits };
}

/** Where the piece stands that a line charges, counted over all tables, and the first of its table. */
function chosenPieces(line: LineAt): { readonly first: number; readonly last: number } {
  const { constants } = line;
  const start = constants.tableStarts[chosenTable(line)] ?? 0;
  const x = scaledQuantity(line);
  let at = start;
  while (constants.kind === TABLE && x > (constants.pieces[at] ?? Infinity)) at += PIECE;
  return { first: start / PIECE, last: at / PIECE };
}

/** A figure of one part of a quantity at its rate. */
function partFigure(line: LineAt, piece: number, below: number): Figure {
  const { constants, trace, source } = line;
  const words = trace.pieces[piece] as PieceTrace;
  const limit = constants.pieces[piece * PIECE] ?? Infinity;
  const units = Math.min(scaledQuantity(line), limit) - below;
  const quantity = source.figures[constants.quantity] as Figure;
  const part: Figure = {
    id: `${words.id}-units`,
    label: words.unitsLabel,
    unit: quantity.unit,
    numerator: units,
    denominator: trace.unitsDenominator,
    // Below 0 there is no part to take: the whole is charged at the first rate.
    operation: units < 0 ? 'sum' : 'part',
    inputs: trace.limitFactor === null || units < 0 ? [quantity] : [quantity, trace.limitFactor],
    parameters: units < 0 ? NONE : words.limits,
    rounding: null,
    clause: '',
  };
  return {
    id: words.id,
    label: words.label,
    unit: 'money',
    numerator: exactNumerator(units, constants.pieces[piece * PIECE + 1] ?? 0, 0),
    denominator: constants.denominator,
    operation: 'product',
    inputs: trace.factor === null ? [part] : [part, trace.factor],
    parameters: words.rate,
    rounding: null,
    clause: words.rate[0]?.clause ?? '',
  };
}

/** Sum of the lines a line is based on. */
const basisSum = ({ constants, source }: LineAt): number =>
  constants.basis.reduce((sum, index) => sum + (source.lines[index]?.numerator as number), 0);

const basisFigures = ({ constants, source }: LineAt): Figure[] =>
  constants.basis.map((index) => source.lines[index] as Figure);

/** The minimum itself, scaled where the day rule scales it, as a figure. */
function leastFigure({ trace, constants }: LineAt): Figure {
  return {
    id: `${trace.line.id}-least`,
    label: 'Minimum',
    unit: 'money',
    numerator: constants.pieces[1] ?? 0,
    denominator: constants.denominator,
    operation: 'product',
    inputs: trace.factor === null ? NONE : [trace.factor],
    parameters: trace.pieces[0]?.rate ?? NONE,
    rounding: null,
    clause: trace.line.charge.clause,
  };
}

/** A whole number as a double where one holds it. */
function ordinary(value: bigint): number | bigint {
  return value <= BigInt(SAFE) && value >= -BigInt(SAFE) ? Number.parseInt(value.toString(), 10) : value;
}

/** The exact amount before rounding, over the line's denominator. */
function exactAmount(line: LineAt): number | bigint {
  const { constants } = line;
  if (constants.kind === TABLE || constants.kind === SHARE) {
    const { first, last } = chosenPieces(line);
    const x = constants.kind === TABLE ? scaledQuantity(line) : basisSum(line);
    const [, rate, offset] = constants.pieces.subarray(last * PIECE) as unknown as [number, number, number];
    if (!Number.isNaN(offset)) return exactNumerator(x, rate, offset);
    return ordinary(BigInt(x) * BigInt(rate) + largeOffset(constants, first * PIECE, last * PIECE));
  }
  const sum = BigInt(basisSum(line)) * BigInt(constants.basisScale);
  const least = BigInt(constants.pieces[1] ?? 0);
  const [larger, missing] = [least > sum ? least : sum, least > sum ? least - sum : 0n];
  return ordinary(line.trace.line.kind === 'shortfall' ? missing : larger);
}

/** The rounding of a line, if it changed the amount. */
function appliedRounding(line: LineAt, amount: number): AppliedRounding | null {
  const { rounding } = line.trace.line;
  const { roundingClause } = line.trace;
  if (rounding === null || line.constants.kind === CREDIT) return null;
  const { constants } = line;
  // A floor that lines above reach is their sum as it stands.
  const isReached =
    constants.kind === FLOOR &&
    BigInt(basisSum(line)) * BigInt(constants.basisScale) >= BigInt(constants.pieces[1] ?? 0);
  if (isReached) return null;
  const numerator = exactAmount(line);
  const steps = amount / constants.unit;
  const changed =
    typeof numerator === 'number'
      ? steps * constants.divisor !== numerator
      : BigInt(steps) * BigInt(constants.divisor) !== numerator;
  if (!changed) return null;
  const { step, mode } = rounding.rounding;
  return { step, mode, clause: roundingClause, numerator, denominator: constants.denominator };
}

function tableInputs(line: LineAt): readonly Figure[] {
  const { constants, trace, source } = line;
  const { first, last } = chosenPieces(line);
  if (!trace.isSum) {
    const quantity = source.figures[constants.quantity];
    return [quantity, trace.factor].filter((figure) => figure !== null && figure !== undefined);
  }
  const parts: Figure[] = [];
  for (let piece = first; piece <= last; piece += 1) {
    // "Only the first 50 units" has a piece at no rate behind it, of which there is nothing to say.
    if (piece > first && constants.pieces[piece * PIECE + 1] === 0) continue;
    const below = piece === first ? 0 : (constants.pieces[(piece - 1) * PIECE] ?? 0);
    parts.push(partFigure(line, piece, below));
  }
  return parts;
}

function lineInputs(line: LineAt): readonly Figure[] {
  const { kind } = line.constants;
  if (kind === TABLE) return tableInputs(line);
  if (kind === CREDIT) return creditInputs(line);
  return kind === SHARE ? basisFigures(line) : [leastFigure(line), ...basisFigures(line)];
}

/** The credit there is, and what it may meet of the lines it is set against. */
function creditInputs(line: LineAt): readonly Figure[] {
  const { constants, trace, source } = line;
  const opening = source.figures[constants.quantity];
  const earned = constants.earned.map((index) => source.lines[index] as Figure);
  const parts = opening === null || opening === undefined ? earned : [opening, ...earned];
  const { charge } = trace.line;
  const words = { unit: 'money', clause: charge.clause, parameters: NONE, rounding: null } as const;
  const available = {
    ...words,
    id: `${charge.id}-available`,
    label: 'Credit available',
    operation: 'sum',
  } as const;
  const against = basisFigures(line);
  const met = { ...words, id: `${charge.id}-against`, label: 'What it may meet', operation: 'sum' } as const;
  const added = { ...met, ...addQuotients(against), inputs: against };
  const floor = { ...words, id: `${charge.id}-met`, label: 'But not below 0', operation: 'excess' } as const;
  // Lines that come to less than 0 owe nothing that credit could meet.
  const sum = added.numerator < 0 ? { ...floor, numerator: 0, denominator: 1, inputs: [added] } : added;
  return [{ ...available, ...addQuotients(parts), inputs: parts }, mostFigure(line, sum)];
}

/** The share of the lines that a credit may meet, where it may not meet them all. */
function mostFigure({ constants, trace }: LineAt, sum: Figure): Figure {
  const rate = trace.pieces[0]?.rate ?? NONE;
  const [percent] = rate;
  if (percent === undefined || percent.text === '100') return sum;
  const { rounding, charge } = trace.line;
  const base = (sum.numerator as number) * (trace.grid / sum.denominator);
  const exact = {
    numerator: BigInt(base) * BigInt(constants.pieces[1] ?? 0),
    denominator: constants.denominator,
  };
  const share: Figure = {
    ...sum,
    id: `${charge.id}-most`,
    label: `At most ${percent.text} percent of it`,
    ...exact,
    operation: 'share',
    inputs: [sum],
    parameters: rate,
  };
  if (rounding === null) return share;
  const most = roundedFigure(share, rounding, trace.roundingClause);
  // Rounded up, the share can be more than there is to meet.
  if (subtractQuotients(sum, most).numerator >= 0) return most;
  const { numerator, denominator } = sum;
  const limit = { id: `${charge.id}-limit`, label: 'But not above it', operation: 'least' } as const;
  return { ...sum, ...limit, numerator, denominator, inputs: [most, sum] };
}

/** The rate or percentage of the piece charged, where the line is one product or share. */
function lineParameters(line: LineAt): Figure['parameters'] {
  const { kind } = line.constants;
  if (kind !== TABLE && kind !== SHARE) return NONE;
  const { last } = chosenPieces(line);
  return !line.trace.isSum ? (line.trace.pieces[last]?.rate ?? NONE) : NONE;
}

const OPERATIONS = {
  table: 'product',
  share: 'share',
  shortfall: 'shortfall',
  floor: 'at-least',
  credit: 'credit',
} as const;

function operationOf({ line, isSum }: LineTrace): Figure['operation'] {
  if (isSum) return 'sum';
  return line.isInside ? 'inside' : OPERATIONS[line.kind];
}

/**
 * How one line of a bill unfolds: each amount with its inputs, the numbers read with their clauses, and
 * the rounding applied. The amount itself is the one evaluated, not computed again.
 *
 * @param trace      what explanations of the line share
 * @param constants  of the line
 * @param grid       amounts are counted in 1/grid of money
 */
export function lineKind(trace: LineTrace, constants: LineConstants, grid: number): FigureKind<BillSource> {
  const at = (source: BillSource): LineAt => ({ trace, constants, source });
  return {
    id: trace.line.id,
    label: trace.label,
    unit: 'money',
    denominator: grid,
    operation: operationOf(trace),
    clause: trace.line.charge.clause,
    inputs: (source) => lineInputs(at(source)),
    parameters: (source) => lineParameters(at(source)),
    choice: (source) => choiceOf(at(source)),
    rounding: (source, amount) => appliedRounding(at(source), amount as number),
  };
}
