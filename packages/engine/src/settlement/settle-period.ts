import {
  decimalPlaces,
  decimalToWhole,
  roundQuotient,
  wholeToDecimal,
  type Figure,
  type Finding,
} from '../quantity/index.ts';
import type { EnergyPeriod, UnitsRule } from '../energy/index.ts';
import type { SettlementRule } from '../tariff/index.ts';
import { holdsDayOfYear } from './close-day.ts';
import { settlementFinding } from './findings.ts';

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

const NONE: readonly never[] = [];

const whole = (figure: Figure): number => figure.numerator as number;

function units(
  id: string,
  label: string,
  numerator: number,
  how: {
    readonly operation: Figure['operation'];
    readonly inputs: readonly Figure[];
    readonly clause: string;
  },
): Figure {
  return { id, label, unit: 'kWh', numerator, denominator: 1000, parameters: NONE, rounding: null, ...how };
}

const zeroUnits = (id: string, label: string, clause: string): Figure =>
  units(id, label, 0, { operation: 'given', inputs: NONE, clause });

/** The most units a cap lets be set off in the period, rounded as the tariff counts units. */
function capFigure(cap: NonNullable<SettlementRule['cap']>, quantity: Figure, rule: UnitsRule): Figure {
  const places = decimalPlaces(cap.percent);
  const step = 10 ** (3 - (rule.decimals.charCodeAt(0) - 48));
  const numerator = whole(quantity) * decimalToWhole(cap.percent, places);
  const denominator = 100 * 10 ** places;
  const value = roundQuotient(numerator, denominator * step, rule.rounding) * step;
  const exact = value * denominator === numerator;
  return {
    ...units('cap', 'Most that may be set off', value, {
      operation: 'share',
      inputs: [quantity],
      clause: cap.clause,
    }),
    parameters: [{ name: 'cap', text: cap.percent, unit: 'percent', clause: cap.clause }],
    rounding: exact
      ? null
      : {
          step: wholeToDecimal(1, rule.decimals.charCodeAt(0) - 48),
          mode: rule.rounding,
          clause: rule.clause,
          numerator,
          denominator: denominator * 1000,
        },
  };
}

function cappedQuantity(energy: EnergyPeriod, of: 'import' | 'generation' | 'total-use'): Figure | null {
  return of === 'import' ? energy.import : of === 'generation' ? energy.generation : energy.totalUse;
}

/** What is left of the available units after the set-off, and what of it a cap makes lapse. */
interface Leftover {
  readonly setOff: Figure;
  readonly cutByCap: number;
}

function setOffUnits(available: Figure, imported: Figure, cap: Figure | null, clause: string): Leftover {
  const wanted = Math.min(whole(available), whole(imported));
  const value = cap === null ? wanted : Math.min(wanted, whole(cap));
  const inputs = cap === null ? [imported, available] : [imported, available, cap];
  return {
    setOff: units('set-off', 'Units set off', value, { operation: 'least', inputs, clause }),
    cutByCap: wanted - value,
  };
}

/** How a period is settled. */
export interface SettlePeriodOptions {
  readonly rule: SettlementRule;
  readonly opening: Figure;
  readonly unitsRule: UnitsRule;
}

/** What happens to the units left over: paid, lapsed or carried on. */
function disposeOf(left: Figure, cutByCap: number, energy: EnergyPeriod, rule: SettlementRule) {
  const { close, cap } = rule;
  const isClosed = close.on === 'every-period' || holdsDayOfYear(energy.period, close.on);
  const lapsedByCap = cap?.excess === 'lapses' ? cutByCap : 0;
  const rest = whole(left) - lapsedByCap;
  const paid = isClosed && close.surplus === 'paid' ? rest : 0;
  const lapsed = lapsedByCap + (isClosed && close.surplus === 'lapses' ? rest : 0);
  return { isClosed, paid, lapsed };
}

function paymentFor(paid: Figure, { close }: SettlementRule): SurplusPayment | null {
  if (whole(paid) === 0 || close.rate === undefined || close.inBill === undefined) return null;
  const label = close.label ?? 'Surplus units paid';
  return { units: paid, rate: close.rate, clause: close.clause, label, inBill: close.inBill };
}

/** An amount of units that the arithmetic below fixes: an input less what goes elsewhere. */
function moved(id: string, label: string, value: number, left: Figure, clause: string): Figure {
  if (value === 0) return zeroUnits(id, label, clause);
  if (value === whole(left)) return { ...left, id, label, operation: 'sum', inputs: [left], clause };
  return units(id, label, value, { operation: 'given', inputs: NONE, clause });
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
  { rule, opening, unitsRule }: SettlePeriodOptions,
): { value: PassbookEntry | null; findings: readonly Finding[] } {
  const { import: imported, export: exported } = energy;
  const quantity = rule.cap === undefined ? null : cappedQuantity(energy, rule.cap.of);
  if (rule.cap !== undefined && quantity === null) {
    const finding = settlementFinding(
      'settlement/quantity-unknown',
      { path: ['settlements'] },
      { quantity: rule.cap.of },
    );
    return { value: null, findings: [finding] };
  }
  const cap = rule.cap === undefined || quantity === null ? null : capFigure(rule.cap, quantity, unitsRule);
  const available = units(
    'available',
    'Export and credit brought forward',
    whole(exported) + whole(opening),
    {
      operation: 'sum',
      inputs: [exported, opening],
      clause: rule.clause,
    },
  );
  const { setOff, cutByCap } = setOffUnits(available, imported, cap, rule.clause);
  const left = units('left', 'Units left over', whole(available) - whole(setOff), {
    operation: 'difference',
    inputs: [available, setOff],
    clause: rule.clause,
  });
  const end = disposeOf(left, cutByCap, energy, rule);
  const paid = moved('paid', 'Units paid', end.paid, left, rule.close.clause);
  const lapsed = moved('lapsed', 'Units lapsed', end.lapsed, left, rule.cap?.clause ?? rule.close.clause);
  return {
    value: {
      energy,
      opening,
      imported,
      exported,
      setOff,
      creditUsed: units('credit-used', 'Credit units used', Math.max(0, whole(setOff) - whole(exported)), {
        operation: 'excess',
        inputs: [setOff, exported],
        clause: rule.clause,
      }),
      billed: units('billed', 'Units billed', whole(imported) - whole(setOff), {
        operation: 'difference',
        inputs: [imported, setOff],
        clause: rule.clause,
      }),
      paid,
      lapsed,
      closing: units('closing', 'Credit carried forward', whole(left) - end.paid - end.lapsed, {
        operation: 'difference',
        inputs: [left, paid, lapsed],
        clause: rule.carry?.clause ?? rule.close.clause,
      }),
      payment: paymentFor(paid, rule),
      isClosed: end.isClosed,
    },
    findings: NONE,
  };
}
