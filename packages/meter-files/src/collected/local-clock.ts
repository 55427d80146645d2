import { addDays, dayText, type DayNumber, type Finding } from '@unitbook/engine';
import type { FileClock } from '../stream.ts';
import { collectedFinding } from './collected-findings.ts';
import type { MinuteRange } from './minute-ranges.ts';
import { DAY_MINUTES, dayOfMinute } from './texts.ts';
import { zoneClock, type ZoneClock } from './zone-clock.ts';

/** How the minutes of a file go over into local minutes and days. */
export interface LocalClock {
  /** The local minute at a minute of the file. */
  readonly toLocal: (minute: number) => number;
  /** The minute of the file at which a local day begins. */
  readonly dayStart: (day: DayNumber) => number;
  /** How many minutes a local day has. */
  readonly dayLength: (day: DayNumber) => number;
  readonly changeDays: readonly DayNumber[];
  readonly findings: readonly Finding[];
}

const OFFSET_HOUR = 60;
/** Changes that the engine can tell from faults: half an hour as on Lord Howe Island, an hour, and a day left out. */
const KNOWN_CHANGES: readonly number[] = [30, OFFSET_HOUR, DAY_MINUTES];

/** An offset as people write it: "UTC+10:00". */
function offsetText(offset: number): string {
  const [hours, minutes] = [Math.floor(Math.abs(offset) / OFFSET_HOUR), Math.abs(offset) % OFFSET_HOUR];
  const two = (value: number): string => String(value).padStart(2, '0');
  return `UTC${offset < 0 ? '-' : '+'}${two(hours)}:${two(minutes)}`;
}

function zoneFindings({ zone, lostDays, changes }: ZoneClock): readonly Finding[] {
  const lost = lostDays.map((day) =>
    collectedFinding('meter-file/day-left-out', { path: [] }, { zone, day: dayText(day) }),
  );
  const odd = changes
    .filter(({ before, after }) => !KNOWN_CHANGES.includes(Math.abs(after - before)))
    .map(({ day, before, after }) => {
      const values = { zone, day: dayText(day), minutes: String(Math.abs(after - before)) };
      return collectedFinding('meter-file/odd-clock-change', { path: [] }, values);
    });
  return [...lost, ...odd];
}

/** The clock of a file whose times are local as they stand; the zone only tells which days are longer. */
function standingClock(zone: ZoneClock | null, findings: readonly Finding[]): LocalClock {
  const changes = zone?.changes ?? [];
  return {
    toLocal: (minute) => minute,
    dayStart: (day) => day * DAY_MINUTES,
    dayLength: (day) =>
      changes.reduce(
        (length, change) => length - (change.day === day ? change.after - change.before : 0),
        DAY_MINUTES,
      ),
    changeDays: zone?.changeDays ?? [],
    findings,
  };
}

/**
 * How the minutes of a file go over into local time.
 *
 * Where the file names its clock and the zone is known, times are moved to the zone. Where it does not, they
 * are local as they stand, and the zone only tells on which days clocks change.
 *
 * @param clock  of the file
 * @param zone   a name of the IANA list, or null
 * @param span   of the data, in minutes of the file
 * @throws RangeError  for a name that is no zone
 */
export function localClock(clock: FileClock, zone: string | null, span: MinuteRange): LocalClock {
  const { offset } = clock;
  const [from, to] = [span.from - 2 * DAY_MINUTES, span.to + 2 * DAY_MINUTES];
  if (zone === null) {
    const values = { clock: offset === null ? '' : offsetText(offset) };
    const isUnknown = offset !== null && span.to > span.from;
    return standingClock(
      null,
      isUnknown ? [collectedFinding('meter-file/zone-not-known', { path: [] }, values)] : [],
    );
  }
  const local = zoneClock(zone, from - (offset ?? 0), to - (offset ?? 0));
  if (offset === null) {
    const own = within(local, dayOfMinute(span.from), dayOfMinute(span.to - 1));
    const note = collectedFinding('meter-file/zone-not-needed', { path: [] }, { zone });
    return standingClock(own, [note, ...zoneFindings(own)]);
  }
  const toLocal = (minute: number): number => local.toLocal(minute - offset);
  const dayStart = (day: DayNumber): number => local.dayStart(day) + offset;
  const own = within(local, dayOfMinute(toLocal(span.from)), dayOfMinute(toLocal(span.to - 1)));
  return {
    toLocal,
    dayStart,
    dayLength: (day) => dayStart(addDays(day, 1)) - dayStart(day),
    changeDays: own.changeDays,
    findings: zoneFindings(own),
  };
}

/** The changes of a zone from one local day to another, both counted. */
function within(zone: ZoneClock, first: DayNumber, last: DayNumber): ZoneClock {
  const isWithin = (day: DayNumber): boolean => day >= first && day <= last;
  return {
    ...zone,
    changes: zone.changes.filter(({ day }) => isWithin(day)),
    changeDays: zone.changeDays.filter(isWithin),
    lostDays: zone.lostDays.filter(isWithin),
  };
}
