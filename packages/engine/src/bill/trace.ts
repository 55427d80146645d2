import type { AppliedRounding, Figure } from '../quantity/index.ts';
import type { Constants } from './constants.ts';
import { PIECE, SHARE, TABLE, type LineConstants } from './line-constants.ts';
import { QUANTITY_ORDER } from './quantities.ts';
import type { LineTrace, PieceTrace, TraceTables } from './trace-tables.ts';

/** What a bill's lines are explained from. */
export interface TraceInput {
  readonly constants: Constants;
  readonly tables: TraceTables;
  /** As evaluated. */
  readonly quantities: Float64Array;
  readonly amounts: Float64Array;
  /** A figure for each quantity, null for those not known; `one` has none. */
  readonly figures: readonly (Figure | null)[];
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

/** The rounding of a line, if it changed the amount. */
function appliedRounding(
  trace: LineTrace,
  constants: LineConstants,
  numerator: number | bigint,
  amount: number,
): AppliedRounding | null {
  const { rounding, charge } = trace.line;
  if (rounding === null) return null;
  const steps = amount / constants.unit;
  const changed =
    typeof numerator === 'number'
      ? steps * constants.divisor !== numerator
      : BigInt(steps) * BigInt(constants.divisor) !== numerator;
  if (!changed) return null;
  return {
    step: rounding.rounding.step,
    mode: rounding.rounding.mode,
    clause: charge.clause,
    numerator,
    denominator: trace.denominator,
  };
}

/** Where the piece stands that a line charges, counted over all tables, and the first of its table. */
function chosenPieces(constants: LineConstants, quantities: Float64Array): { first: number; last: number } {
  let table = 0;
  const chooser = (quantities[constants.chooser] ?? 0) * constants.chooserScale;
  while (constants.tableLimits.length > 0 && chooser > (constants.tableLimits[table] ?? Infinity)) table += 1;
  const start = constants.tableStarts[table] ?? 0;
  const x = (quantities[constants.quantity] ?? 0) * constants.scale;
  let at = start;
  while (constants.kind === TABLE && x > (constants.pieces[at] ?? Infinity)) at += PIECE;
  return { first: start / PIECE, last: at / PIECE };
}

/** A figure of one part of a quantity at its rate. */
function partFigure(input: TraceInput, at: number, piece: number, below: number): Figure {
  const constants = input.constants.lines[at] as LineConstants;
  const trace = input.tables.lines[at] as LineTrace;
  const words = trace.pieces[piece] as PieceTrace;
  const x = (input.quantities[constants.quantity] ?? 0) * constants.scale;
  const limit = constants.pieces[piece * PIECE] ?? Infinity;
  const rate = constants.pieces[piece * PIECE + 1] ?? 0;
  const units = Math.min(x, limit) - below;
  const quantity = input.figures[constants.quantity] as Figure;
  const part: Figure = {
    id: `${words.id}-units`,
    label: words.unitsLabel,
    unit: quantity.unit,
    numerator: units,
    denominator: trace.unitsDenominator,
    operation: 'part',
    inputs: [quantity],
    parameters: words.limits,
    rounding: null,
    clause: '',
  };
  return {
    id: words.id,
    label: words.label,
    unit: 'money',
    numerator: exactNumerator(units, rate, 0),
    denominator: trace.denominator,
    operation: 'product',
    inputs: trace.factor === null ? [part] : [part, trace.factor],
    parameters: words.rate,
    rounding: null,
    clause: words.rate[0]?.clause ?? '',
  };
}

interface LineValue {
  readonly numerator: number | bigint;
  readonly operation: Figure['operation'];
  readonly inputs: readonly Figure[];
  readonly parameters: Figure['parameters'];
}

function tableValue(input: TraceInput, at: number): LineValue {
  const constants = input.constants.lines[at] as LineConstants;
  const trace = input.tables.lines[at] as LineTrace;
  const { first, last } = chosenPieces(constants, input.quantities);
  const x = (input.quantities[constants.quantity] ?? 0) * constants.scale;
  const rate = constants.pieces[last * PIECE + 1] ?? 0;
  const offset = constants.pieces[last * PIECE + 2] ?? 0;
  const numerator = exactNumerator(x, rate, offset);
  const telescopic =
    (trace.line.tables.find((_, index) => (constants.tableStarts[index] ?? 0) / PIECE === first)?.pieces
      .length ?? 1) > 1;
  if (telescopic) {
    const parts: Figure[] = [];
    for (let piece = first; piece <= last; piece += 1) {
      parts.push(
        partFigure(input, at, piece, piece === first ? 0 : (constants.pieces[(piece - 1) * PIECE] ?? 0)),
      );
    }
    return { numerator, operation: 'sum', inputs: parts, parameters: NONE };
  }
  const quantity = input.figures[constants.quantity];
  const inputs = [quantity, trace.factor].filter((figure) => figure !== null && figure !== undefined);
  return { numerator, operation: 'product', inputs, parameters: trace.pieces[last]?.rate ?? NONE };
}

function basisFigures(constants: LineConstants, before: readonly Figure[]): Figure[] {
  return constants.basis.map((index) => before[index] as Figure);
}

function shareValue(input: TraceInput, at: number, before: readonly Figure[]): LineValue {
  const constants = input.constants.lines[at] as LineConstants;
  const trace = input.tables.lines[at] as LineTrace;
  const { last } = chosenPieces(constants, input.quantities);
  const sum = constants.basis.reduce((total, index) => total + (input.amounts[index] ?? 0), 0);
  return {
    numerator: exactNumerator(sum, constants.pieces[last * PIECE + 1] ?? 0, 0),
    operation: 'share',
    inputs: basisFigures(constants, before),
    parameters: trace.pieces[last]?.rate ?? NONE,
  };
}

/** The minimum itself, scaled where the day rule scales it, as a figure. */
function leastFigure(input: TraceInput, at: number): Figure {
  const constants = input.constants.lines[at] as LineConstants;
  const trace = input.tables.lines[at] as LineTrace;
  return {
    id: `${trace.line.id}-least`,
    label: 'Minimum',
    unit: 'money',
    numerator: constants.pieces[1] ?? 0,
    denominator: trace.denominator,
    operation: 'product',
    inputs: trace.factor === null ? NONE : [trace.factor],
    parameters: trace.pieces[0]?.rate ?? NONE,
    rounding: null,
    clause: trace.line.charge.clause,
  };
}

function minimumValue(input: TraceInput, at: number, before: readonly Figure[]): LineValue {
  const constants = input.constants.lines[at] as LineConstants;
  const trace = input.tables.lines[at] as LineTrace;
  const sum =
    constants.basis.reduce((total, index) => total + (input.amounts[index] ?? 0), 0) * constants.basisScale;
  const least = constants.pieces[1] ?? 0;
  const shortfall = trace.line.kind === 'shortfall';
  return {
    numerator: shortfall ? Math.max(0, least - sum) : Math.max(least, sum),
    operation: shortfall ? 'shortfall' : 'at-least',
    inputs: [leastFigure(input, at), ...basisFigures(constants, before)],
    parameters: NONE,
  };
}

function lineFigure(input: TraceInput, at: number, before: readonly Figure[]): Figure {
  const constants = input.constants.lines[at] as LineConstants;
  const trace = input.tables.lines[at] as LineTrace;
  const { kind } = constants;
  const value =
    kind === TABLE
      ? tableValue(input, at)
      : kind === SHARE
        ? shareValue(input, at, before)
        : minimumValue(input, at, before);
  const amount = input.amounts[at] ?? 0;
  return {
    id: trace.line.id,
    label: trace.label,
    unit: 'money',
    numerator: amount,
    denominator: input.constants.grid,
    operation: value.operation,
    inputs: value.inputs,
    parameters: value.parameters,
    rounding: appliedRounding(trace, constants, value.numerator, amount),
    clause: trace.line.charge.clause,
  };
}

/**
 * Explain every line of an evaluated bill: each amount becomes a figure with its inputs, the numbers read
 * with their clauses, and the rounding applied. The amounts are those evaluated, not computed again.
 *
 * @returns one figure for each line of the shape, lines that do not count included
 */
export function traceLines(input: TraceInput): readonly Figure[] {
  const figures: Figure[] = [];
  for (let at = 0; at < input.constants.lines.length; at += 1) figures.push(lineFigure(input, at, figures));
  return figures;
}

/** Name of a quantity by its place, for messages. */
export function quantityName(index: number): string {
  return QUANTITY_ORDER[index] ?? '';
}
