import { decimalPlaces, decimalToWhole } from '../quantity/index.ts';
import type { Charge } from '../tariff/index.ts';
import { ledgerName, type QuantityName } from './quantities.ts';
import type { StepRounding } from './step-rounding.ts';

/** How the day rule acts on a line: on limits of units, or on the amount. */
export type Scaling = 'none' | 'limits' | 'amount' | 'limits-and-amount';

/** A row of a table as a document writes it. */
export type Row = { readonly upTo?: string | undefined; readonly clause?: string | undefined };

/** The limit of a row in thousandths; Infinity for none. */
export const limitOf = (row: Row): number =>
  row.upTo === undefined ? Infinity : decimalToWhole(row.upTo, 3);

/**
 * Places of the finest of some numbers; where the line is rounded at least those of the step, so that the
 * step always divides. An exact line gets no more than it needs: its grid grows with them.
 */
export function placesOf(texts: readonly string[], rounding: StepRounding | null): number {
  const stepPlaces = rounding === null ? 0 : Math.max(2, decimalPlaces(rounding.rounding.step));
  return Math.max(stepPlaces, ...texts.map(decimalPlaces));
}

/** What a line is a table of. */
export interface TableParts {
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
export function tableParts(charge: Charge, on?: QuantityName): TableParts {
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
    case 'credit':
      return {
        quantity: charge.ledger === undefined ? 'one' : ledgerName(charge.ledger),
        chooser: 'one',
        tables: oneTable([{ number: charge.percent ?? '100' }]),
        scaling: 'none',
      };
    case 'minimum':
      return {
        quantity: 'one',
        chooser: 'one',
        tables: oneTable([{ number: charge.amount }]),
        scaling: 'amount',
      };
  }
}
