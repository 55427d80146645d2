import type { IntervalChunk, Stream } from '../stream.ts';
import { QUALITY } from './plan.ts';

/** The most values that are handed on at once. */
export const LONGEST_RUN = 4_096;
const FIRST_LENGTH = 16;
/** Whole numbers below this are exact, and so is one of them times a power of ten that stays below. */
const END = 1e15;

/** A value of one interval: `whole` of 10^-`places` kWh, NaN for none. */
export interface IntervalValue {
  start: number;
  line: number;
  whole: number;
  places: number;
  quality: number;
}

/** Gathers the values of one stream as long as they follow each other. */
export class IntervalRun {
  private readonly stream: Stream;
  private readonly minutes: number;
  private readonly handOn: (chunk: IntervalChunk) => void;
  private values = new Float64Array(FIRST_LENGTH);
  private qualities = new Uint8Array(FIRST_LENGTH);
  private count = 0;
  private start = 0;
  private next = 0;
  private places = 0;
  private line = 0;
  private isActual = true;

  constructor(stream: Stream, minutes: number, handOn: (chunk: IntervalChunk) => void) {
    this.stream = stream;
    this.minutes = minutes;
    this.handOn = handOn;
  }

  add(value: IntervalValue): void {
    if (this.count > 0 && (value.start !== this.next || this.count === LONGEST_RUN)) this.flush();
    const whole =
      value.places === this.places || Number.isNaN(value.whole) ? value.whole : this.fitted(value);
    if (this.count === 0) {
      this.start = value.start;
      this.line = value.line;
      this.isActual = true;
    } else if (this.count === this.values.length) this.grow();
    this.values[this.count] = whole;
    this.qualities[this.count] = value.quality;
    if (value.quality !== QUALITY.actual) this.isActual = false;
    this.count += 1;
    this.next = value.start + this.minutes;
  }

  /** Hand on what is there. */
  flush(): void {
    if (this.count === 0) return;
    const { count, stream, start, minutes, places, line } = this;
    this.count = 0;
    this.handOn({
      stream,
      start,
      minutes,
      places,
      values: this.values.subarray(0, count),
      qualities: this.isActual ? null : this.qualities.subarray(0, count),
      line,
    });
  }

  /** Hand on what is there and keep no room. */
  release(): void {
    this.flush();
    if (this.values.length === FIRST_LENGTH) return;
    this.values = new Float64Array(FIRST_LENGTH);
    this.qualities = new Uint8Array(FIRST_LENGTH);
  }

  /** The value in the decimal places of the run, or the run in those of the value; a new run where neither fits. */
  private fitted({ whole, places }: IntervalValue): number {
    if (places < this.places) {
      const finer = whole * 10 ** (this.places - places);
      if (Math.abs(finer) < END) return finer;
    } else if (this.canBeFiner(places - this.places)) {
      const factor = 10 ** (places - this.places);
      for (let at = 0; at < this.count; at += 1) this.values[at] = (this.values[at] ?? 0) * factor;
      this.places = places;
      return whole;
    }
    this.flush();
    this.places = places;
    return whole;
  }

  private canBeFiner(by: number): boolean {
    const end = END / 10 ** by;
    for (let at = 0; at < this.count; at += 1) if (Math.abs(this.values[at] ?? 0) >= end) return false;
    return true;
  }

  private grow(): void {
    const length = Math.min(LONGEST_RUN, this.values.length * 4);
    const [values, qualities] = [new Float64Array(length), new Uint8Array(length)];
    values.set(this.values);
    qualities.set(this.qualities);
    this.values = values;
    this.qualities = qualities;
  }
}
