import type { Choice, Figure, Parameter } from '../quantity/index.ts';
import type { ShapeLine } from './shape.ts';

/** What explanations of one piece need and no bill changes. */
export interface PieceTrace {
  readonly id: string;
  readonly label: string;
  readonly unitsLabel: string;
  /** Limits of the part, lower first; the upper is left out where there is none. */
  readonly limits: readonly Parameter[];
  readonly rate: readonly Parameter[];
}

/** What explanations of one line need and no bill changes. */
export interface LineTrace {
  readonly line: ShapeLine;
  readonly label: string;
  /** Amounts are counted in 1/grid of money. */
  readonly grid: number;
  /** Whether the line is a sum of parts at their own rates, and not one product. */
  readonly isSum: boolean;
  /** The clause that says how the line is rounded. */
  readonly roundingClause: string;
  readonly pieces: readonly PieceTrace[];
  /** Limits of the tables, lower and upper, where a quantity chooses among several. */
  readonly choices: readonly Pick<Choice, 'above' | 'upTo'>[];
  /** Denominator of the scaled quantity. */
  readonly unitsDenominator: number;
  /** The day factor where it scales limits of units. */
  readonly limitFactor: Figure | null;
  /** The day factor where it multiplies the amount. */
  readonly factor: Figure | null;
}
