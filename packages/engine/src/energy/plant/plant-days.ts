import { dayText, type DayNumber, type Finding, type Outcome } from '../../quantity/index.ts';
import { daySeries, type PlantDay } from './day-series.ts';
import { shortDays } from './day-spans.ts';
import { plantFinding } from './findings.ts';
import { largeDays } from './large-days.ts';
import type { Plant } from './plant.ts';
import { missingDays, sameValues, zeroDays } from './quiet-days.ts';
import { levelsOf, type Levels } from './season.ts';
import { slideFindings } from './slide-findings.ts';
import { stepFindings } from './step-findings.ts';

/** A day for a chart: what it made and, where the season is known, how much of it that is. */
export interface ChartDay {
  readonly day: DayNumber;
  /** Whole watt-hours; null where it is not known. */
  readonly wattHours: number | null;
  /** Hundredths of a percent of what the season gives; null where that is not known or the day is unfit. */
  readonly ofSeason: number | null;
}

/** The days of a plant, in a row without gaps. */
export interface PlantDays {
  readonly days: readonly ChartDay[];
  /** What tells the season; null where nothing does. */
  readonly seasonBy: Levels['by'] | null;
}

/** Fewer days than this are not expected to show a course. */
const LEAST_DAYS = 60;

function courseFindings(
  levels: Levels | null,
  count: number,
  plant: Plant,
  path: string,
): readonly Finding[] {
  if (levels !== null) return [...stepFindings(levels, plant), ...slideFindings(levels, plant)];
  if (count < LEAST_DAYS) return [];
  return [plantFinding('plant/season-unknown', { path: ['days', path] }, { count: String(count) })];
}

/** Findings in order of the day they stand at, as they were made where days are the same. */
function inDayOrder(findings: readonly Finding[]): readonly Finding[] {
  const dayOf = ({ path }: Finding): string => String(path[1]);
  return [...findings].sort((one, other) =>
    dayOf(one) < dayOf(other) ? -1 : dayOf(one) > dayOf(other) ? 1 : 0,
  );
}

/**
 * What the single days of a plant show: days without units or values, values that cannot be, and changes of
 * its level that last. Each is a finding with the days that show it, and no diagnosis.
 *
 * Days are set against the plant's table (a quote's months, or irradiation), on straight lines between the
 * middles of the months; without a table against the bright days around the same day of the year before.
 * A change of level is told only where the bright days, the mean and the units themselves all show it.
 *
 * @param days   in any order, each once
 * @param plant  as `readPlant` gives it
 * @returns      the days in a row; findings in order of days, at ["days", "yyyy-mm-dd"]
 * @throws RangeError when a day comes twice or an energy is no whole number from 0 on: a caller's bug
 */
export function plantDays(days: readonly PlantDay[], plant: Plant): Outcome<PlantDays> {
  const series = daySeries(days, plant);
  const zero = zeroDays(series, plant.capacities[0]?.from != null);
  const large = largeDays(series);
  const same = sameValues(series);
  const unfit = new Set([...zero.unfit, ...large.unfit, ...same.unfit]);
  const levels = levelsOf(series, unfit, plant);
  const ofSeason = new Map(levels?.days.map(({ day, index }) => [day, index]));
  const [first] = series;
  const findings = inDayOrder([
    ...missingDays(series),
    ...zero.findings,
    ...large.findings,
    ...same.findings,
    ...courseFindings(
      levels,
      series.length - unfit.size,
      plant,
      first === undefined ? '' : dayText(first.day),
    ),
    ...shortDays(series),
  ]);
  const value = {
    days: series.map(({ day, wattHours }) => ({ day, wattHours, ofSeason: ofSeason.get(day) ?? null })),
    seasonBy: levels?.by ?? null,
  };
  return { value, findings };
}
