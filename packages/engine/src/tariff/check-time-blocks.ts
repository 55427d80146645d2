import { parseDay, type Finding, type Path } from '../quantity/index.ts';
import { clockMinute, DAY_MINUTES, namesHolidays } from './time-block-calendar.ts';
import { coverageFindings } from './time-block-coverage.ts';
import { timeBlockFinding } from './time-block-findings.ts';
import type { TimeBlockEntry, TimeBlocks } from './time-block-schema.ts';

const quotedList = (items: Iterable<string>): string =>
  [...items].map((item) => `"${item}"`).join(', ') || 'none';

/** Blocks that are declared twice or never used, and names in the calendar that are no blocks. */
function nameFindings({ blocks, calendar }: TimeBlocks, path: Path): Finding[] {
  const ids = blocks.map(({ id }) => id);
  const used = new Set(calendar.map(({ block }) => block));
  const declared = ids.flatMap((block, index) => {
    const at = { path: [...path, 'blocks', index, 'id'] };
    if (ids.indexOf(block) < index) return [timeBlockFinding('tariff/block-same-id-twice', at, { block })];
    return used.has(block) ? [] : [timeBlockFinding('tariff/block-unused', at, { block })];
  });
  const named = calendar.flatMap(({ block }, index) => {
    if (ids.includes(block)) return [];
    const values = { block, blocks: quotedList(ids) };
    return [
      timeBlockFinding('tariff/block-unknown', { path: [...path, 'calendar', index, 'block'] }, values),
    ];
  });
  return [...declared, ...named];
}

/** A time that is none, and an entry that takes no time. */
function timeFindings({ from, to }: TimeBlockEntry, path: Path): Finding[] {
  const [first, end] = [clockMinute(from), clockMinute(to)];
  const findings: Finding[] = [];
  if (first === null || first === DAY_MINUTES) {
    const values = { time: from, range: '"00:00" to "23:59"' };
    findings.push(timeBlockFinding('tariff/block-no-such-time', { path: [...path, 'from'] }, values));
  }
  if (end === null) {
    const values = { time: to, range: '"00:00" to "24:00"' };
    findings.push(timeBlockFinding('tariff/block-no-such-time', { path: [...path, 'to'] }, values));
  }
  if (findings.length === 0 && first === end) {
    findings.push(timeBlockFinding('tariff/block-no-time', { path: [...path, 'to'] }, { from, to }));
  }
  return findings;
}

function entryFindings({ calendar, seasons, holidays }: TimeBlocks, path: Path): Finding[] {
  const names = Object.keys(seasons ?? {});
  const hasHolidays = (holidays?.days.length ?? 0) > 0;
  const needless = hasHolidays || !namesHolidays(calendar);
  return calendar.flatMap((entry, index) => {
    const at = [...path, 'calendar', index];
    const findings = timeFindings(entry, at);
    if (entry.season !== undefined && !names.includes(entry.season)) {
      const values = { season: entry.season, seasons: quotedList(names) };
      findings.push(timeBlockFinding('tariff/block-unknown-season', { path: [...at, 'season'] }, values));
    }
    if (!needless && entry.days?.includes('holiday') === true) {
      findings.push(timeBlockFinding('tariff/block-no-holidays', { path: [...at, 'days'] }));
    }
    return findings;
  });
}

/** Days of seasons and holidays that are no days. */
function dayFindings({ seasons, holidays }: TimeBlocks, path: Path): Finding[] {
  const noDay = (text: string, day: string, at: Path): Finding[] =>
    parseDay(day) === null
      ? [timeBlockFinding('tariff/block-no-such-day', { path: [...path, ...at] }, { day: text })]
      : [];
  // 29 February is a day of the year, so a leap year says which days there are.
  const ends = Object.entries(seasons ?? {}).flatMap(([name, { from, through }]) => [
    ...noDay(from, `2000-${from}`, ['seasons', name, 'from']),
    ...noDay(through, `2000-${through}`, ['seasons', name, 'through']),
  ]);
  const listed = (holidays?.days ?? []).flatMap((day, index) => noDay(day, day, ['holidays', 'days', index]));
  return [...ends, ...listed];
}

/**
 * Check what the schema of time blocks cannot say: names, times, days, and that for every minute of every
 * kind of day in every season exactly one entry applies.
 *
 * @param timeBlocks  of the right shape
 * @param path        where they stand in their document
 * @returns           every finding; gaps and overlaps are looked for once times, days and seasons are right
 * @example
 * checkTimeBlocks({ clause: 'T 1', blocks: [{ id: 'all', label: 'All' }], calendar: [{ block: 'all', from: '00:00', to: '23:00' }] })[0].found //=> "no block applies from 23:00 to 24:00 on every day"
 */
export function checkTimeBlocks(timeBlocks: TimeBlocks, path: Path = ['timeBlocks']): Finding[] {
  const placed = [...entryFindings(timeBlocks, path), ...dayFindings(timeBlocks, path)];
  const names = nameFindings(timeBlocks, path);
  return placed.length > 0 ? [...names, ...placed] : [...names, ...coverageFindings(timeBlocks, path)];
}
