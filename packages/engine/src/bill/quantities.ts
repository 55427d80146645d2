import { QUANTITIES } from '../tariff/index.ts';

/**
 * The quantities a line can be counted on, in the order of the quantity vector: those a tariff can name,
 * and `one`, which fixed amounts are charged on.
 */
export const QUANTITY_ORDER = [...QUANTITIES, 'one'] as const;

/** A quantity of a bill; `one` is what a fixed amount is charged on. */
export type QuantityName = (typeof QUANTITY_ORDER)[number];

/** How many quantities there are. */
export const QUANTITY_COUNT: number = QUANTITY_ORDER.length;

/** Quantities from here on are not energy: they are not split by days. */
const FIRST_POWER: number = QUANTITY_ORDER.indexOf('sanctioned-load');

/** Place of a quantity in the vector. */
export function quantityIndex(name: QuantityName): number {
  return QUANTITY_ORDER.indexOf(name);
}

/** Whether a quantity is energy. */
export function isEnergy(index: number): boolean {
  return index < FIRST_POWER;
}
