import {
  calendarDay,
  daysInMonth,
  MONTH_NAMES,
  wholeToDecimal,
  type Finding,
  type Outcome,
} from '../../quantity/index.ts';
import type { BlockClock, NettingWindow } from '../../energy/index.ts';
import { quoteFinding } from '../findings.ts';
import { monthNames } from '../months.ts';
import type { MonthlyUnits } from '../quote-input.ts';
import { profileFindings } from './check-profile.ts';
import { DAY_MINUTES, dayOf, minuteWords } from './local-minutes.ts';
import { profileMonth, type QuoteProfile, type ReadProfile } from './profile.ts';
import { spansOf } from './month-windows.ts';
import { windowFindings } from './profile-windows.ts';

/** The rows of each calendar month from January on, and how many intervals it has when it is whole. */
function rowsByMonth({ starts, minutes }: QuoteProfile) {
  const rows = Array.from({ length: 12 }, (): number[] => []);
  const whole = new Int32Array(12);
  let [last, month] = [NaN, 0];
  starts.forEach((start, row) => {
    const day = dayOf(start);
    if (day !== last) {
      const date = calendarDay(day);
      month = date.month - 1;
      whole[month] = (daysInMonth(date.year, date.month) * DAY_MINUTES) / minutes;
      last = day;
    }
    rows[month]?.push(row);
  });
  return { rows, whole };
}

/** Months that are not there at all, and those with more or fewer intervals than a change of clocks explains. */
function monthFindings(
  rows: readonly (readonly number[])[],
  whole: Int32Array,
  { minutes }: QuoteProfile,
): readonly Finding[] {
  const path = ['profile'];
  const missing = rows.flatMap((own, month) => (own.length === 0 ? [month + 1] : []));
  if (missing.length > 0) {
    return [quoteFinding('quote/profile-month-missing', { path }, { months: monthNames(missing) })];
  }
  return rows.flatMap((own, month) => {
    const all = whole[month] as number;
    if (Math.abs(own.length - all) <= 60 / minutes) return [];
    const values = { count: String(own.length), month: MONTH_NAMES[month] ?? '', whole: String(all) };
    return [quoteFinding('quote/profile-month-in-part', { path }, values)];
  });
}

/** The block of every interval, or the first that two share. */
function blocksOf({ starts, minutes }: QuoteProfile, clock: BlockClock) {
  const none = clock.blocks.length;
  const block = Uint16Array.from(starts, (start) => {
    const day = dayOf(start);
    return clock.day(day).slots[(start - day * DAY_MINUTES) / minutes] ?? none;
  });
  const split = block.indexOf(none);
  const findings =
    split < 0
      ? []
      : [
          quoteFinding(
            'quote/profile-splits-block',
            { path: ['profile'] },
            { start: minuteWords(starts[split] as number), minutes: String(minutes) },
          ),
        ];
  return { block, findings };
}

/**
 * Check an interval profile and sort it by calendar month. Its days need not begin with January, nor a month be
 * whole: the shape of the days that are there is taken.
 *
 * @param profile   a year of use and generation
 * @param clockFor  the time blocks of the tariff for intervals of some minutes; null: it has none
 * @param netted    measures of the tariff that are netted inside windows; left out: none
 * @returns         null where anything is an error
 */
export function readProfile(
  profile: QuoteProfile,
  clockFor: (minutes: number) => BlockClock | null,
  netted: readonly NettingWindow[] = [],
): Outcome<ReadProfile | null> {
  const plain = profileFindings(profile);
  if (plain.length > 0) return { value: null, findings: plain };
  const { minutes } = profile;
  const { rows, whole } = rowsByMonth(profile);
  const clock = clockFor(minutes);
  const blocks = clock?.blocks.map(({ id }) => id) ?? [];
  const placed = clock === null ? null : blocksOf(profile, clock);
  const ofBlocks = placed?.findings ?? [];
  const inBlocks = placed === null || ofBlocks.length > 0 ? null : { block: placed.block, blocks };
  const findings = [
    ...monthFindings(rows, whole, profile),
    ...ofBlocks,
    ...windowFindings(netted, profile, inBlocks),
  ];
  if (findings.some(({ severity }) => severity === 'error')) return { value: null, findings };
  const { spans, windows } = spansOf(netted);
  const months = rows.map((own) => {
    const block = Uint16Array.from(own, (row) => placed?.block[row] ?? 0);
    return profileMonth(profile, Uint32Array.from(own), { block, blocks: blocks.length, spans });
  });
  return { value: { minutes, months, blocks, windows, source: profile }, findings };
}

/**
 * Months in which a profile has no shape for units that the quote has.
 *
 * @param units  thousandths by calendar month
 */
export function emptyMonths(
  { months }: ReadProfile,
  units: { readonly use: MonthlyUnits; readonly generation: MonthlyUnits },
): readonly Finding[] {
  return (['use', 'generation'] as const).flatMap((what) =>
    months.flatMap(({ totals }, month) => {
      const wanted = units[what][month] ?? 0;
      if (totals[what] > 0 || wanted === 0) return [];
      const text = wholeToDecimal(wanted, 3).replace(/\.0+$/, '');
      const values = { what, month: MONTH_NAMES[month] ?? '', units: text };
      return [quoteFinding('quote/profile-month-empty', { path: ['profile', what] }, values)];
    }),
  );
}
