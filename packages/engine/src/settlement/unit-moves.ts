import { decimalPlaces, decimalToWhole, wholeProduct, wholeSteps, type Figure } from '../quantity/index.ts';
import type { EnergyPeriod, UnitsRule } from '../energy/index.ts';
import type { UnitNettingRule } from '../tariff/index.ts';
import { holdsDayOfYear } from './close-day.ts';

/** A cap on what may be set off. */
export type Cap = NonNullable<UnitNettingRule['cap']>;

/** What a period is settled from. */
export interface SettleSource {
  readonly energy: EnergyPeriod;
  readonly opening: Figure;
  readonly rule: UnitNettingRule;
  readonly unitsRule: UnitsRule;
}

/** Where the units of a period go, in whole watt-hours. */
export interface UnitMoves {
  /** Export and credit brought forward. */
  readonly available: number;
  /** What would be set off without a cap. */
  readonly wanted: number;
  /** The most a cap allows; null without one. */
  readonly most: number | null;
  readonly setOff: number;
  readonly left: number;
  readonly paid: number;
  readonly lapsed: number;
  readonly closing: number;
  readonly isClosed: boolean;
}

/** Watt-hours of a figure of units. */
export function wattHours(figure: Figure): number {
  return figure.numerator as number;
}

/** The quantity a cap is a share of; null where it is not known. */
export function cappedQuantity(energy: EnergyPeriod, cap: Cap): Figure | null {
  return cap.of === 'import' ? energy.import : cap.of === 'generation' ? energy.generation : energy.totalUse;
}

/** The exact share of a cap before it is rounded as the tariff counts units, over 100 · 10^places. */
export function capShare(
  cap: Cap,
  quantity: Figure,
): { readonly numerator: number | bigint; readonly denominator: number } {
  const places = decimalPlaces(cap.percent);
  return {
    numerator: wholeProduct(wattHours(quantity), decimalToWhole(cap.percent, places)),
    denominator: 100 * 10 ** places,
  };
}

/** The most units that may be set off under the rule's cap. */
function mostUnits({ energy, rule, unitsRule }: SettleSource): number | null {
  const quantity = rule.cap === undefined ? null : cappedQuantity(energy, rule.cap);
  if (rule.cap === undefined || quantity === null) return null;
  const step = 10 ** (3 - (unitsRule.decimals.charCodeAt(0) - 48));
  return (
    wholeSteps(capShare(rule.cap, quantity), { numerator: step, denominator: 1 }, unitsRule.rounding) * step
  );
}

/**
 * Work out where the units of a period go: set off, paid, lapsed or carried on.
 *
 * `opening + exported = setOff + paid + lapsed + closing`, whatever the rule.
 */
export function moveUnits(source: SettleSource): UnitMoves {
  const { energy, opening, rule } = source;
  const imported = wattHours(energy.import);
  const available = wattHours(energy.export) + wattHours(opening);
  const wanted = available < imported ? available : imported;
  const most = rule.cap === undefined ? null : mostUnits(source);
  const setOff = most !== null && most < wanted ? most : wanted;
  const left = available - setOff;
  const isClosed = rule.close.on === 'every-period' || holdsDayOfYear(energy.period, rule.close.on);
  const cut = rule.cap?.excess === 'lapses' ? wanted - setOff : 0;
  const rest = left - cut;
  const paid = isClosed && rule.close.surplus === 'paid' ? rest : 0;
  const lapsed = cut + (isClosed && rule.close.surplus === 'lapses' ? rest : 0);
  return { available, wanted, most, setOff, left, paid, lapsed, closing: left - paid - lapsed, isClosed };
}
