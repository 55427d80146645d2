import { commonMultiple, decimalPlaces, decimalToWhole } from '../quantity/index.ts';
import type { Charge, TariffDocument, TariffVersion } from '../tariff/index.ts';
import { quantityIndex, type QuantityName } from './quantities.ts';
import { stepRounding, type StepRounding } from './step-rounding.ts';

/** A piece of a piecewise linear table: up to a limit (thousandths, or Infinity), at a rate. */
export interface Piece {
  readonly limit: number;
  /** Money (or percent) per unit, times 10^ratePlaces. */
  readonly rate: number;
  readonly rateText: string;
  readonly clause: string;
}

/** A table of pieces, chosen while the choosing quantity is up to a limit. */
export interface Table {
  readonly limit: number;
  readonly pieces: readonly Piece[];
}

/** How the day rule acts on a line: on limits of units, or on the amount. */
export type Scaling = 'none' | 'limits' | 'amount' | 'limits-and-amount';

/**
 * A line of a bill in normal form. `table` lines are piecewise linear in one quantity; `share` lines are
 * a percentage of earlier lines; `shortfall` and `floor` compare earlier lines with a minimum.
 */
export interface ShapeLine {
  readonly kind: 'table' | 'share' | 'shortfall' | 'floor';
  readonly charge: Charge;
  readonly id: string;
  readonly quantity: number;
  readonly chooser: number;
  /** For `share` the tables hold percentages; for minimums one table with one piece, the amount. */
  readonly tables: readonly Table[];
  readonly ratePlaces: number;
  readonly scaling: Scaling;
  readonly dayRule: string | null;
  readonly rounding: StepRounding | null;
  readonly basis: readonly number[];
  /** Whether the line counts in the total: lines charged again for a base and lines under a floor do not. */
  readonly adds: boolean;
}

/** The lines of one version of the charges, in order. */
export interface Shape {
  readonly version: TariffVersion;
  readonly document: TariffDocument;
  readonly lines: readonly ShapeLine[];
  /** The largest magnitude of a rate in each line. */
  readonly largestRates: readonly number[];
}

type Row = { readonly upTo?: string | undefined; readonly clause?: string | undefined };

const limitOf = (row: Row): number => (row.upTo === undefined ? Infinity : decimalToWhole(row.upTo, 3));

/**
 * Places of the finest of some numbers; where the line is rounded at least those of the step, so that the
 * step always divides. An exact line gets no more than it needs: its grid grows with them.
 */
function placesOf(texts: readonly string[], rounding: StepRounding | null): number {
  const stepPlaces = rounding === null ? 0 : Math.max(2, decimalPlaces(rounding.rounding.step));
  return Math.max(stepPlaces, ...texts.map(decimalPlaces));
}

interface TableParts {
  readonly quantity: QuantityName;
  readonly chooser: QuantityName;
  readonly tables: readonly {
    readonly limit: number;
    readonly rows: readonly (Row & { readonly number: string })[];
  }[];
  readonly scaling: Scaling;
}

/** Each row a table of its own: the quantity reached chooses the whole. */
function eachRow(rows: readonly (Row & { readonly number: string })[]): TableParts['tables'] {
  return rows.map((row) => ({ limit: limitOf(row), rows: [{ ...row, upTo: undefined }] }));
}

const oneTable = (rows: readonly (Row & { readonly number: string })[]): TableParts['tables'] => [
  { limit: Infinity, rows },
];

const rated = (rows: readonly (Row & { readonly rate: string })[]): (Row & { number: string })[] =>
  rows.map((row) => ({ ...row, number: row.rate }));

function slabParts(charge: Charge & { kind: 'slabs' }, on: QuantityName): TableParts {
  const rows = rated(charge.slabs);
  const tables = charge.method === 'telescopic' ? oneTable(rows) : eachRow(rows);
  return { quantity: on, chooser: charge.chosenBy ?? on, tables, scaling: 'limits' };
}

function kilowattParts(charge: Charge & { kind: 'per-kilowatt' }): TableParts {
  const rows = rated(charge.bands ?? [{ rate: charge.rate ?? '0' }]);
  const chooser = charge.chosenBy ?? charge.on;
  const telescopic = charge.chosenBy === undefined && charge.method !== 'whole';
  const scaling = charge.chosenBy === undefined ? 'amount' : 'limits-and-amount';
  return { quantity: charge.on, chooser, tables: telescopic ? oneTable(rows) : eachRow(rows), scaling };
}

function fixedParts(charge: Charge & { kind: 'fixed' }): TableParts {
  const rows = (charge.steps ?? [{ amount: charge.amount ?? '0' }]).map((row) => ({
    ...row,
    number: row.amount,
  }));
  return {
    quantity: 'one',
    chooser: charge.chosenBy ?? 'one',
    tables: eachRow(rows),
    scaling: 'limits-and-amount',
  };
}

function percentParts(charge: Charge & { kind: 'percentage' }): TableParts {
  const rows = (charge.steps ?? [{ percent: charge.percent ?? '0' }]).map((row) => ({
    ...row,
    number: row.percent,
  }));
  return { quantity: 'one', chooser: charge.chosenBy ?? 'one', tables: eachRow(rows), scaling: 'none' };
}

/** The tables of a charge; `on` replaces the quantity charged when a base charges it again. */
function tableParts(charge: Charge, on?: QuantityName): TableParts {
  switch (charge.kind) {
    case 'slabs':
      return slabParts(charge, on ?? charge.on);
    case 'slab-tables':
      return {
        quantity: on ?? charge.on,
        chooser: charge.chosenBy ?? on ?? charge.on,
        tables: charge.tables.map((table) => ({ limit: limitOf(table), rows: rated(table.slabs) })),
        scaling: 'limits',
      };
    case 'per-unit': {
      const first = charge.firstUnits;
      const rows =
        first === undefined
          ? [{ number: charge.rate }]
          : [{ upTo: first, number: charge.rate }, { number: '0' }];
      return {
        quantity: on ?? charge.on,
        chooser: on ?? charge.on,
        tables: oneTable(rows),
        scaling: 'limits',
      };
    }
    case 'per-kilowatt':
      return kilowattParts(charge);
    case 'fixed':
      return fixedParts(charge);
    case 'percentage':
      return percentParts(charge);
    case 'minimum':
      return {
        quantity: 'one',
        chooser: 'one',
        tables: oneTable([{ number: charge.amount }]),
        scaling: 'amount',
      };
  }
}

function buildLine(
  charge: Charge,
  document: TariffDocument,
  rest: Pick<ShapeLine, 'basis' | 'adds' | 'id'>,
  on?: QuantityName,
): ShapeLine {
  const parts = tableParts(charge, on);
  const rounding = stepRounding(charge.rounding ?? document.rounding.line);
  const numbers = parts.tables.flatMap((table) => table.rows.map((row) => row.number));
  const ratePlaces = placesOf(numbers, rounding);
  const dayRule = 'scaledBy' in charge ? (charge.scaledBy ?? null) : null;
  return {
    kind: charge.kind === 'percentage' ? 'share' : charge.kind === 'minimum' ? charge.as : 'table',
    charge,
    ...rest,
    quantity: quantityIndex(parts.quantity),
    chooser: quantityIndex(parts.chooser),
    tables: parts.tables.map((table) => ({
      limit: table.limit,
      pieces: table.rows.map((row) => ({
        limit: limitOf(row),
        rate: decimalToWhole(row.number, ratePlaces),
        rateText: row.number,
        clause: row.clause ?? charge.clause,
      })),
    })),
    ratePlaces,
    scaling: dayRule === null ? 'none' : parts.scaling,
    dayRule,
    rounding,
  };
}

type Base = (Charge & { kind: 'percentage' })['of'][number];

/**
 * Bring the charges of a version into normal form: a list of lines that one small evaluator can walk.
 *
 * A base that charges a line again on another quantity becomes a line of its own that does not count in
 * the total; lines that a floor stands in for do not count either.
 */
export function shapeOf(version: TariffVersion, document: TariffDocument): Shape {
  const lines: ShapeLine[] = [];
  const at = new Map<string, number>();
  const add = (line: ShapeLine): number => lines.push(line) - 1;
  const baseIndex = (base: Base): number => {
    if (typeof base === 'string') return at.get(base) ?? -1;
    const charge = version.charges.find((one) => one.id === base.line) as Charge;
    const id = `${base.line} on ${base.recomputedOn}`;
    return (
      at.get(id) ??
      remember(id, buildLine(charge, document, { id, basis: [], adds: false }, base.recomputedOn))
    );
  };
  const remember = (id: string, line: ShapeLine): number => {
    const index = add(line);
    at.set(id, index);
    return index;
  };
  for (const charge of version.charges) {
    const basis = 'of' in charge ? charge.of.map(baseIndex) : [];
    if (charge.kind === 'minimum' && charge.as === 'floor') {
      for (const index of basis) lines[index] = { ...(lines[index] as ShapeLine), adds: false };
    }
    remember(charge.id, buildLine(charge, document, { id: charge.id, basis, adds: true }));
  }
  const largestRates = lines.map(({ tables }) =>
    Math.max(...tables.flatMap((table) => table.pieces.map((piece) => Math.abs(piece.rate)))),
  );
  return { version, document, lines, largestRates };
}

/** The least common denominator of some numbers. */
export function leastCommonDenominator(denominators: readonly number[]): number {
  return denominators.reduce(commonMultiple, 1);
}
