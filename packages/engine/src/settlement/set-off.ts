import {
  decimalPlaces,
  decimalToWhole,
  roundQuotient,
  wholeToDecimal,
  type Figure,
} from '../quantity/index.ts';
import type { EnergyPeriod, UnitsRule } from '../energy/index.ts';
import type { SettlementRule } from '../tariff/index.ts';
import { leastUnits, lessUnits, sumOfUnits, unitFigure, wattHours } from './unit-figure.ts';

/** A cap on what may be set off. */
export type Cap = NonNullable<SettlementRule['cap']>;

/** The most units a cap lets be set off in the period, rounded as the tariff counts units. */
function capFigure(cap: Cap, quantity: Figure, rule: UnitsRule): Figure {
  const places = decimalPlaces(cap.percent);
  const unitPlaces = rule.decimals.charCodeAt(0) - 48;
  const step = 10 ** (3 - unitPlaces);
  const numerator = wattHours(quantity) * decimalToWhole(cap.percent, places);
  const denominator = 100 * 10 ** places;
  const value = roundQuotient(numerator, denominator * step, rule.rounding) * step;
  const from = { operation: 'share', inputs: [quantity], clause: cap.clause } as const;
  const figure = unitFigure({ id: 'cap', label: 'Most that may be set off', numerator: value }, from);
  const parameters = [{ name: 'cap', text: cap.percent, unit: 'percent' as const, clause: cap.clause }];
  if (value * denominator === numerator) return { ...figure, parameters };
  const exact = { numerator, denominator: denominator * 1000 };
  const rounding = {
    step: wholeToDecimal(1, unitPlaces),
    mode: rule.rounding,
    clause: rule.clause,
    ...exact,
  };
  return { ...figure, parameters, rounding };
}

/** The quantity a cap is a share of; null where it is not known. */
export function cappedQuantity(energy: EnergyPeriod, cap: Cap): Figure | null {
  return cap.of === 'import' ? energy.import : cap.of === 'generation' ? energy.generation : energy.totalUse;
}

/** Export and credit set off against import, and what of them is left. */
export interface SetOff {
  readonly setOff: Figure;
  readonly left: Figure;
  /** What the cap kept from being set off; null without a cap. */
  readonly keptByCap: Figure | null;
}

/** What is set off: import, export and the credit brought forward. */
export interface SetOffInput {
  readonly imported: Figure;
  readonly exported: Figure;
  readonly opening: Figure;
}

/**
 * Set export and credit off against import, at most as much as a cap allows.
 *
 * @param input    units of the period
 * @param rule     the settlement rule in force
 * @param capping  the capped quantity and how units are counted; null without a cap
 */
export function setOffUnits(
  { imported, exported, opening }: SetOffInput,
  rule: SettlementRule,
  capping: { readonly quantity: Figure; readonly unitsRule: UnitsRule } | null,
): SetOff {
  const { clause, cap } = rule;
  const available = sumOfUnits('available', 'Export and credit brought forward', [exported, opening], clause);
  const wanted = leastUnits('set-off', 'Units set off', [imported, available], clause);
  if (cap === undefined || capping === null) {
    return {
      setOff: wanted,
      left: lessUnits('left', 'Units left over', [available, wanted], clause),
      keptByCap: null,
    };
  }
  const most = capFigure(cap, capping.quantity, capping.unitsRule);
  const setOff = leastUnits('set-off', 'Units set off', [imported, available, most], cap.clause);
  return {
    setOff,
    left: lessUnits('left', 'Units left over', [available, setOff], clause),
    keptByCap: lessUnits(
      'kept-by-cap',
      'Units the cap keeps from being set off',
      [wanted, setOff],
      cap.clause,
    ),
  };
}
