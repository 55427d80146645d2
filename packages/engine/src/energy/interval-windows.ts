import type { DayNumber } from '../quantity/index.ts';
import { clockMinute } from '../tariff/index.ts';
import { DAY_MINUTES, type BlockClock, type BlockDay } from './block-clock.ts';
import type { IntervalChannel, IntervalColumns, WattHours } from './interval-columns.ts';

/** Energy of one channel that is netted against another inside windows of time, and never across them. */
export interface NettingWindow {
  readonly id: string;
  /** What is left of this channel … */
  readonly of: IntervalChannel;
  /** … less this one, at least 0 in each window. */
  readonly less: IntervalChannel;
  /** A window: each interval; each local hour; each local day; or the hours `from` to `to` of each day. */
  readonly within: 'interval' | 'hour' | 'day' | 'day-hours';
  /** For "day-hours", as HH:MM. Outside these hours everything is left. */
  readonly from?: string;
  readonly to?: string;
}

/** How intervals are measured. */
export interface IntervalRules {
  /** Of the tariff's time blocks, for intervals of this length. */
  readonly clock: BlockClock;
  /** What is netted, and inside which windows. */
  readonly windows: readonly NettingWindow[];
  /** The local days on which an hour is repeated or missing because the clocks change. */
  readonly clockChanges?: readonly DayNumber[];
}

/** Rows of one day that follow each other. */
export interface DayRows {
  readonly day: number;
  readonly table: BlockDay;
  readonly row: number;
  readonly end: number;
  /** The slot of the first row. */
  readonly slot: number;
  /** Which period they belong to. */
  readonly period: number;
}

/** A window that lies in two blocks: the day, and which of the day's windows it is. */
export interface MixedWindow {
  readonly rows: DayRows;
  readonly group: number;
}

/** The window that is being summed. */
interface OpenWindow {
  key: number;
  of: number;
  less: number;
  /** Where in the sums it goes. */
  at: number;
}

/** What one netting has come to so far, in each period and block. */
export interface WindowMeter {
  readonly window: NettingWindow;
  readonly of: WattHours;
  readonly less: WattHours;
  /** Slots of a window; a day's for "day" and "day-hours". */
  readonly size: number;
  /** 1 for the slots that are netted. */
  readonly inside: Uint8Array;
  /** One more for each period than there are blocks: what lies in two. */
  readonly sums: Float64Array;
  readonly stride: number;
  /** The first window in two blocks, by period. */
  readonly mixed: Map<number, MixedWindow>;
  readonly open: OpenWindow;
  readonly blocks: Map<BlockDay, Uint16Array>;
}

/** The slots that "day-hours" net; hours that end before they begin are the first and last of the day. */
function slotsInside({ id, within, from = '', to = '' }: NettingWindow, slotMinutes: number): Uint8Array {
  const slots = new Uint8Array(DAY_MINUTES / slotMinutes);
  if (within !== 'day-hours') return slots.fill(1);
  const [first, end] = [clockMinute(from), clockMinute(to)];
  if (first === null || end === null || first === end) {
    throw new RangeError(`"${id}" nets from "${from}" to "${to}", which are no hours of a day`);
  }
  return slots.map((_, slot) => {
    const minute = slot * slotMinutes;
    const isInside = first < end ? first <= minute && minute < end : first <= minute || minute < end;
    return isInside ? 1 : 0;
  });
}

/**
 * Begin to net by a window.
 *
 * @param window   what is netted
 * @param columns  of whole watt-hours
 * @param clock    of the time blocks
 * @param periods  how many
 * @returns        null where a channel is not there
 */
export function windowMeter(
  window: NettingWindow,
  columns: IntervalColumns,
  clock: BlockClock,
  periods: number,
): WindowMeter | null {
  const { [window.of]: of, [window.less]: less } = columns;
  const inside = slotsInside(window, clock.slotMinutes);
  if (of === null || less === null) return null;
  const stride = clock.blocks.length + 1;
  return {
    window,
    of,
    less,
    size: window.within === 'hour' ? 60 / clock.slotMinutes : inside.length,
    inside,
    sums: new Float64Array(periods * stride),
    stride,
    mixed: new Map(),
    open: { key: NaN, of: 0, less: 0, at: 0 },
    blocks: new Map(),
  };
}

/** The block of each window of a day; the number of blocks for a window that lies in two. */
function windowBlocks(meter: WindowMeter, table: BlockDay): Uint16Array {
  const known = meter.blocks.get(table);
  if (known !== undefined) return known;
  const { size, inside, stride } = meter;
  const blocks = Uint16Array.from({ length: inside.length / size }, (_, group) => {
    const from = group * size;
    const own = table.slots.subarray(from, from + size).filter((__, at) => inside[from + at] === 1);
    return own.every((block) => block === own[0]) ? (own[0] ?? stride - 1) : stride - 1;
  });
  meter.blocks.set(table, blocks);
  return blocks;
}

/** End the window that is being summed: what is left of it goes to its block. */
export function closeWindow({ open, sums }: WindowMeter): void {
  if (open.of > open.less) sums[open.at] = (sums[open.at] as number) + (open.of - open.less);
  open.key = NaN;
  open.of = 0;
  open.less = 0;
}

/** The window that some rows belong to: the open one, which a gap in the data can have cut, or the next. */
function windowOf(meter: WindowMeter, rows: DayRows, group: number): OpenWindow {
  const { open } = meter;
  const key = rows.day * DAY_MINUTES + group;
  if (key === open.key) return open;
  closeWindow(meter);
  const block = windowBlocks(meter, rows.table)[group] as number;
  if (block === meter.stride - 1 && !meter.mixed.has(rows.period)) {
    meter.mixed.set(rows.period, { rows, group });
  }
  open.key = key;
  open.at = rows.period * meter.stride + block;
  return open;
}

function netIntervals({ of, less, sums, stride }: WindowMeter, rows: DayRows): void {
  const { runEnds, runBlocks } = rows.table;
  let { row } = rows;
  for (let run = 0; row < rows.end; run += 1) {
    const stop = Math.min(rows.end, rows.row + (runEnds[run] as number) - rows.slot);
    let left = 0;
    for (; row < stop; row += 1) {
      const difference = (of[row] as number) - (less[row] as number);
      if (difference > 0) left += difference;
    }
    const at = rows.period * stride + (runBlocks[run] as number);
    sums[at] = (sums[at] as number) + left;
  }
}

/** Hours and whole days. */
function netWindows(meter: WindowMeter, rows: DayRows): void {
  const { of, less, size } = meter;
  let { row } = rows;
  for (let group = Math.floor(rows.slot / size); row < rows.end; group += 1) {
    const stop = Math.min(rows.end, rows.row + (group + 1) * size - rows.slot);
    let [taken, given] = [0, 0];
    for (; row < stop; row += 1) {
      taken += of[row] as number;
      given += less[row] as number;
    }
    const open = windowOf(meter, rows, group);
    open.of += taken;
    open.less += given;
  }
}

/** Some hours of a day: inside them one window, outside everything is left. */
function netDayHours(meter: WindowMeter, rows: DayRows): void {
  const { of, less, inside, sums, stride } = meter;
  const { slots } = rows.table;
  let [taken, given, count] = [0, 0, 0];
  for (let { row, slot } = rows; row < rows.end; row += 1, slot += 1) {
    const value = of[row] as number;
    if (inside[slot] === 1) {
      taken += value;
      given += less[row] as number;
      count += 1;
    } else {
      const at = rows.period * stride + (slots[slot] as number);
      sums[at] = (sums[at] as number) + value;
    }
  }
  if (count === 0) return;
  const open = windowOf(meter, rows, 0);
  open.of += taken;
  open.less += given;
}

/**
 * Net some rows of a day.
 *
 * @param meter  what it has come to so far
 * @param rows   that follow each other, after those netted before
 */
export function netRows(meter: WindowMeter, rows: DayRows): void {
  const { within } = meter.window;
  if (within === 'interval') netIntervals(meter, rows);
  else if (within === 'day-hours') netDayHours(meter, rows);
  else netWindows(meter, rows);
}
