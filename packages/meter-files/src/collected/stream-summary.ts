import { VALUE_QUALITIES, type IntervalChunk, type Stream, type ValueQuality } from '../stream.ts';
import { trackCoverage, type CoverageTracker, type StreamCoverage } from './coverage.ts';
import { decimalText } from './decimal-text.ts';
import { ExactTotal } from './exact-total.ts';
import { checkChunk } from './interval-rows.ts';
import { monthOfMinute, type ClockMonth } from './month-clock.ts';
import { MISSING } from './quality.ts';

/** What the intervals of a stream come to. Minutes are those of the file's clock. */
export interface StreamSummary {
  readonly stream: Stream;
  /** How many intervals of each length there are, the shortest first. */
  readonly lengths: readonly { readonly minutes: number; readonly count: number }[];
  /** How many intervals there are, with a value or without. */
  readonly count: number;
  /** Of all values, in kWh; of another quantity than active energy in its own unit. Exact. */
  readonly total: string;
  /** The minute at which the first interval begins. */
  readonly first: number;
  /** The minute at which the last ends. */
  readonly end: number;
  readonly qualities: Readonly<Record<ValueQuality, number>>;
  /** Calendar months in order; an interval counts in the month in which it begins. */
  readonly months: readonly MonthSummary[];
  readonly coverage: StreamCoverage;
}

/** What the intervals that begin in one month come to. */
export interface MonthSummary {
  readonly year: number;
  /** 1 to 12. */
  readonly month: number;
  /** How many have a value. */
  readonly count: number;
  readonly total: string;
}

interface Month {
  readonly clock: ClockMonth;
  count: number;
  readonly total: ExactTotal;
}

/** Sums a stream up as it is read. */
export class StreamSums {
  private readonly stream: Stream;
  private readonly coverage: CoverageTracker;
  private readonly total = new ExactTotal();
  private readonly lengths = new Map<number, number>();
  private readonly qualities = new Float64Array(VALUE_QUALITIES.length);
  private readonly months = new Map<number, Month>();
  private first = Infinity;
  private end = -Infinity;
  /** The month of the last value. */
  private month: Month | null = null;

  constructor(stream: Stream) {
    this.stream = stream;
    this.coverage = trackCoverage(stream);
  }

  private monthAt(minute: number): Month {
    if (this.month !== null && minute >= this.month.clock.from && minute < this.month.clock.to)
      return this.month;
    const clock = monthOfMinute(minute);
    this.month = this.months.get(clock.from) ?? { clock, count: 0, total: new ExactTotal() };
    this.months.set(clock.from, this.month);
    return this.month;
  }

  /** Count the qualities of a chunk; how many of its values from one to another are numbers. */
  private countQualities({ values, qualities }: IntervalChunk, from: number, end: number): number {
    let numbers = 0;
    for (let index = from; index < end; index += 1) {
      const isNumber = !Number.isNaN(values[index]);
      const quality = isNumber ? (qualities?.[index] ?? 0) : MISSING;
      this.qualities[quality] = (this.qualities[quality] as number) + 1;
      if (isNumber) numbers += 1;
    }
    return numbers;
  }

  /**
   * Add a chunk of the stream.
   *
   * @throws RangeError  for a chunk that no reader should make
   */
  add(given: IntervalChunk): void {
    checkChunk(given);
    const chunk = withoutMissing(given);
    const { start, minutes, places, values } = chunk;
    const { length } = values;
    if (length === 0) return;
    this.coverage.add(chunk);
    this.total.add(values, places);
    this.lengths.set(minutes, (this.lengths.get(minutes) ?? 0) + length);
    this.first = Math.min(this.first, start);
    this.end = Math.max(this.end, start + length * minutes);
    for (let from = 0; from < length;) {
      const month = this.monthAt(start + from * minutes);
      const end = Math.min(length, Math.ceil((month.clock.to - start) / minutes));
      month.count += this.countQualities(chunk, from, end);
      month.total.add(values, places, from, end);
      from = end;
    }
  }

  /** What the stream comes to. */
  result(): StreamSummary {
    const lengths = [...this.lengths].map(([minutes, count]) => ({ minutes, count }));
    const months = [...this.months.values()].sort((a, b) => a.clock.from - b.clock.from);
    const at = (quality: ValueQuality): number => this.qualities[VALUE_QUALITIES.indexOf(quality)] ?? 0;
    return {
      stream: this.stream,
      lengths: lengths.sort((a, b) => a.minutes - b.minutes),
      count: lengths.reduce((sum, { count }) => sum + count, 0),
      total: decimalText(this.total.total()),
      first: this.first,
      end: this.end,
      qualities: {
        actual: at('actual'),
        estimated: at('estimated'),
        substituted: at('substituted'),
        edited: at('edited'),
        missing: at('missing'),
      },
      months: months.map(({ clock, count, total }) => ({
        year: clock.year,
        month: clock.month,
        count,
        total: decimalText(total.total()),
      })),
      coverage: this.coverage.result(),
    };
  }
}

/** A chunk in which whatever is missing has no number either. */
function withoutMissing(chunk: IntervalChunk): IntervalChunk {
  const { values, qualities } = chunk;
  const isOdd = qualities?.some((quality, index) => quality === MISSING && !Number.isNaN(values[index]));
  if (isOdd !== true) return chunk;
  return { ...chunk, values: values.map((value, index) => (qualities?.[index] === MISSING ? NaN : value)) };
}
