import type { Period, Quotient } from '../quantity/index.ts';
import type { TariffDocument } from '../tariff/index.ts';
import type { Register } from '../readings/index.ts';

/** The name of a register: "import", "export", "generation", or one of a rate such as "import-1". */
export type RegisterKey = string;

/** What a register showed at both ends of a period, in thousandths as it displays them. */
export interface RegisterFacts {
  readonly register: Register;
  readonly previous: number;
  readonly present: number;
  /** Whether it passed its full scale in between. */
  readonly passed: boolean;
}

/** A line that stands on a bill besides the tariff's charges: arrears, a late fee, an adjustment. */
export interface AccountLine {
  readonly id: string;
  readonly label: string;
  readonly amount: Quotient;
}

/** What a bill does with surplus that the settlement before it left to be paid. */
export type SurplusFacts =
  | { readonly kind: 'as-due' }
  | { readonly kind: 'not-paid' }
  | { readonly kind: 'at-rate'; readonly rate: string };

/**
 * Everything that one bill is made of, right or wrong: a cause of a wrong bill is a small change of it.
 * Units, powers and credit are in whole thousandths.
 */
export interface BillFacts {
  readonly tariff: TariffDocument;
  readonly period: Period;
  /** What the registers showed, by key; empty where only units are known. */
  readonly registers: Readonly<Record<RegisterKey, RegisterFacts>>;
  /** The same for registers whose meter was changed inside the period, meter by meter; left out: none was. */
  readonly stretches?: readonly RegisterFacts[];
  /** Units by the names of the tariff: import, export, generation, import@peak, and measures. */
  readonly units: Readonly<Record<string, number>>;
  /** Powers and the like of the account by the names of the tariff. */
  readonly powers: Readonly<Record<string, number>>;
  /** Credit brought forward by ledger ("credit" of unit netting), where it is not what the chain hands on. */
  readonly opening: Readonly<Record<string, number>>;
  readonly surplus: SurplusFacts;
  readonly accountLines: readonly AccountLine[];
  /** Figures that the bill shows otherwise than they follow from the rest, by name: a stale reading, a count of days. */
  readonly shown: Readonly<Record<string, Quotient>>;
}

/** A quotient of thousandths. */
export const thousandths = (numerator: number): Quotient => ({ numerator, denominator: 1000 });

/** Whole thousandths of a figure; null where there is none, or it is finer. */
export function thousandthsOf(value: Quotient | undefined): number | null {
  if (value === undefined || typeof value.numerator === 'bigint') return null;
  const whole = (value.numerator * 1000) / value.denominator;
  return Number.isInteger(whole) ? whole : null;
}

/** Facts with some units replaced. */
export function withUnits(facts: BillFacts, units: Readonly<Record<string, number>>): BillFacts {
  return { ...facts, units: { ...facts.units, ...units } };
}

/** Facts that show some figures otherwise. */
export function withShown(facts: BillFacts, shown: Readonly<Record<string, Quotient>>): BillFacts {
  return { ...facts, shown: { ...facts.shown, ...shown } };
}
