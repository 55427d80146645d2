import { commonMultiple, decimalToWhole } from '../quantity/index.ts';
import type { Charge, TariffDocument, TariffVersion } from '../tariff/index.ts';
import { QuantityList, type NamedQuantities, type QuantityName } from './quantities.ts';
import { stepRounding, type StepRounding } from './step-rounding.ts';
import { limitOf, placesOf, tableParts, type Row, type Scaling } from './table-parts.ts';

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

/**
 * A line of a bill in normal form. `table` lines are piecewise linear in one quantity; `share` lines are
 * a percentage of earlier lines; `shortfall` and `floor` compare earlier lines with a minimum; `credit`
 * lines set a balance and what was earned off against earlier lines.
 */
export interface ShapeLine {
  readonly kind: 'table' | 'share' | 'shortfall' | 'floor' | 'credit';
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
  /** For `credit`: the lines whose amounts are the credit earned. */
  readonly earned: readonly number[];
  /** For `share`: a percentage of the base with the line itself in it. */
  readonly isInside: boolean;
  /** Whether the line counts in the total: lines charged again for a base and lines under a floor do not. */
  readonly adds: boolean;
}

/** The lines of one version of the charges, in order. */
export interface Shape {
  readonly version: TariffVersion;
  readonly document: TariffDocument;
  readonly lines: readonly ShapeLine[];
  /** The quantities that lines are charged on or chosen by, and balances of money. */
  readonly quantities: NamedQuantities;
  /** The largest magnitude of a rate in each line. */
  readonly largestRates: readonly number[];
}

/** The number that a rate of the document stands for, with the clause of a price; empty for a plain number. */
export type RateReader = (rate: string) => { readonly text: string; readonly clause: string };

/** What a version is brought into normal form with. */
export interface ShapeOptions {
  /** What prices come to; left out: every rate is a number. */
  readonly rateOf?: RateReader;
  /** The seasons in force; charges of others are left out. Left out: no charge has one. */
  readonly seasons?: ReadonlySet<string>;
}

interface Rest {
  readonly id: string;
  readonly basis: readonly number[];
  readonly earned: readonly number[];
  readonly adds: boolean;
}

const LINE_KINDS = { percentage: 'share', minimum: 'shortfall', credit: 'credit' } as const;

function kindOf(charge: Charge): ShapeLine['kind'] {
  if (charge.kind === 'minimum') return charge.as;
  return charge.kind === 'percentage' || charge.kind === 'credit' ? LINE_KINDS[charge.kind] : 'table';
}

/** Credit is exact unless its charge says otherwise: what is not used must not be rounded away. */
function roundingOf(charge: Charge, document: TariffDocument): StepRounding | null {
  const isExact = charge.kind === 'credit' && charge.percent === undefined;
  return isExact ? null : stepRounding(charge.rounding ?? document.rounding.line);
}

/** Builds the lines of one version, naming quantities as it goes. */
class LineBuilder {
  readonly quantities: QuantityList;
  private readonly document: TariffDocument;
  private readonly rateOf: RateReader;

  constructor(document: TariffDocument, rateOf: RateReader) {
    this.document = document;
    this.rateOf = rateOf;
    this.quantities = new QuantityList(document);
  }

  build(charge: Charge, rest: Rest, on?: QuantityName): ShapeLine {
    const parts = tableParts(charge, on);
    const tables = parts.tables.map((table) => ({
      limit: table.limit,
      rows: table.rows.map((row) => ({ ...row, ...this.numberOf(row, charge.clause) })),
    }));
    const rounding = roundingOf(charge, this.document);
    const texts = tables.flatMap((table) => table.rows.map((row) => row.number));
    const ratePlaces = placesOf(texts, rounding);
    const dayRule = 'scaledBy' in charge ? (charge.scaledBy ?? null) : null;
    return {
      ...rest,
      kind: kindOf(charge),
      charge,
      quantity: this.quantities.indexOf(parts.quantity),
      chooser: this.quantities.indexOf(parts.chooser),
      tables: tables.map((table) => ({
        limit: table.limit,
        pieces: table.rows.map((row) => ({
          limit: limitOf(row),
          rate: decimalToWhole(row.number, ratePlaces),
          rateText: row.number,
          clause: row.clause,
        })),
      })),
      ratePlaces,
      scaling: dayRule === null ? 'none' : parts.scaling,
      dayRule,
      rounding,
      isInside: charge.kind === 'percentage' && charge.inside === true,
    };
  }

  /** The number of a row, and the clause it stands in: of a price, the price's. */
  private numberOf(row: Row & { readonly number: string }, clause: string) {
    const { text, clause: own } = this.rateOf(row.number);
    return { number: text, clause: own === '' ? (row.clause ?? clause) : own };
  }
}

const asWritten: RateReader = (rate) => ({ text: rate, clause: '' });

/** The charges that apply in the seasons in force. */
function inSeason(version: TariffVersion, seasons: ReadonlySet<string> | undefined): readonly Charge[] {
  return version.charges.filter(({ season }) => season === undefined || seasons?.has(season) === true);
}

type Base = (Charge & { kind: 'percentage' })['of'][number];

/** Collects lines in order, and those that a base charges again. */
class LineCollector {
  readonly lines: ShapeLine[] = [];
  private readonly at = new Map<string, number>();
  private readonly charges: readonly Charge[];
  private readonly builder: LineBuilder;
  /** Lines that earn credit, in season or not: no part of the sum. */
  private readonly earning: ReadonlySet<string>;

  constructor(charges: readonly Charge[], builder: LineBuilder, all: readonly Charge[]) {
    this.charges = charges;
    this.builder = builder;
    this.earning = new Set(all.flatMap((charge) => (charge.kind === 'credit' ? (charge.earned ?? []) : [])));
  }

  private remember(id: string, line: ShapeLine): number {
    const index = this.lines.push(line) - 1;
    this.at.set(id, index);
    return index;
  }

  /** Places of lines; of those out of season there are none. */
  private places(bases: readonly Base[]): readonly number[] {
    return bases.flatMap((base) => {
      const id = typeof base === 'string' ? base : `${base.line} on ${base.recomputedOn}`;
      const known = this.at.get(id);
      if (known !== undefined || typeof base === 'string') return known ?? [];
      const charge = this.charges.find((one) => one.id === base.line);
      if (charge === undefined) return [];
      const rest = { id, basis: [], earned: [], adds: false };
      return this.remember(id, this.builder.build(charge, rest, base.recomputedOn));
    });
  }

  private leaveOut(places: readonly number[]): void {
    for (const index of places) this.lines[index] = { ...(this.lines[index] as ShapeLine), adds: false };
  }

  add(charge: Charge): void {
    const basis =
      'of' in charge ? this.places(charge.of) : charge.kind === 'credit' ? this.places(charge.against) : [];
    const earned = charge.kind === 'credit' ? this.places(charge.earned ?? []) : [];
    if (charge.kind === 'minimum' && charge.as === 'floor') this.leaveOut(basis);
    const rest = {
      id: charge.id,
      basis,
      earned,
      adds: charge.inTotal !== false && !this.earning.has(charge.id),
    };
    this.remember(charge.id, this.builder.build(charge, rest));
  }
}

/**
 * Bring the charges of a version into normal form: a list of lines that one small evaluator can walk.
 *
 * A base that charges a line again on another quantity becomes a line of its own that does not count in
 * the total; lines that a floor stands in for, and lines that earn a credit, do not count either.
 */
export function shapeOf(version: TariffVersion, document: TariffDocument, options: ShapeOptions = {}): Shape {
  const builder = new LineBuilder(document, options.rateOf ?? asWritten);
  const charges = inSeason(version, options.seasons);
  const collector = new LineCollector(charges, builder, version.charges);
  for (const charge of charges) collector.add(charge);
  const { lines } = collector;
  const largestRates = lines.map(({ tables }) =>
    Math.max(...tables.flatMap((table) => table.pieces.map((piece) => Math.abs(piece.rate)))),
  );
  return { version, document, lines, quantities: builder.quantities, largestRates };
}

/** The least common denominator of some numbers. */
export function leastCommonDenominator(denominators: readonly number[]): number {
  return denominators.reduce(commonMultiple, 1);
}
