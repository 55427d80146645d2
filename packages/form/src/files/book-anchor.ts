import { readNumberText, readTypedDay, type DayNumber, type IntervalChannel } from '@unitbook/engine';
import type { Household } from '../household/household.ts';
import { isEvent } from '../household/household.ts';
import { exactOf } from './exact.ts';
import type { Anchor } from './running-totals.ts';

/**
 * The first reading of a book on one of some days that has a number for all that is counted.
 *
 * @returns null where there is none
 */
export function anchorIn(
  { readings }: Household,
  days: readonly DayNumber[],
  channels: readonly IntervalChannel[],
): Anchor | null {
  for (const row of readings) {
    const day = isEvent(row) ? undefined : readTypedDay(row.date)?.day;
    if (day === undefined || !days.includes(day)) continue;
    const texts = channels.flatMap((channel) => {
      const read = readNumberText(row[channel] ?? '');
      return read.kind === 'number' && exactOf(read.text).whole >= 0n ? [[channel, read.text] as const] : [];
    });
    if (texts.length === channels.length) return { day, texts: Object.fromEntries(texts) };
  }
  return null;
}

/** Whether every meter of an account shows what it counted, and not a part of it. */
export function hasPlainFactors({ account: { meters } }: Household): boolean {
  return [meters.grid, meters.generation].every((meter) => {
    const read = readNumberText(meter?.multiplyingFactor ?? '');
    return read.kind === 'empty' || (read.kind === 'number' && /^1(?:\.0+)?$/.test(read.text));
  });
}
