import {
  windowGroups,
  windowSums,
  type ProfileWindow,
  type WindowGroups,
  type WindowSpan,
} from './month-windows.ts';
import { Overlap, type Intervals, type IntervalTotals } from './overlap.ts';

/**
 * Use and generation of a household by intervals, for a year: a shape, and nothing else. The units of each month
 * are those of the quote.
 */
export interface QuoteProfile {
  /** How long every interval is: 5, 15, 30 or 60. */
  readonly minutes: number;
  /** The minute at which each interval starts, since 1970-01-01 00:00 on the local clock, in order. */
  readonly starts: Int32Array;
  /** Whole Wh used in each interval, whoever supplied them. */
  readonly use: Float64Array;
  /** Whole Wh that the plant makes in each interval. */
  readonly generation: Float64Array;
}

/** One kind of windows in a month. */
export interface MonthSpan {
  readonly groups: WindowGroups;
  /** What is used as it is made in each window, whenever inside it: taking and giving in one window meet. */
  readonly overlap: Overlap;
}

/** The intervals of a calendar month, in order of time. */
export interface ProfileMonth extends Intervals {
  readonly totals: IntervalTotals;
  /** The time block of each interval; 0 where the tariff has none. */
  readonly block: Uint16Array;
  readonly overlap: Overlap;
  /** What is used as it is made in each time block; none where the tariff has none. */
  readonly blockOverlaps: readonly Overlap[];
  /** Wh of each time block. */
  readonly blockUse: Float64Array;
  readonly blockGeneration: Float64Array;
  /** By the span of the measures that net inside windows. */
  readonly spans: readonly MonthSpan[];
}

/** A profile that was checked, by calendar month from January on. */
export interface ReadProfile {
  readonly minutes: number;
  readonly months: readonly ProfileMonth[];
  /** Ids of the tariff's time blocks. */
  readonly blocks: readonly string[];
  /** The tariff's measures that are netted inside windows. */
  readonly windows: readonly ProfileWindow[];
  /** What it was read from: another tariff has other blocks and windows. */
  readonly source: QuoteProfile;
}

/** What a month of a profile is sorted by. */
export interface MonthTerms {
  /** The time block of each of its rows. */
  readonly block: Uint16Array;
  /** How many blocks the tariff has; 0: none. */
  readonly blocks: number;
  readonly spans: readonly WindowSpan[];
}

const sumOf = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0);

function blockSums(values: Float64Array, block: Uint16Array, blocks: number): Float64Array {
  const sums = new Float64Array(blocks);
  values.forEach((value, at) => {
    const own = block[at] as number;
    sums[own] = (sums[own] as number) + value;
  });
  return sums;
}

/** Only the values of one block. */
const ofBlock = (values: Float64Array, block: Uint16Array, own: number): Float64Array =>
  values.filter((_, at) => block[at] === own);

/** The windows of a month, and what each of them uses and makes. */
function monthSpan(
  { use, generation }: Intervals,
  starts: Int32Array,
  totals: IntervalTotals,
  span: WindowSpan,
): MonthSpan {
  const groups = windowGroups(starts, span);
  const sums = { use: windowSums(use, groups), generation: windowSums(generation, groups) };
  return { groups, overlap: new Overlap(sums, totals) };
}

/**
 * Put the intervals of a calendar month into the form that own use is worked out from.
 *
 * @param rows  of the profile, in order of time
 */
export function profileMonth(
  { use: allUse, generation: allMade, starts: allStarts }: QuoteProfile,
  rows: Uint32Array,
  { block, blocks, spans }: MonthTerms,
): ProfileMonth {
  const use = Float64Array.from(rows, (row) => allUse[row] as number);
  const generation = Float64Array.from(rows, (row) => allMade[row] as number);
  const starts = Int32Array.from(rows, (row) => allStarts[row] as number);
  const totals = { use: sumOf(use), generation: sumOf(generation) };
  const blockOverlaps = Array.from({ length: blocks }, (_, own) => {
    const intervals = { use: ofBlock(use, block, own), generation: ofBlock(generation, block, own) };
    return new Overlap(intervals, totals);
  });
  return {
    use,
    generation,
    totals,
    block,
    overlap: new Overlap({ use, generation }, totals),
    blockOverlaps,
    blockUse: blockSums(use, block, blocks),
    blockGeneration: blockSums(generation, block, blocks),
    spans: spans.map((span) => monthSpan({ use, generation }, starts, totals, span)),
  };
}
