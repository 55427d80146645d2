import type { Finding } from '../../quantity/index.ts';
import { clockMinute } from '../../tariff/index.ts';
import type { NettingWindow } from '../../energy/index.ts';
import { quoteFinding } from '../findings.ts';
import { minuteWords } from './local-minutes.ts';
import { windowGroups } from './month-windows.ts';
import type { QuoteProfile } from './profile.ts';

const PLACE = { path: ['profile'] };

/** Hours of a day that cut an interval; that they are two times is checked with the tariff. */
function hourFindings(
  { id, within, from = '', to = '' }: NettingWindow,
  minutes: number,
): readonly Finding[] {
  if (within !== 'day-hours') return [];
  const values = { window: id, from, to, minutes: String(minutes) };
  const isCut = [from, to].some((time) => (clockMinute(time) ?? 0) % minutes !== 0);
  return isCut ? [quoteFinding('quote/profile-splits-window', PLACE, values)] : [];
}

/** The blocks of the intervals of a profile. */
export interface PlacedBlocks {
  readonly block: Uint16Array;
  readonly blocks: readonly string[];
}

/** The first window whose energy would belong to two time blocks. */
function mixedFindings(
  window: NettingWindow,
  { starts }: QuoteProfile,
  { block, blocks }: PlacedBlocks,
): readonly Finding[] {
  const { group } = windowGroups(starts, window);
  const first = new Map<number, number>();
  const mixed = group.findIndex((own, row) => {
    const known = first.get(own);
    if (known === undefined) first.set(own, row);
    return known !== undefined && block[known] !== block[row];
  });
  if (mixed < 0) return [];
  const row = first.get(group[mixed] as number) as number;
  const values = {
    window: window.id,
    start: minuteWords(starts[row] as number),
    block: blocks[block[row] as number] ?? '',
    other: blocks[block[mixed] as number] ?? '',
  };
  return [quoteFinding('quote/profile-window-in-two-blocks', PLACE, values)];
}

/**
 * What keeps the measures of a tariff from being netted in a profile.
 *
 * @param placed  the time blocks of its intervals; null: the tariff has none
 */
export function windowFindings(
  windows: readonly NettingWindow[],
  profile: QuoteProfile,
  placed: PlacedBlocks | null,
): readonly Finding[] {
  const ofHours = windows.flatMap((window) => hourFindings(window, profile.minutes));
  if (ofHours.length > 0 || placed === null) return ofHours;
  return windows.flatMap((window) => mixedFindings(window, profile, placed));
}
