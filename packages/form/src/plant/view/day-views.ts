import {
  addDays,
  parseDay,
  plantDays,
  plantMonths,
  type ChartDay,
  type Finding,
  type Period,
  type Plant,
  type PlantDay,
} from '@unitbook/engine';
import { calendarMonths } from './periods.ts';
import { bandOf, type YieldBand } from './yields.ts';

/** A finding of single days, its number and the days that show it. */
export interface DayFinding {
  readonly number: number;
  readonly finding: Finding;
  readonly days: Period;
}

/** The days of the plant as the page shows them. */
export interface DayViews {
  readonly days: readonly ChartDay[];
  readonly findings: readonly DayFinding[];
  /** What is expected of each calendar month. */
  readonly bands: readonly YieldBand[];
}

/** Days that run shorter are told by their first; the engine compares ten. */
const SHORT_DAYS = 10;

/** The days that show a finding; null where it stands at no day. */
export function daysOf({ path, values, code }: Finding): Period | null {
  const from = parseDay(String(path[1]));
  if (from === null) return null;
  const last =
    parseDay(values['last'] ?? '') ?? (code === 'plant/short-days' ? addDays(from, SHORT_DAYS - 1) : from);
  return { from, to: addDays(last < from ? from : last, 1) };
}

/** What is expected of the months that the days lie in; what was made does not matter for that. */
function bandsOf(days: readonly PlantDay[], plant: Plant): readonly YieldBand[] {
  const [first, last] = [days[0]?.day, days.at(-1)?.day];
  if (first === undefined || last === undefined) return [];
  const periods = calendarMonths(first, addDays(last, 1)).map((period) => ({ period, wattHours: 0 }));
  return plantMonths(periods, plant, days).value.flatMap((month) => bandOf(month, plant) ?? []);
}

/**
 * Look at single days.
 *
 * @param days  in order, each once
 */
export function dayViews(days: readonly PlantDay[], plant: Plant): DayViews {
  const { value, findings } = plantDays(days, plant);
  const placed = findings.flatMap((finding) => {
    const span = daysOf(finding);
    return span === null ? [] : [{ finding, days: span }];
  });
  return {
    days: value.days,
    findings: placed.map((one, at) => ({ ...one, number: at + 1 })),
    bands: bandsOf(days, plant),
  };
}
