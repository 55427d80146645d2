import { capitalRecoveryFactor } from './annuity.ts';
import { presentValue } from './present-value.ts';

/** What a plant costs and makes in each year; the first of each is now, before its first year. */
export interface PlantYears {
  /** Money, above 0 where it is paid; what a part is worth at the end is below 0. */
  readonly costs: readonly number[];
  /** Units made, usually 0 now. */
  readonly energy: readonly number[];
}

const over = (top: number, bottom: number): number | null => (bottom > 0 ? top / bottom : null);

/**
 * The levelised cost of energy: costs discounted to now over units discounted to now. It is the price at
 * which the units would just pay for the plant.
 *
 * @param rate  a part of one a year, above −1
 * @returns     money a unit, in doubles and not rounded; null where nothing is made
 * @throws RangeError for a rate of −100 % or below: a caller's bug
 * @source A Manual for the Economic Evaluation of Energy Efficiency and Renewable Energy Technologies, NREL,
 *         1995 (formula from memory)
 * @example
 * levelisedCost(0.25, { costs: [80, 25], energy: [0, 50] }) //=> 2.5
 */
export function levelisedCost(rate: number, { costs, energy }: PlantYears): number | null {
  return over(presentValue(rate, costs), presentValue(rate, energy));
}

/** A plant that makes the same every year. */
export interface LevelPlant {
  /** Money for a kilowatt. */
  readonly costPerKilowatt: number;
  /** Whole life in years. */
  readonly years: number;
  /** The part of its rated energy that it makes, from 0 to 1. */
  readonly capacityFactor: number;
  /** Money for upkeep a unit. */
  readonly upkeepPerUnit: number;
}

const HOURS_OF_YEAR = 8760;

/**
 * The simple levelised cost of a plant that makes the same every year:
 * cost of a kW × capital recovery factor ÷ (8760 × capacity factor) + upkeep. Loses nothing to age.
 *
 * @param rate  a part of one a year, above −1
 * @returns     money a unit, not rounded; null where nothing is made
 * @throws RangeError for a rate of −100 % or below and for no years: a caller's bug
 * @example
 * simpleLevelisedCost(0, { costPerKilowatt: 8760, years: 4, capacityFactor: 0.25, upkeepPerUnit: 0.5 }) //=> 1.5
 */
export function simpleLevelisedCost(rate: number, plant: LevelPlant): number | null {
  const yearly = plant.costPerKilowatt * capitalRecoveryFactor(rate, plant.years);
  const perUnit = over(yearly, HOURS_OF_YEAR * plant.capacityFactor);
  return perUnit === null ? null : perUnit + plant.upkeepPerUnit;
}

/** What is gained and what is paid in each year, both above 0; the first of each is now. */
export interface GainsAndCosts {
  readonly benefits: readonly number[];
  readonly costs: readonly number[];
}

/**
 * Benefits over costs, both discounted to now: above 1 it is worth it.
 *
 * @param rate  a part of one a year, above −1
 * @returns     null where the costs come to nothing
 * @throws RangeError for a rate of −100 % or below: a caller's bug
 * @example
 * benefitCostRatio(0.25, { benefits: [0, 150], costs: [60] }) //=> 2
 */
export function benefitCostRatio(rate: number, { benefits, costs }: GainsAndCosts): number | null {
  return over(presentValue(rate, benefits), presentValue(rate, costs));
}

/** An outlay and what it saves, by year; the first of each is now. */
export interface Outlay {
  /** Savings of energy and other running costs; an extra running cost is below 0. */
  readonly savings: readonly number[];
  /** Outlay and replacements, above 0; what is left of them at the end below 0. */
  readonly investment: readonly number[];
}

/**
 * The savings-to-investment ratio: running costs saved over money laid out, both discounted to now. Upkeep
 * lessens the savings, replacements add to the outlay; in a {@link benefitCostRatio} both are costs.
 *
 * @param rate  a part of one a year, above −1
 * @returns     null where nothing is laid out
 * @throws RangeError for a rate of −100 % or below: a caller's bug
 * @source 10 CFR 436.21 Savings-to-investment ratio, US DOE, 1990 (wording from memory)
 * @example
 * savingsToInvestment(0.25, { savings: [0, 75], investment: [60, -25] }) //=> 1.5
 */
export function savingsToInvestment(rate: number, { savings, investment }: Outlay): number | null {
  return over(presentValue(rate, savings), presentValue(rate, investment));
}
