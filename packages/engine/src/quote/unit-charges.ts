import type { Charge } from '../tariff/index.ts';

/** Quantities of which a charge says nothing of what a unit costs that is taken. */
const NOT_TAKEN = /^(?:export|generation|self-consumption|sanctioned-load|plant-capacity)(?:@.*)?$/;

/** A charge that goes by units taken. */
export type UnitCharge = Extract<Charge, { kind: 'per-unit' | 'slabs' | 'slab-tables' }>;

/**
 * Whether a charge goes by units that are taken: billed, imported or used, not those given, made or of a power.
 *
 * @example
 * isOfUnitsTaken({ kind: 'per-unit', on: 'export', rate: '-2' }) //=> false
 */
export function isOfUnitsTaken(charge: Charge): charge is UnitCharge {
  const isByUnit = charge.kind === 'per-unit' || charge.kind === 'slabs' || charge.kind === 'slab-tables';
  return isByUnit && !NOT_TAKEN.test(charge.on);
}
