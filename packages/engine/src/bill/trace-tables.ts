import {
  exactText,
  type Figure,
  type FigureKind,
  type FigureUnit,
  type Parameter,
} from '../quantity/index.ts';
import type { Constants } from './constants.ts';
import { PIECE, type LineConstants } from './line-constants.ts';
import type { DayFactor } from './day-factor.ts';
import { isEnergy } from './quantities.ts';
import type { Piece, ShapeLine } from './shape.ts';
import type { LineTrace, PieceTrace } from './line-trace.ts';
import { lineKind, type BillSource } from './trace.ts';

const NONE: readonly never[] = [];

/** The figure of a day factor, with the clause of its rule. */
function factorFigure(name: string, factor: DayFactor, clause: string): Figure {
  return {
    id: `factor-${name}`,
    label: `Day factor "${name}"`,
    unit: 'ratio',
    numerator: factor.numerator,
    denominator: factor.denominator,
    operation: 'given',
    inputs: NONE,
    parameters: NONE,
    rounding: null,
    clause,
  };
}

/** A limit as the document has it, and scaled where a day factor scaled it. */
function limitParameter(name: string, piece: Piece, scaled: number, context: LineContext): Parameter {
  const { constants, line, unitsDenominator, factorText } = context;
  const unit: FigureUnit = isEnergy(line.quantity) ? 'kWh' : 'kW';
  const stated = exactText(piece.limit, 1000);
  const limited = line.dayRule !== null && constants.scale !== 1;
  return {
    name: limited ? `${name} (${stated} × ${factorText})` : name,
    text: exactText(scaled, unitsDenominator),
    unit,
    clause: piece.clause,
  };
}

interface LineContext {
  readonly line: ShapeLine;
  readonly constants: LineConstants;
  readonly unitsDenominator: number;
  readonly factorText: string;
}

const RATE_UNITS: Readonly<Record<ShapeLine['kind'], FigureUnit>> = {
  table: 'money/kWh',
  share: 'percent',
  shortfall: 'money',
  floor: 'money',
};

function rateUnit(line: ShapeLine): FigureUnit {
  if (line.kind !== 'table' || isEnergy(line.quantity)) return RATE_UNITS[line.kind];
  return line.charge.kind === 'fixed' ? 'money' : 'money/kW';
}

/** "above 50 up to 150", for the part of a quantity that a piece charges. */
function partWords(below: Parameter | null, to: Parameter | null): string {
  const from = below === null ? '' : `above ${below.text}`;
  return [from, to === null ? '' : `up to ${to.text}`].filter((text) => text !== '').join(' ');
}

/** Words of the piece a whole table was chosen for. */
function chosenWords(line: ShapeLine, table: number): string {
  const limit = line.tables[table]?.limit ?? Infinity;
  const before = line.tables[table - 1]?.limit;
  if (limit !== Infinity) return `rate for up to ${exactText(limit, 1000)}`;
  return before === undefined ? '' : `rate for above ${exactText(before, 1000)}`;
}

function pieceTraces(context: LineContext): PieceTrace[] {
  const { line, constants } = context;
  const unit = rateUnit(line);
  return line.tables.flatMap((table, tableIndex) => {
    const start = constants.tableStarts[tableIndex] ?? 0;
    let below: Parameter | null = null;
    return table.pieces.map((piece, index): PieceTrace => {
      const scaled = constants.pieces[start + index * PIECE] ?? Infinity;
      const to = piece.limit === Infinity ? null : limitParameter('up to', piece, scaled, context);
      const from: Parameter = below ?? { name: 'above', text: '0', unit: 'kWh', clause: piece.clause };
      const words = table.pieces.length > 1 ? partWords(below, to) : chosenWords(line, tableIndex);
      below = to === null ? null : { ...to, name: to.name.replace('up to', 'above') };
      return {
        id: `${line.id}-${String(tableIndex)}-${String(index)}`,
        label: words === '' ? line.charge.label : `${line.charge.label}, ${words}`,
        unitsLabel: `Units ${words}`,
        limits: to === null ? [from] : [from, to],
        rate: [
          {
            name: unit === 'percent' ? 'percent' : unit === 'money' ? 'amount' : 'rate',
            text: piece.rateText,
            unit,
            clause: piece.clause,
          },
        ],
      };
    });
  });
}

function lineTrace(line: ShapeLine, constants: LineConstants, all: Constants): LineTrace {
  const { factors, energyScale, shape } = all;
  const factor = line.dayRule === null ? undefined : factors[line.dayRule];
  const unitsDenominator = 1000 * (isEnergy(line.quantity) ? energyScale : 1) * constants.scale;
  const factorText = factor === undefined ? '1' : exactText(factor.numerator, factor.denominator);
  const clause = shape.document.dayRules?.[line.dayRule ?? '']?.clause ?? '';
  const multiplies = line.scaling === 'amount' || line.scaling === 'limits-and-amount';
  const isScaled = factor !== undefined && multiplies && factorText !== '1';
  return {
    line,
    label:
      line.adds || line.id === line.charge.id
        ? line.charge.label
        : `${line.charge.label} on ${line.id.split(' on ')[1] ?? ''}`,
    isSum: line.kind === 'table' && line.tables.some((table) => table.pieces.length > 1),
    roundingClause: line.charge.rounding === undefined ? shape.document.rounding.clause : line.charge.clause,
    pieces: pieceTraces({ line, constants, unitsDenominator, factorText }),
    unitsDenominator,
    factor: isScaled ? factorFigure(line.dayRule ?? '', factor, clause) : null,
  };
}

/** How each line of bills under the same constants unfolds. */
export function traceTables(constants: Constants): readonly FigureKind<BillSource>[] {
  return constants.shape.lines.map((line, index) => {
    const own = constants.lines[index] as LineConstants;
    return lineKind(lineTrace(line, own, constants), own, constants.grid);
  });
}
