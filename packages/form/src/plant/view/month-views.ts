import {
  plantMonths,
  type Figure,
  type Finding,
  type GenerationDay,
  type Plant,
  type PlantMonth,
  usualIrradiation,
} from '@unitbook/engine';
import type { MadePeriod } from './periods.ts';

/** A month as the page shows it. */
export interface MonthView extends PlantMonth {
  /** What the plant made, unfolding to the readings where there are any. */
  readonly made: Figure;
  /** What is to be said of it; null where it is fine. */
  readonly finding: Finding | null;
}

/** What is only known of a usual year makes no measured ratio: the engine's label says more than is known. */
const USUAL_RATIO = 'Performance ratio, by the irradiation of a usual year';

function named(ratio: Figure | null): Figure | null {
  return ratio === null ? null : { ...ratio, label: USUAL_RATIO };
}

/**
 * Judge every period.
 *
 * @param periods  in order of time
 * @param days     what is known of single days
 */
export function monthViews(
  periods: readonly MadePeriod[],
  plant: Plant,
  days: readonly GenerationDay[],
): readonly MonthView[] {
  const given = periods.map(({ period, wattHours, isEstimated = false }) => {
    const irradiation = usualIrradiation(plant, period);
    return { period, wattHours, isEstimated, ...(irradiation === null ? {} : { irradiation }) };
  });
  const { value, findings } = plantMonths(given, plant, days);
  return value.map((month, index) => ({
    ...month,
    performanceRatio: named(month.performanceRatio),
    made: periods[index]?.generation ?? month.generation,
    finding: findings.find(({ path }) => path[1] === index) ?? null,
  }));
}
