import type { DayNumber, Figure, FigureKind, Period } from '../quantity/index.ts';
import type { Definition, NamedQuantity } from '../tariff/index.ts';

/** A period settled before: what later ones add up. Quantities in whole thousandths. */
export interface PastPeriod {
  readonly period: Period;
  readonly quantities: Readonly<Record<string, number>>;
}

/** What an account tells a settlement besides its readings; null where it does not. */
export interface AccountDays {
  /** The first day of the account. */
  readonly since: DayNumber | null;
  /** The day of the year, as mm-dd, that its owner chose for the settlement. */
  readonly settlementDay: string | null;
}

/** A quantity as steps work on it: its place in the vector, or a number of the document. */
export interface Operand {
  /** Place in the vector; −1 for a number. */
  readonly at: number;
  /** A number, as a whole number of 1/scale. */
  readonly whole: number;
  readonly scale: number;
  readonly text: string;
}

/** What a period is worked out from: the vector fills as the steps go. */
export interface SettleContext {
  /** Whole thousandths, in the order of the names. */
  readonly values: Float64Array;
  /** Figures of the quantities that were given; null for those worked out. */
  readonly given: readonly (Figure | null)[];
  readonly period: Period;
  readonly past: readonly PastPeriod[];
  readonly account: AccountDays;
}

/** One definition with its operands in place. */
export interface PreparedStep {
  readonly definition: Definition;
  readonly operands: readonly Operand[];
  /** Where its result goes. */
  readonly at: number;
  readonly run: (context: SettleContext) => void;
}

/** The quantities of a settlement rule in normal form. */
export interface PreparedQuantities {
  readonly names: readonly string[];
  readonly named: readonly NamedQuantity[];
  readonly at: ReadonlyMap<string, number>;
  readonly steps: readonly PreparedStep[];
  /** The step that works out each quantity; null for those given. */
  readonly madeBy: readonly (PreparedStep | null)[];
  /** How each unfolds; null for those given. */
  readonly kinds: readonly (FigureKind<never> | null)[];
  /** The given quantities that steps or ledgers or charges use. */
  readonly needed: readonly number[];
}

/** What quantities are explained from. */
export interface QuantitySource {
  readonly prepared: PreparedQuantities;
  readonly context: SettleContext;
}

/** One quantity under explanation. */
export interface StepSource extends QuantitySource {
  readonly step: PreparedStep;
  readonly at: number;
}
