import type { RoundingMode } from './rounding.ts';

/** What a figure counts. `money` is in the tariff's currency; `ratio` is a plain number. */
export type FigureUnit =
  | 'kWh'
  | 'kVAh'
  | 'kW'
  | 'kVA'
  | 'count'
  | 'class'
  | 'day'
  | 'money'
  | 'money/kWh'
  | 'money/kVAh'
  | 'money/kW'
  | 'money/kVA'
  | 'money/count'
  | 'percent'
  | 'ratio'
  | 'kWh/kWp/day';

/**
 * How a figure's exact value follows from its inputs (i₁, i₂ …) and parameters (p₁ …), before rounding:
 * - `given`       typed in; nothing to compute
 * - `sum`         i₁ + i₂ + …
 * - `difference`  i₁ − i₂ − …
 * - `excess`      what i₁ exceeds i₂ + … by, or 0
 * - `least`       the least of the inputs
 * - `greatest`    the greatest of the inputs
 * - `product`     every input × every parameter
 * - `quotient`    i₁ ÷ i₂ ÷ …
 * - `share`       p₁ percent of i₁ + i₂ + …
 * - `inside`      p₁ percent of the result, where i₁ + i₂ + … is what is left of it
 * - `credit`      below 0: what i₁ can meet of i₂
 * - `part`        the part of i₁ above p₁ and up to p₂ (no p₂: without end)
 * - `shortfall`   what i₂ + i₃ + … lacks of i₁, or 0
 * - `at-least`    the larger of i₁ and i₂ + i₃ + …
 */
export type Operation =
  | 'given'
  | 'sum'
  | 'difference'
  | 'excess'
  | 'least'
  | 'greatest'
  | 'product'
  | 'quotient'
  | 'share'
  | 'inside'
  | 'credit'
  | 'part'
  | 'shortfall'
  | 'at-least';

/** A number read from a document: as written, with the clause it stands in. */
export interface Parameter {
  readonly name: string;
  /** Exact, as the document writes it, or a fraction such as "190/3" where the day rule scaled it. */
  readonly text: string;
  readonly unit: FigureUnit;
  readonly clause: string;
}

/** A rounding that was carried out: the exact value before it, the step and the mode. */
export interface AppliedRounding {
  readonly step: string;
  readonly mode: RoundingMode;
  readonly clause: string;
  /** The exact value before, a quotient of whole numbers. */
  readonly numerator: number | bigint;
  readonly denominator: number;
}

/** Which of several rates, tables or steps a quantity reached. */
export interface Choice {
  /** The quantity that chose. */
  readonly by: Figure;
  /** What it is above; null for the first. */
  readonly above: Parameter | null;
  /** What it does not exceed; null for the last. */
  readonly upTo: Parameter | null;
}

/**
 * A computed amount that is its own explanation: the value, what it was computed from, which numbers of
 * which clauses were read, and how it was rounded. The value is the exact quotient
 * `numerator / denominator` of whole numbers, the denominator above 0.
 */
export interface Figure {
  readonly id: string;
  readonly label: string;
  readonly unit: FigureUnit;
  readonly numerator: number | bigint;
  readonly denominator: number;
  readonly operation: Operation;
  readonly inputs: readonly Figure[];
  readonly parameters: readonly Parameter[];
  readonly rounding: AppliedRounding | null;
  /** The clause of the rule, or where a given figure was read; empty for plain arithmetic. */
  readonly clause: string;
  /** Where a limit that a quantity reached chose the rates: which. */
  readonly choice?: Choice | null;
}

const NONE: readonly never[] = [];

/**
 * A figure that somebody typed or a meter showed.
 *
 * @param value  whole number and the decimal places it is counted in, as a quotient
 * @example
 * givenFigure({ id: 'load', label: 'Sanctioned load', unit: 'kW', numerator: 3, denominator: 1, clause: 'account' }).operation //=> "given"
 */
export function givenFigure(
  value: Pick<Figure, 'id' | 'label' | 'unit' | 'numerator' | 'denominator' | 'clause'>,
): Figure {
  return {
    id: value.id,
    label: value.label,
    unit: value.unit,
    numerator: value.numerator,
    denominator: value.denominator,
    operation: 'given',
    inputs: NONE,
    parameters: NONE,
    rounding: null,
    clause: value.clause,
  };
}

/** What figures of one kind have in common, and how one of them unfolds from what it was computed from. */
export interface FigureKind<Source> extends Pick<Figure, 'id' | 'label' | 'unit' | 'operation'> {
  readonly denominator: number;
  /** The clause, or how the source tells it. */
  readonly clause: string | ((source: Source) => string);
  /** The figures it follows from. */
  readonly inputs: (source: Source) => readonly Figure[];
  /** The numbers read; left out: none. */
  readonly parameters?: (source: Source) => readonly Parameter[];
  /** Which rates a quantity chose; left out: none were chosen. */
  readonly choice?: (source: Source) => Choice | null;
  /** The rounding that made the value; left out: none. */
  readonly rounding?: (source: Source, numerator: number | bigint) => AppliedRounding | null;
}

/** A figure that holds its value and its source, and unfolds its derivation when it is asked for. */
class UnfoldingFigure<Source> implements Figure {
  readonly numerator: number;
  private readonly kind: FigureKind<Source>;
  private readonly source: Source;
  private unfolded: readonly Figure[] | undefined;

  constructor(kind: FigureKind<Source>, numerator: number, source: Source) {
    this.numerator = numerator;
    this.kind = kind;
    this.source = source;
    this.unfolded = undefined;
  }

  get id(): string {
    return this.kind.id;
  }
  get label(): string {
    return this.kind.label;
  }
  get unit(): FigureUnit {
    return this.kind.unit;
  }
  get denominator(): number {
    return this.kind.denominator;
  }
  get operation(): Operation {
    return this.kind.operation;
  }
  get clause(): string {
    const { clause } = this.kind;
    return typeof clause === 'string' ? clause : clause(this.source);
  }
  get inputs(): readonly Figure[] {
    this.unfolded ??= this.kind.inputs(this.source);
    return this.unfolded;
  }
  get parameters(): readonly Parameter[] {
    return this.kind.parameters?.(this.source) ?? NONE;
  }
  get choice(): Choice | null {
    return this.kind.choice?.(this.source) ?? null;
  }
  get rounding(): AppliedRounding | null {
    return this.kind.rounding?.(this.source, this.numerator) ?? null;
  }
}

/**
 * A figure whose value is known and whose derivation is read, when somebody asks, from the very things
 * it was computed from. That keeps a bill with its whole explanation nearly as cheap as one without.
 *
 * @param kind       what figures of this kind have in common
 * @param numerator  the value, in the kind's denominator
 * @param source     what it was computed from; never changed afterwards
 * @example
 * unfoldingFigure({ id: 'x', label: 'X', unit: 'kWh', denominator: 1000, operation: 'given', clause: '', inputs: () => [] }, 1500, null).numerator //=> 1500
 */
export function unfoldingFigure<Source>(kind: FigureKind<Source>, numerator: number, source: Source): Figure {
  return new UnfoldingFigure(kind, numerator, source);
}

/**
 * The same figure under another name, as the one input of a sum: what one stage hands the next.
 *
 * @param words  the new id and label
 * @example
 * renamedFigure(givenFigure({ id: 'a', label: 'A', unit: 'kWh', numerator: 1, denominator: 1000, clause: '' }), { id: 'b', label: 'B' }).inputs.length //=> 1
 */
export function renamedFigure(
  figure: Figure,
  words: { readonly id: string; readonly label: string },
): Figure {
  return {
    id: words.id,
    label: words.label,
    unit: figure.unit,
    numerator: figure.numerator,
    denominator: figure.denominator,
    operation: 'sum',
    inputs: [figure],
    parameters: NONE,
    rounding: null,
    clause: '',
  };
}
