import {
  exactText,
  quotientText,
  type Choice,
  type Figure,
  type FigureKind,
  type FigureUnit,
  type Parameter,
} from '../quantity/index.ts';
import type { Constants } from './constants.ts';
import { PIECE, type LineConstants } from './line-constants.ts';
import type { DayFactor } from './day-factor.ts';
import { isEnergy, ONE, type NamedQuantities } from './quantities.ts';
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

/** A limit as stated and as scaled, and what it is a limit of. */
interface Limit {
  readonly quantity: number;
  readonly quantities: NamedQuantities;
  /** In thousandths, as the document states it. */
  readonly stated: number;
  readonly scaled: number;
  /** Of the scaled limit. */
  readonly denominator: number;
  readonly clause: string;
}

/** A limit as the document has it, and scaled where a day factor scaled it; null for none. */
function limitParameter(name: string, limit: Limit, factorText: string): Parameter | null {
  if (limit.stated === Infinity) return null;
  const isScaled = factorText !== '1' && isEnergy(limit.quantities, limit.quantity);
  return {
    name: isScaled ? `${name} (${exactText(limit.stated, 1000)} × ${factorText})` : name,
    text: exactText(limit.scaled, limit.denominator),
    unit: limit.quantities.units[limit.quantity] ?? 'kWh',
    clause: limit.clause,
  };
}

/** The limit before, as the one that the next row is above. */
function asLower(limit: Parameter | null): Parameter | null {
  return limit === null ? null : { ...limit, name: limit.name.replace('up to', 'above') };
}

interface LineContext {
  readonly line: ShapeLine;
  readonly quantities: NamedQuantities;
  readonly constants: LineConstants;
  readonly unitsDenominator: number;
  readonly chooserDenominator: number;
  /** The day factor where it scales limits; "1" where it does not. */
  readonly factorText: string;
}

const RATE_UNITS: Readonly<Record<ShapeLine['kind'], FigureUnit>> = {
  table: 'money/kWh',
  share: 'percent',
  credit: 'percent',
  shortfall: 'money',
  floor: 'money',
};

const PER_UNIT: Readonly<Partial<Record<FigureUnit, FigureUnit>>> = {
  kWh: 'money/kWh',
  kVAh: 'money/kVAh',
  kW: 'money/kW',
  kVA: 'money/kVA',
  count: 'money/count',
};

function rateUnit({ line, quantities }: LineContext): FigureUnit {
  if (line.kind !== 'table') return RATE_UNITS[line.kind];
  return line.quantity === ONE ? 'money' : (PER_UNIT[quantities.units[line.quantity] ?? 'kWh'] ?? 'money');
}

/** A number for a label: of a fraction that does not end, a rounded decimal. */
function shortText(text: string): string {
  const [top = '', bottom] = text.split('/');
  return bottom === undefined ? text : quotientText(BigInt(top), Number.parseInt(bottom, 10), 2);
}

/** "above 50 up to 150", for the part of a quantity that a piece charges. */
function partWords(below: Parameter | null, to: Parameter | null): string {
  const from = below === null ? '' : `above ${shortText(below.text)}`;
  return [from, to === null ? '' : `up to ${shortText(to.text)}`].filter((text) => text !== '').join(' ');
}

/** The limits of the tables of a line, lower and upper, where there are several. */
function tableChoices(context: LineContext): readonly Pick<Choice, 'above' | 'upTo'>[] {
  const { line, constants, chooserDenominator, factorText } = context;
  let above: Parameter | null = null;
  return constants.tableLimits.map((scaled, index) => {
    const stated = line.tables[index]?.limit ?? Infinity;
    const limit = {
      quantities: context.quantities,
      quantity: line.chooser,
      stated,
      scaled,
      denominator: chooserDenominator,
      clause: line.charge.clause,
    };
    const choice = { above, upTo: limitParameter('up to', limit, factorText) };
    above = asLower(choice.upTo);
    return choice;
  });
}

/** What the number of a piece is, for the explanation. */
function rateParameter(piece: Piece, unit: FigureUnit): Parameter {
  const name = unit === 'percent' ? 'percent' : unit === 'money' ? 'amount' : 'rate';
  return { name, text: piece.rateText, unit, clause: piece.clause };
}

/** The pieces of one table, each with its limits. */
function tablePieces(context: LineContext, table: number): readonly PieceTrace[] {
  const { line, constants, unitsDenominator, factorText } = context;
  const pieces = line.tables[table]?.pieces ?? [];
  const start = constants.tableStarts[table] ?? 0;
  let below: Parameter | null = null;
  return pieces.map((piece, index): PieceTrace => {
    const scaled = constants.pieces[start + index * PIECE] ?? Infinity;
    const limit = {
      quantities: context.quantities,
      quantity: line.quantity,
      stated: piece.limit,
      scaled,
      denominator: unitsDenominator,
      clause: piece.clause,
    };
    const to = limitParameter('up to', limit, factorText);
    const from: Parameter = below ?? { name: 'above', text: '0', unit: 'kWh', clause: piece.clause };
    const words = pieces.length > 1 ? partWords(below, to) : '';
    below = asLower(to);
    return {
      id: `${line.id}-${String(table)}-${String(index)}`,
      label: words === '' ? line.charge.label : `${line.charge.label}, ${words}`,
      unitsLabel: words === '' ? 'Units' : `Units ${words}`,
      limits: to === null ? [from] : [from, to],
      rate: [rateParameter(piece, rateUnit(context))],
    };
  });
}

function lineTrace(line: ShapeLine, constants: LineConstants, all: Constants): LineTrace {
  const { factors, energyScale, shape } = all;
  const { quantities } = shape;
  const factor = line.dayRule === null ? undefined : factors[line.dayRule];
  const own = factor === undefined ? '1' : exactText(factor.numerator, factor.denominator);
  const clause = shape.document.dayRules?.[line.dayRule ?? '']?.clause ?? '';
  const figure =
    factor === undefined || own === '1' ? null : factorFigure(line.dayRule ?? '', factor, clause);
  const scalesLimits = line.scaling === 'limits' || line.scaling === 'limits-and-amount';
  const scalesAmount = line.scaling === 'amount' || line.scaling === 'limits-and-amount';
  const denominator = (quantity: number, scale: number): number =>
    1000 * (isEnergy(quantities, quantity) ? energyScale : 1) * scale;
  const unitsDenominator = denominator(line.quantity, constants.scale);
  const chooserDenominator = denominator(line.chooser, constants.chooserScale);
  const factorText = scalesLimits ? own : '1';
  const context = { line, quantities, constants, unitsDenominator, chooserDenominator, factorText };
  const isAgain = !line.adds && line.id !== line.charge.id;
  return {
    line,
    label: isAgain ? `${line.charge.label} on ${line.id.split(' on ')[1] ?? ''}` : line.charge.label,
    grid: all.grid,
    isSum: line.kind === 'table' && line.tables.some((table) => table.pieces.length > 1),
    roundingClause: line.charge.rounding === undefined ? shape.document.rounding.clause : line.charge.clause,
    pieces: line.tables.flatMap((_, table) => tablePieces(context, table)),
    choices: tableChoices(context),
    unitsDenominator,
    factor: scalesAmount ? figure : null,
    limitFactor: scalesLimits && isEnergy(quantities, line.quantity) ? figure : null,
  };
}

/** How each line of bills under the same constants unfolds. */
export function traceTables(constants: Constants): readonly FigureKind<BillSource>[] {
  return constants.shape.lines.map((line, index) => {
    const own = constants.lines[index] as LineConstants;
    return lineKind(lineTrace(line, own, constants), own, constants.grid);
  });
}
