import { dayText, quotientText, type DayNumber, type Finding } from '../../quantity/index.ts';
import { plantFinding } from './findings.ts';
import type { Plant } from './plant.ts';
import type { Levels } from './season.ts';
import { slidesOf } from './slide-scan.ts';

/** Days around the end of a fall in which a cleaning is taken to have ended it. */
const CLEANING_REACH = 3;

function endWords({ diary }: Plant, last: DayNumber, next: DayNumber): string {
  const cleaning = diary.find(
    ({ did, date }) => did === 'cleaning' && date >= last - CLEANING_REACH && date <= next + CLEANING_REACH,
  );
  return cleaning === undefined
    ? 'with rain or a cleaning'
    : `with the cleaning of ${dayText(cleaning.date)}`;
}

/**
 * Slow falls that ended with a rise, as findings.
 *
 * @param levels  days set against their season
 * @param plant   for the cleanings of its diary
 */
export function slideFindings({ days }: Levels, plant: Plant): readonly Finding[] {
  return slidesOf(days).flatMap(({ from, to, start, end }) => {
    const [first, last, next] = [days[from]?.day, days[to - 1]?.day, days[to]?.day];
    if (first === undefined || last === undefined || next === undefined) return [];
    const values = {
      first: dayText(first),
      last: dayText(last),
      count: String(to - from),
      percent: quotientText((start - end) * 100, start, 1),
      ended: endWords(plant, last, next),
    };
    return [plantFinding('plant/slow-slide', { path: ['days', values.first] }, values)];
  });
}
