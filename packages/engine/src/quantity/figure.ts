import type { RoundingMode } from './rounding.ts';

/** What a figure counts. `money` is in the tariff's currency; `ratio` is a plain number. */
export type FigureUnit =
  'kWh' | 'kW' | 'day' | 'money' | 'money/kWh' | 'money/kW' | 'percent' | 'ratio' | 'kWh/kWp/day';

/**
 * How a figure's exact value follows from its inputs (i₁, i₂ …) and parameters (p₁ …), before rounding:
 * - `given`       typed in; nothing to compute
 * - `sum`         i₁ + i₂ + …
 * - `difference`  i₁ − i₂ − …
 * - `excess`      what i₁ exceeds i₂ + … by, or 0
 * - `least`       the least of the inputs
 * - `product`     every input × every parameter
 * - `quotient`    i₁ ÷ i₂ ÷ …
 * - `share`       p₁ percent of i₁ + i₂ + …
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
  | 'product'
  | 'quotient'
  | 'share'
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
  return { ...value, operation: 'given', inputs: NONE, parameters: NONE, rounding: null };
}
