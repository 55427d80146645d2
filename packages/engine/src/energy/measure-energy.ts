import {
  givenFigure,
  periodDays,
  quotientText,
  unfoldingFigure,
  type Figure,
  type FigureKind,
  type Finding,
  type Outcome,
  type Period,
} from '../quantity/index.ts';
import type { Account, ReadingPair } from '../readings/index.ts';
import { answerable, balanceFindings } from './balance.ts';
import { countChannel, unitsText } from './count-channel.ts';
import type { UnitsRule } from './count-units.ts';
import { energyFinding } from './findings.ts';

/** The energy of one billing period. Figures are in kWh, counted in whole watt-hours. */
export interface EnergyPeriod {
  readonly period: Period;
  readonly days: number;
  /** Whether a reading at either end was estimated. */
  readonly isEstimated: boolean;
  readonly import: Figure;
  readonly export: Figure;
  /** null without a generation meter. */
  readonly generation: Figure | null;
  /** What a counter that began anew has counted since; left out where all is counted. */
  readonly generationAtLeast?: Figure;
  /** Generation less export: what the house used straight from the roof; null where it cannot be known. */
  readonly selfConsumption: Figure | null;
  /** Import plus self-consumption; null where that cannot be known. */
  readonly totalUse: Figure | null;
}

/** Units per kWp and day below which a month is asked about, in tenths. */
const LOW_YIELD_TENTHS = 3;

const NONE: readonly never[] = [];

type TwoFigures = readonly [Figure, Figure];

const SELF_USE: FigureKind<TwoFigures> = {
  id: 'self-consumption',
  label: 'Units used straight from the roof',
  unit: 'kWh',
  denominator: 1000,
  operation: 'difference',
  clause: '',
  inputs: (two) => two,
};

const TOTAL_USE: FigureKind<TwoFigures> = {
  ...SELF_USE,
  id: 'total-use',
  label: 'Units the house used',
  operation: 'sum',
};

/** Generation less export; null without generation or where export is above it. */
function selfUseOf(made: Figure | null, given: Figure): Figure | null {
  if (made === null) return null;
  const units = (made.numerator as number) - (given.numerator as number);
  return units < 0 ? null : unfoldingFigure(SELF_USE, units, [made, given]);
}

function yieldFindings(made: Figure, account: Account, pair: ReadingPair): Finding[] {
  const capacityDays = account.plantCapacity * periodDays(pair.period);
  const generated = made.numerator as number;
  if (generated * 10 >= LOW_YIELD_TENTHS * capacityDays) return [];
  const values = { yield: quotientText(generated, capacityDays, 2) };
  return [
    answerable(
      energyFinding('energy/yield-low', { path: [...pair.to.path, 'generation'] }, values),
      'generation',
      pair,
    ),
  ];
}

/**
 * Work out the energy of the period between two readings, and its balance:
 * self-consumption = generation − export; total use = import + self-consumption.
 *
 * @param pair     two readings in a row
 * @param account  with its registers and plant
 * @param rule     how the tariff counts units
 * @param isByRates  whether import and export are the sum of their rates, as time blocks bill them
 * @returns        the energy, and findings on balances that cannot be
 */
export function measureEnergy(
  pair: ReadingPair,
  account: Account,
  rule: UnitsRule,
  isByRates = false,
): Outcome<EnergyPeriod> {
  const taken = countChannel('import', pair, rule, isByRates);
  const given = countChannel('export', pair, rule, isByRates);
  if (taken === null || given === null) throw new RangeError('a pair of readings counts import and export');
  const counted = countChannel('generation', pair, rule, isByRates);
  const made = counted !== null && isWholeGeneration(pair) ? counted : null;
  const selfUse = selfUseOf(made, given);
  const use = selfUse === null ? null : (taken.numerator as number) + (selfUse.numerator as number);
  const value: EnergyPeriod = {
    period: pair.period,
    days: periodDays(pair.period),
    isEstimated: pair.from.isEstimated || pair.to.isEstimated,
    import: taken,
    export: given,
    generation: made,
    ...(counted !== null && made === null ? { generationAtLeast: counted } : {}),
    selfConsumption: selfUse,
    totalUse: selfUse === null || use === null ? null : unfoldingFigure(TOTAL_USE, use, [taken, selfUse]),
  };
  return { value, findings: measuredFindings({ given, made, counted, pair, account }) };
}

/** Whether all that the plant made is counted: a counter that began anew hides what came before. */
function isWholeGeneration({ stretches }: ReadingPair): boolean {
  return stretches === null || stretches.every(({ beganAnew }) => !beganAnew);
}

interface Measured {
  readonly given: Figure;
  readonly made: Figure | null;
  /** At least so much was made. */
  readonly counted: Figure | null;
  readonly pair: ReadingPair;
  readonly account: Account;
}

const NO_FINDINGS: readonly Finding[] = [];

function measuredFindings({ given, made, counted, pair, account }: Measured): readonly Finding[] {
  if (made === null) {
    if (counted === null) return [energyFinding('energy/self-consumption-unknown', { path: pair.to.path })];
    const path = [...pair.to.path, 'generation'];
    return [energyFinding('energy/generation-at-least', { path }, { units: unitsText(counted) })];
  }
  const balance = balanceFindings(given, made, pair, account);
  const plantYield = yieldFindings(made, account, pair);
  return balance.length + plantYield.length === 0 ? NO_FINDINGS : [...balance, ...plantYield];
}

/** The shares and the yield of a period; null where they cannot be known. */
export interface EnergyRatios {
  /** Self-consumption ÷ generation. */
  readonly selfConsumptionShare: Figure | null;
  /** Self-consumption ÷ total use. */
  readonly selfSufficiency: Figure | null;
  /** Generation ÷ plant capacity ÷ days, in kWh per kWp and day. */
  readonly specificYield: Figure | null;
}

function ratio(id: string, label: string, top: Figure | null, bottom: Figure | null): Figure | null {
  if (top === null || bottom === null || bottom.numerator === 0) return null;
  return {
    id,
    label,
    unit: 'ratio',
    numerator: top.numerator,
    denominator: bottom.numerator as number,
    operation: 'quotient',
    inputs: [top, bottom],
    parameters: NONE,
    rounding: null,
    clause: '',
  };
}

/**
 * The shares and the specific yield of a period, exact.
 *
 * @source IEC 61724-1 for the yield; self-consumption and self-sufficiency as in Luthander et al.,
 *         Photovoltaic self-consumption in buildings: A review, Applied Energy 142, 2015
 */
export function energyRatios(energy: EnergyPeriod, account: Account): EnergyRatios {
  const { generation, selfConsumption, totalUse, days } = energy;
  const capacity = givenFigure({
    id: 'plant-capacity',
    label: 'Plant capacity in kWp',
    unit: 'kW',
    numerator: account.plantCapacity,
    denominator: 1000,
    clause: 'account',
  });
  const span = givenFigure({
    id: 'days',
    label: 'Days',
    unit: 'day',
    numerator: days,
    denominator: 1,
    clause: '',
  });
  return {
    selfConsumptionShare: ratio(
      'self-consumption-share',
      'Share of generation used in the house',
      selfConsumption,
      generation,
    ),
    selfSufficiency: ratio('self-sufficiency', 'Share of use met from the roof', selfConsumption, totalUse),
    specificYield:
      generation === null
        ? null
        : {
            id: 'specific-yield',
            label: 'Units per kWp and day',
            unit: 'kWh/kWp/day',
            numerator: generation.numerator,
            denominator: account.plantCapacity * days,
            operation: 'quotient',
            inputs: [generation, capacity, span],
            parameters: NONE,
            rounding: null,
            clause: '',
          },
  };
}
