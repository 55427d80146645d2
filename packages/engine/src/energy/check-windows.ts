import { dayText, type DayNumber, type Finding } from '../quantity/index.ts';
import { DAY_MINUTES } from './block-clock.ts';
import type { IntervalChannel, IntervalColumns } from './interval-columns.ts';
import { intervalFinding } from './interval-findings.ts';
import type { IntervalRules, NettingWindow, WindowMeter } from './interval-windows.ts';
import { minuteText, type Measured } from './measured-intervals.ts';

const PATH = ['intervals'] as const;

/** The blocks of a stretch of a day: the first, and one that differs from it. */
function twoBlocks(blocks: Iterable<number>, { clock }: IntervalRules): { block: string; other: string } {
  const [first = 0, second = 0] = new Set(blocks);
  return { block: clock.blocks[first]?.id ?? '', other: clock.blocks[second]?.id ?? '' };
}

function splitFindings({ splits, columns }: Measured, at: number, rules: IntervalRules): Finding[] {
  const rows = splits.get(at);
  if (rows === undefined) return [];
  const { minutes } = columns;
  const slot = rows.table.slots.indexOf(rules.clock.blocks.length);
  const values = {
    minutes: String(minutes),
    first: minuteText(rows.day * DAY_MINUTES + slot * minutes),
    ...twoBlocks(rows.table.minutes.subarray(slot * minutes, (slot + 1) * minutes), rules),
  };
  return [intervalFinding('energy/interval-splits-block', { path: PATH }, values)];
}

/** A window of a day in words. */
function spanText({ within, from = '', to = '' }: NettingWindow, day: DayNumber, first: number): string {
  if (within === 'hour') return `the hour from ${minuteText(day * DAY_MINUTES + first)}`;
  return within === 'day' ? `the day ${dayText(day)}` : `${from} to ${to} on ${dayText(day)}`;
}

function mixedFindings(meter: WindowMeter, at: number, rules: IntervalRules): Finding[] {
  const mixed = meter.mixed.get(at);
  if (mixed === undefined) return [];
  const { window, size, inside } = meter;
  const { slotMinutes } = rules.clock;
  const [first, length] = [mixed.group * size * slotMinutes, size * slotMinutes];
  const own = mixed.rows.table.minutes
    .subarray(first, first + length)
    .filter((_, minute) => inside[Math.floor((first + minute) / slotMinutes)] === 1);
  const values = {
    window: window.id,
    span: spanText(window, mixed.rows.day as DayNumber, first),
    ...twoBlocks(own, rules),
  };
  return [intervalFinding('energy/interval-window-in-two-blocks', { path: PATH }, values)];
}

/** Hours that cut an interval. */
function hourFindings({ id, within, from = '', to = '' }: NettingWindow, minutes: number): Finding[] {
  const isOn = (text: string): boolean => Number.parseInt(text.slice(3), 10) % minutes === 0;
  if (within !== 'day-hours' || (isOn(from) && isOn(to))) return [];
  const values = { window: id, from, to, minutes: String(minutes) };
  return [intervalFinding('energy/interval-splits-window', { path: PATH }, values)];
}

function channelFindings({ id, of, less }: NettingWindow, columns: IntervalColumns): Finding[] {
  const missing = [of, less].filter((channel: IntervalChannel) => columns[channel] === null);
  return missing.map((channel) =>
    intervalFinding('energy/interval-no-channel', { path: PATH }, { window: id, channel }),
  );
}

/**
 * What does not fit the time blocks or the windows of a period: intervals and windows in two blocks, hours
 * that cut an interval, channels that are not metered.
 *
 * @param measured  the data and its sums
 * @param at        which period
 * @param rules     it was measured by
 */
export function blockFindings(measured: Measured, at: number, rules: IntervalRules): Finding[] {
  const { columns, meters } = measured;
  const ofWindows = rules.windows.flatMap((window) => [
    ...channelFindings(window, columns),
    ...hourFindings(window, columns.minutes),
  ]);
  const mixed = meters.flatMap((meter) => (meter === null ? [] : mixedFindings(meter, at, rules)));
  return [...splitFindings(measured, at, rules), ...ofWindows, ...mixed];
}
