import { givenFigure, unfoldingFigure, type Figure, type FigureKind } from '../quantity/index.ts';
import type { Account } from '../readings/index.ts';
import type { EnergyPeriod } from './measure-energy.ts';

/** The least and the most that a quantity can be. */
export interface Bounds {
  readonly least: Figure;
  readonly most: Figure;
}

/** Between what the use of a house lies where it cannot be known. */
export interface UseBounds {
  readonly selfConsumption: Bounds;
  readonly totalUse: Bounds;
}

/** Units per kWp and day beyond which no plant goes. Common practice. */
const MOST_PER_PEAK = { text: '7.5', tenths: 75 } as const;

type Pair = readonly [Figure, Figure];

const common = { unit: 'kWh', denominator: 1000, clause: '', inputs: (pair: Pair) => pair } as const;
const kind = (id: string, label: string, operation: 'excess' | 'sum'): FigureKind<Pair> => ({
  id,
  label,
  operation,
  ...common,
});

const KINDS = {
  selfLeast: kind('self-consumption-least', 'Used straight from the roof, at least', 'excess'),
  selfMost: kind('self-consumption-most', 'Used straight from the roof, at most', 'excess'),
  useLeast: kind('total-use-least', 'Used in the house, at least', 'sum'),
  useMost: kind('total-use-most', 'Used in the house, at most', 'sum'),
} as const;

const units = (figure: Figure): number => figure.numerator as number;
const excess = (pair: Pair, of: FigureKind<Pair>): Figure =>
  unfoldingFigure(of, Math.max(0, units(pair[0]) - units(pair[1])), pair);
const sum = (pair: Pair, of: FigureKind<Pair>): Figure =>
  unfoldingFigure(of, units(pair[0]) + units(pair[1]), pair);

/** The most that a plant can make in so many days, in whole watt-hours, cut off. */
function mostMade({ plantCapacity }: Pick<Account, 'plantCapacity'>, days: number): Figure {
  const tenths = plantCapacity * MOST_PER_PEAK.tenths * days;
  const whole = Math.floor(tenths / 10);
  const rounding =
    whole * 10 === tenths
      ? null
      : ({ step: '0.001', mode: 'down', clause: '', numerator: tenths, denominator: 10_000 } as const);
  return {
    id: 'generation-most',
    label: 'Units the plant made, at most',
    unit: 'kWh',
    numerator: whole,
    denominator: 1000,
    operation: 'product',
    inputs: [
      givenFigure({
        id: 'plant-capacity',
        label: 'Plant capacity in kWp',
        unit: 'kW',
        numerator: plantCapacity,
        denominator: 1000,
        clause: 'account',
      }),
      givenFigure({ id: 'days', label: 'Days', unit: 'day', numerator: days, denominator: 1, clause: '' }),
    ],
    parameters: [
      {
        name: 'units per kWp and day at most',
        text: MOST_PER_PEAK.text,
        unit: 'kWh/kWp/day',
        clause: 'common practice',
      },
    ],
    rounding,
    clause: 'common practice',
  };
}

/**
 * Between what own use and total use lie, where readings do not tell them: without a generation meter, with
 * one that began anew, or with one that shows less than was given.
 *
 * The plant made at least what was counted, and at most 7.5 units per kWp and day (common practice).
 *
 * @returns figures in kWh, counted in whole watt-hours; null where own use is known
 */
export function useBounds(energy: EnergyPeriod, account: Pick<Account, 'plantCapacity'>): UseBounds | null {
  if (energy.selfConsumption !== null) return null;
  const { import: taken, export: given, days } = energy;
  const made = energy.generationAtLeast ?? energy.generation;
  const none = givenFigure({ ...NOTHING });
  const least = excess([made ?? none, given], KINDS.selfLeast);
  const most = excess([mostMade(account, days), given], KINDS.selfMost);
  return {
    selfConsumption: { least, most },
    totalUse: { least: sum([taken, least], KINDS.useLeast), most: sum([taken, most], KINDS.useMost) },
  };
}

const NOTHING = {
  id: 'generation-least',
  label: 'Units the plant made, at least',
  unit: 'kWh',
  numerator: 0,
  denominator: 1000,
  clause: 'not metered',
} as const;
