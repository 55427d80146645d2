import type { Figure, Outcome, Path } from '../quantity/index.ts';
import type { EnergyPeriod, UnitsRule } from '../energy/index.ts';
import type { SettlementRule } from '../tariff/index.ts';
import { holdsDayOfYear } from './close-day.ts';
import { settlementFinding } from './findings.ts';
import { cappedQuantity, setOffUnits, type SetOff } from './set-off.ts';
import { lessUnits, noUnits, sumOfUnits, unitFigure, wattHours } from './unit-figure.ts';

/** Surplus units that are paid for. */
export interface SurplusPayment {
  readonly units: Figure;
  /** Money per unit, as the document writes it. */
  readonly rate: string;
  readonly clause: string;
  readonly label: string;
  readonly inBill: 'same' | 'next';
}

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
  readonly rule: SettlementRule;
  readonly opening: Figure;
  readonly unitsRule: UnitsRule;
  /** Where the reading stands that closes the period, for findings. */
  readonly path: Path;
}

/** What happens to the units left over: paid, lapsed or carried on. */
function disposeOf(
  { left, keptByCap }: SetOff,
  isClosed: boolean,
  rule: SettlementRule,
): Pick<PassbookEntry, 'paid' | 'lapsed' | 'closing'> {
  const { close, cap, carry } = rule;
  const cut = cap?.excess === 'lapses' && keptByCap !== null ? keptByCap : null;
  const rest =
    cut === null ? left : lessUnits('rest', 'Units left over below the cap', [left, cut], cap?.clause ?? '');
  const isPaid = isClosed && close.surplus === 'paid';
  const isDropped = isClosed && close.surplus === 'lapses';
  const paid = isPaid
    ? sumOfUnits('paid', 'Units paid', [rest], close.clause)
    : noUnits('paid', 'Units paid', close.clause);
  const gone = [...(cut === null ? [] : [cut]), ...(isDropped ? [rest] : [])];
  const lapsed =
    gone.length === 0
      ? noUnits('lapsed', 'Units lapsed', close.clause)
      : sumOfUnits('lapsed', 'Units lapsed', gone, isDropped ? close.clause : (cap?.clause ?? ''));
  const closing = lessUnits(
    'closing',
    'Credit carried forward',
    [left, paid, lapsed],
    carry?.clause ?? close.clause,
  );
  return { paid, lapsed, closing };
}

function paymentFor(paid: Figure, { close }: SettlementRule): SurplusPayment | null {
  if (wattHours(paid) === 0 || close.rate === undefined || close.inBill === undefined) return null;
  const label = close.label ?? 'Surplus units paid';
  return { units: paid, rate: close.rate, clause: close.clause, label, inBill: close.inBill };
}

function creditUsed(setOff: Figure, exported: Figure, clause: string): Figure {
  const numerator = Math.max(0, wattHours(setOff) - wattHours(exported));
  const from = { operation: 'excess', inputs: [setOff, exported], clause } as const;
  return unitFigure({ id: 'credit-used', label: 'Credit units used', numerator }, from);
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
  const { import: imported, export: exported } = energy;
  const quantity = rule.cap === undefined ? null : cappedQuantity(energy, rule.cap);
  if (rule.cap !== undefined && quantity === null) {
    return {
      value: null,
      findings: [settlementFinding('settlement/quantity-unknown', { path }, { quantity: rule.cap.of })],
    };
  }
  const set = setOffUnits(
    { imported, exported, opening },
    rule,
    quantity === null ? null : { quantity, unitsRule },
  );
  const isClosed = rule.close.on === 'every-period' || holdsDayOfYear(energy.period, rule.close.on);
  const end = disposeOf(set, isClosed, rule);
  const value: PassbookEntry = {
    energy,
    opening,
    imported,
    exported,
    setOff: set.setOff,
    creditUsed: creditUsed(set.setOff, exported, rule.clause),
    billed: lessUnits('billed', 'Units billed', [imported, set.setOff], rule.clause),
    ...end,
    payment: paymentFor(end.paid, rule),
    isClosed,
  };
  return { value, findings: [] };
}
