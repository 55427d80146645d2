import { INTERVAL_CHANNELS, type IntervalChannel, type NettingWindow } from '../../energy/index.ts';
import { BLOCK_CHANNELS, WIDTH, type LifeUnits } from '../life-columns.ts';
import type { ProfileWindow, WindowGroups } from './month-windows.ts';
import type { MonthSpan, ProfileMonth, ReadProfile } from './profile.ts';

/**
 * Whether a measure nets what is taken and what is given against each other, as measures of tariffs do.
 *
 * @example
 * isOfGrid({ of: 'export', less: 'import' }) //=> true
 */
export function isOfGrid({ of, less }: Pick<NettingWindow, 'of' | 'less'>): boolean {
  return of !== less && of !== 'generation' && less !== 'generation';
}

/** The place of a channel among the first columns of a row. */
const placeOf = (channel: IntervalChannel): number => INTERVAL_CHANNELS.indexOf(channel);

/**
 * Write the measures of a month: what is left of a channel where what meets inside its windows is taken off.
 *
 * Whatever is rounded, no more meets than there is of either channel, so that what is left lies between nothing and
 * the plain column; and the measures of both channels of a pair differ by as much as the channels do. Without the plant
 * everything is taken, and nothing meets it.
 *
 * @param into  the plain columns are there
 * @param met   of each measure, whole steps
 * @throws RangeError  for a row without columns for the measures: a caller's bug
 */
export function writeWindows(
  { windows, blocks }: Pick<ReadProfile, 'windows' | 'blocks'>,
  { withPlant, withoutPlant, use, width }: LifeUnits,
  at: number,
  met: Float64Array,
): void {
  const first = WIDTH + BLOCK_CHANNELS.length * blocks.length;
  if (width < first + windows.length)
    throw new RangeError(`rows of ${width} columns have no room for ${windows.length} measures`);
  const row = at * width;
  for (let index = 0; index < windows.length; index += 1) {
    const { of, less } = windows[index] as NettingWindow;
    const own = withPlant[row + placeOf(of)] as number;
    const most = Math.min(own, withPlant[row + placeOf(less)] as number);
    const isTaken = of === 'import' && less !== 'import';
    withPlant[row + first + index] = own - Math.max(0, Math.min(most, met[index] as number));
    withoutPlant[row + first + index] = isTaken ? (use[at] as number) : 0;
  }
}

/** Units of a channel by window, without a battery: the shape of a month at some use and generation. */
function sumsOf(
  { use, generation, totals }: ProfileMonth,
  channel: IntervalChannel,
  { group, count }: WindowGroups,
  { made, used }: { readonly made: number; readonly used: number },
): Float64Array {
  const perUse = totals.use === 0 ? 0 : used / totals.use;
  const perMade = totals.generation === 0 ? 0 : made / totals.generation;
  const sums = new Float64Array(count);
  for (let at = 0; at < use.length; at += 1) {
    const beyond = (use[at] as number) * perUse - (generation[at] as number) * perMade;
    const own = group[at] as number;
    const value =
      channel === 'generation'
        ? (generation[at] as number) * perMade
        : Math.max(0, channel === 'import' ? beyond : 0 - beyond);
    sums[own] = (sums[own] as number) + value;
  }
  return sums;
}

/**
 * What meets inside the windows of a measure without a battery, interval by interval: the long way, for measures that
 * net generation. A thousand draws of them take seconds.
 */
export function metTheLongWay(
  window: ProfileWindow,
  month: ProfileMonth,
  units: { readonly made: number; readonly used: number },
): number {
  const { groups } = month.spans[window.span] as MonthSpan;
  const [of, less] = [sumsOf(month, window.of, groups, units), sumsOf(month, window.less, groups, units)];
  let met = 0;
  for (let at = 0; at < groups.count; at += 1) met += Math.min(of[at] as number, less[at] as number);
  return met;
}
