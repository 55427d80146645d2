import { dayText, exactText, type Finding } from '../../quantity/index.ts';
import type { DayFindings, SeriesDay } from './day-series.ts';
import { plantFinding } from './findings.ts';

type Series = readonly SeriesDay[];

/** Units per kWp and day beyond which no plant goes, in tenths. Common practice: 7.5. */
const MOST_YIELD_TENTHS = 75;
/** A day of several is this many halves of the best day around, at least. Our own rule. */
const LUMP_HALVES = 3;
/** A day this many times the best day within a month is asked about. Our own rule. */
const SPIKE_TIMES = 2;
const LUMP_REACH = 15;
const SPIKE_REACH = 30;
/** So many days around have to be known. */
const LEAST_AROUND = { lump: 5, spike: 20 } as const;

const isWithin = (wattHours: number, watts: number, days: number): boolean =>
  wattHours * 10 <= MOST_YIELD_TENTHS * watts * days;

/** The best of the days around a place, itself left out; null where too few are known. */
function bestAround(series: Series, place: number, reach: number, least: number): number | null {
  const near = [
    ...series.slice(Math.max(0, place - reach), place),
    ...series.slice(place + 1, place + reach + 1),
  ];
  // A day that no plant can have is no measure of others.
  const known = near.flatMap(({ wattHours, watts }) =>
    wattHours !== null && wattHours > 0 && isWithin(wattHours, watts, 1) ? [wattHours] : [],
  );
  return known.length < least ? null : Math.max(...known);
}

/** How many days right before a place have no value or made nothing. */
function gapBefore(series: Series, place: number): number {
  let gap = 0;
  while (gap < place && (series[place - gap - 1]?.wattHours ?? 0) === 0) gap += 1;
  return gap;
}

function lump(series: Series, place: number, wattHours: number): Finding | null {
  const one = series[place];
  const gap = gapBefore(series, place);
  const best = bestAround(series, place, LUMP_REACH, LEAST_AROUND.lump);
  if (one === undefined || gap === 0 || best === null || wattHours * 2 <= LUMP_HALVES * best) return null;
  if (!isWithin(wattHours, one.watts, gap + 1)) return null;
  const first = dayText(one.day);
  const values = { first, gap: String(gap), units: exactText(wattHours, 1000), best: exactText(best, 1000) };
  return plantFinding('plant/lump', { path: ['days', first] }, values);
}

function spike(series: Series, place: number, wattHours: number): Finding | null {
  const one = series[place];
  if (one === undefined) return null;
  const first = dayText(one.day);
  const said = (because: 'limit' | 'days', most: string): Finding =>
    plantFinding(
      'plant/spike',
      { path: ['days', first] },
      { first, units: exactText(wattHours, 1000), because, most },
    );
  if (!isWithin(wattHours, one.watts, 1))
    return said('limit', exactText(MOST_YIELD_TENTHS * one.watts, 10_000));
  const best = bestAround(series, place, SPIKE_REACH, LEAST_AROUND.spike);
  return best === null || wattHours <= SPIKE_TIMES * best ? null : said('days', exactText(best, 1000));
}

/** Days that made more than a plant can, or far more than the days around. */
export function largeDays(series: Series): DayFindings {
  const findings: Finding[] = [];
  const unfit: number[] = [];
  series.forEach(({ wattHours }, place) => {
    if (wattHours === null || wattHours === 0) return;
    const finding = lump(series, place, wattHours) ?? spike(series, place, wattHours);
    if (finding === null) return;
    findings.push(finding);
    unfit.push(place);
  });
  return { findings, unfit };
}
