import type { Figure, Outcome, Path } from '../quantity/index.ts';
import type { EnergyPeriod, UnitsRule } from '../energy/index.ts';
import type { UnitNettingRule } from '../tariff/index.ts';
import { settlementFinding } from './findings.ts';
import type { SurplusPayment } from './ledger-entry.ts';
import { moveFigures } from './move-figures.ts';
import { SettlementProblem } from './settlement-problem.ts';
import { cappedQuantity, moveUnits, wattHours } from './unit-moves.ts';

const NONE: readonly never[] = [];

/**
 * One line of the passbook, in units: `opening + exported = setOff + paid + lapsed + closing` and
 * `imported = setOff + billed`.
 */
export interface PassbookEntry {
  readonly energy: EnergyPeriod;
  readonly opening: Figure;
  readonly imported: Figure;
  readonly exported: Figure;
  /** Units set off against import: of this period's export and of the credit brought forward. */
  readonly setOff: Figure;
  /** Of the units set off, those of the credit brought forward. */
  readonly creditUsed: Figure;
  readonly billed: Figure;
  readonly paid: Figure;
  readonly lapsed: Figure;
  readonly closing: Figure;
  readonly payment: SurplusPayment | null;
  /** Whether the bank closed with this period. */
  readonly isClosed: boolean;
}

/** How a period is settled. */
export interface SettlePeriodOptions {
  readonly rule: UnitNettingRule;
  readonly opening: Figure;
  readonly unitsRule: UnitsRule;
  /** The number and clause that a rate stands for; left out: the rate is its own number. */
  readonly rateOf?: (rate: string) => { readonly text: string; readonly clause: string };
  /** Where the reading stands that closes the period, for findings. */
  readonly path: Path;
}

function paymentFor(paid: Figure, { rule: { close }, rateOf }: SettlePeriodOptions): SurplusPayment | null {
  if (wattHours(paid) === 0 || close.rate === undefined || close.inBill === undefined) return null;
  const label = close.label ?? 'Surplus units paid';
  const price = rateOf?.(close.rate);
  const clause = price === undefined || price.clause === '' ? close.clause : price.clause;
  return { units: paid, rate: price?.text ?? close.rate, clause, label, inBill: close.inBill };
}

/**
 * Settle one billing period by unit netting: set export and credit off against import, bill the rest,
 * and carry, pay or drop what is left over.
 *
 * @param energy   of the period
 * @param options  the rule in force, the credit brought forward and how units are counted
 * @returns        the passbook entry, or null with a finding when a capped quantity is not known
 */
export function settlePeriod(
  energy: EnergyPeriod,
  options: SettlePeriodOptions,
): Outcome<PassbookEntry | null> {
  const { rule, opening, unitsRule, path } = options;
  if (rule.cap !== undefined && cappedQuantity(energy, rule.cap) === null) {
    return {
      value: null,
      findings: [settlementFinding('settlement/quantity-unknown', { path }, { quantity: rule.cap.of })],
    };
  }
  const moves = moveUnits({ energy, opening, rule, unitsRule });
  const figures = moveFigures({ energy, opening, rule, unitsRule, moves });
  let payment: SurplusPayment | null;
  try {
    payment = paymentFor(figures.paid, options);
  } catch (error) {
    if (!(error instanceof SettlementProblem)) throw error;
    return { value: null, findings: [settlementFinding(error.code, { path }, error.values)] };
  }
  const value: PassbookEntry = {
    energy,
    opening,
    imported: energy.import,
    exported: energy.export,
    setOff: figures.setOff,
    creditUsed: figures.creditUsed,
    billed: figures.billed,
    paid: figures.paid,
    lapsed: figures.lapsed,
    closing: figures.closing,
    payment,
    isClosed: moves.isClosed,
  };
  return { value, findings: NONE };
}
