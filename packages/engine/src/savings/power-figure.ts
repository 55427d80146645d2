import { givenFigure, type Figure } from '../quantity/index.ts';

/** The powers of an account, in whole watts; null where it does not tell. */
export interface AccountPowers {
  readonly sanctionedLoad: number | null;
  readonly plantCapacity: number | null;
}

/** The powers of an account that are known, by name. */
export function powerFigures({
  sanctionedLoad,
  plantCapacity,
}: AccountPowers): Readonly<Record<string, Figure>> {
  return {
    ...(sanctionedLoad === null ? {} : { 'sanctioned-load': powerFigure('sanctioned-load', sanctionedLoad) }),
    ...(plantCapacity === null ? {} : { 'plant-capacity': powerFigure('plant-capacity', plantCapacity) }),
  };
}

/** A power of the account as a figure, from whole watts. */
function powerFigure(id: 'sanctioned-load' | 'plant-capacity', watts: number): Figure {
  const label = id === 'sanctioned-load' ? 'Sanctioned load' : 'Plant capacity';
  return givenFigure({ id, label, unit: 'kW', numerator: watts, denominator: 1000, clause: 'account' });
}
