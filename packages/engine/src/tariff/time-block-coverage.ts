import type { Finding, Path } from '../quantity/index.ts';
import {
  clockText,
  DAY_MINUTES,
  entriesOn,
  minuteEntries,
  namesHolidays,
  seasonsOn,
  WEEKDAYS,
  yearDays,
  type DayKind,
} from './time-block-calendar.ts';
import { timeBlockFinding } from './time-block-findings.ts';
import type { TimeBlockEntry, TimeBlocks } from './time-block-schema.ts';

/** The days of the year that lie in the same seasons. */
interface YearPart {
  readonly seasons: readonly string[];
  /** Runs of days in words, "04-01 through 09-30"; empty for all year. */
  readonly text: string;
}

/** A stretch of a day to which not exactly one entry applies. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly entries: readonly number[];
}

interface FoundStretch {
  readonly stretch: Stretch;
  /** The kinds of day it was found on, by the text of the part of the year. */
  readonly kinds: Map<string, DayKind[]>;
}

/** Parts of the year by the seasons they lie in, each with its runs of days; runs go past the year's end. */
function yearParts(seasons: TimeBlocks['seasons']): readonly YearPart[] {
  const days = yearDays();
  const keys = days.map((day) => seasonsOn(seasons, day).join());
  const begins = [...keys.keys()].filter((at) => keys[at] !== keys.at(at - 1));
  if (begins.length === 0) return [{ seasons: seasonsOn(seasons, '01-01'), text: '' }];
  const runs = begins.map((at, index) => {
    const next = begins[(index + 1) % begins.length] ?? 0;
    return { key: keys[at] ?? '', text: `${days[at] ?? ''} through ${days.at(next - 1) ?? ''}`, at };
  });
  return [...new Set(runs.map(({ key }) => key))].map((key) => {
    const own = runs.filter((run) => run.key === key);
    const [first] = own;
    return {
      seasons: seasonsOn(seasons, days[first?.at ?? 0] ?? ''),
      text: own.map(({ text }) => text).join(' and '),
    };
  });
}

const coversMinute = (calendar: readonly TimeBlockEntry[], index: number, minute: number): boolean =>
  (minuteEntries(calendar, [index])[minute] ?? -1) >= 0;

/** A stretch at the end of a day and one like it at the beginning are written as one, as entries are. */
function acrossMidnight(stretches: readonly Stretch[]): readonly Stretch[] {
  const [first, ...others] = stretches;
  const end = others.at(-1);
  if (first?.from !== 0 || end?.to !== DAY_MINUTES) return stretches;
  if (first.entries.join() !== end.entries.join()) return stretches;
  return [...others.slice(0, -1), { ...end, to: first.to }];
}

/** The stretches of a day to which no entry or several apply; one past midnight is put together. */
function stretchesOf(calendar: readonly TimeBlockEntry[], applying: readonly number[]): readonly Stretch[] {
  const minutes = minuteEntries(calendar, applying);
  const stretches: Stretch[] = [];
  let last = '';
  for (let minute = 0; minute < DAY_MINUTES; minute += 1) {
    if ((minutes[minute] ?? 0) >= 0) {
      last = '';
      continue;
    }
    const entries = applying.filter((index) => coversMinute(calendar, index, minute));
    const key = `x${entries.join()}`;
    const before = stretches.at(-1);
    if (key === last && before !== undefined) stretches[stretches.length - 1] = { ...before, to: minute + 1 };
    else stretches.push({ from: minute, to: minute + 1, entries });
    last = key;
  }
  return acrossMidnight(stretches);
}

/** The same stretch on several kinds of day in several parts of the year is said once where that can be. */
function describe(found: FoundStretch, all: { kinds: number; parts: number }): Record<string, string>[] {
  const { stretch, kinds } = found;
  const byKinds = new Map<string, string[]>();
  for (const [part, list] of kinds) {
    const days = list.length === all.kinds ? '' : list.join(', ');
    byKinds.set(days, [...(byKinds.get(days) ?? []), part]);
  }
  return [...byKinds].map(([days, parts]) => ({
    from: clockText(stretch.from),
    to: clockText(stretch.to),
    days,
    season: parts.length === all.parts ? '' : parts.join(' and '),
  }));
}

/**
 * The stretches of time to which no entry of the calendar applies, or more than one: on which days of the
 * week, in which part of the year, from when to when.
 *
 * @param timeBlocks  with possible times, known seasons and known days
 * @param path        of the time blocks in their document
 */
export function coverageFindings({ calendar, seasons }: TimeBlocks, path: Path): Finding[] {
  const kinds: readonly DayKind[] = namesHolidays(calendar) ? [...WEEKDAYS, 'holiday'] : WEEKDAYS;
  const parts = yearParts(seasons);
  const found = new Map<string, FoundStretch>();
  for (const part of parts) {
    for (const kind of kinds) {
      for (const stretch of stretchesOf(calendar, entriesOn(calendar, kind, part.seasons))) {
        const key = JSON.stringify(stretch);
        const one = found.get(key) ?? { stretch, kinds: new Map<string, DayKind[]>() };
        one.kinds.set(part.text, [...(one.kinds.get(part.text) ?? []), kind]);
        found.set(key, one);
      }
    }
  }
  const labels = (entries: readonly number[]): string =>
    entries.map((index) => `"${calendar[index]?.block ?? ''}"`).join(' and ');
  return [...found.values()].flatMap((one) => {
    const { entries } = one.stretch;
    const at = [...path, 'calendar', ...entries.slice(1, 2)];
    return describe(one, { kinds: kinds.length, parts: parts.length }).map((values) =>
      entries.length === 0
        ? timeBlockFinding('tariff/block-gap', { path: at }, values)
        : timeBlockFinding('tariff/block-overlap', { path: at }, { ...values, entries: labels(entries) }),
    );
  });
}
