import { dayText, quotientText, roundQuotient, type Finding } from '../../quantity/index.ts';
import { plantFinding } from './findings.ts';
import type { Plant } from './plant.ts';
import type { LevelDay, Levels } from './season.ts';
import { stepsOf, type Step } from './step-scan.ts';
import type { Stretch } from './stretch.ts';

/** Inverters are told up to so many where the document does not say how many there are. */
const MOST_PARTS = 20;

/** What a fall is about, as a part of the plant: "1 of the 8 inverters", "1/5 of the plant". */
export function partWords(before: number, after: number, inverters: Plant['inverters']): string {
  const fall = before - after;
  if (inverters !== null && inverters.count > 1) {
    const { count, kind } = inverters;
    const out = Math.max(1, roundQuotient(fall * count, before, 'half-up'));
    return `${String(out)} of the ${String(count)} ${kind === 'module' ? 'module inverters' : 'inverters'}`;
  }
  const parts = Math.min(MOST_PARTS, Math.max(1, roundQuotient(before, fall, 'half-up')));
  return parts === 1 ? 'the whole plant' : `1/${String(parts)} of the plant`;
}

/** The mean of a stretch in units a day. */
function meanUnits(days: readonly LevelDay[], { from, to }: Stretch): string {
  const sum = days.slice(from, to).reduce((total, { wattHours }) => total + wattHours, 0);
  return quotientText(sum, (to - from) * 1000, 1);
}

/** The mean of a stretch in percent of the season. */
const meanLevel = ({ from, to, sum }: Stretch): string => quotientText(sum, (to - from) * 100, 1);

const SEASON_WORDS = {
  table: 'what its table gives for these days',
  'last-year': 'the bright days around the same days of the year before',
} as const;

function stepFinding({ days, by }: Levels, { before, after, isFall }: Step, plant: Plant): Finding {
  const text = (place: number): string => dayText(days[place]?.day ?? (days[0] as LevelDay).day);
  const [low, high] = isFall ? [after, before] : [before, after];
  const values = {
    day: text(after.from),
    first: text(before.from),
    last: text(after.to - 1),
    count: String(before.to - before.from),
    percent: quotientText((high.bright - low.bright) * 100, before.bright, 1),
    before: meanUnits(days, before),
    after: meanUnits(days, after),
    beforeLevel: meanLevel(before),
    afterLevel: meanLevel(after),
    season: SEASON_WORDS[by],
    part: isFall ? partWords(before.bright, after.bright, plant.inverters) : '',
  };
  return plantFinding(isFall ? 'plant/step-down' : 'plant/step-up', { path: ['days', values.day] }, values);
}

/**
 * Lasting changes of level as findings, with the stretches of days that show them.
 *
 * @param levels  days set against their season
 * @param plant   for the inverters it has
 */
export function stepFindings(levels: Levels, plant: Plant): readonly Finding[] {
  return stepsOf(levels).map((step) => stepFinding(levels, step, plant));
}
