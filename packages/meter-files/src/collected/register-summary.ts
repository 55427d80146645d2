import type { RegisterValue, Stream } from '../stream.ts';
import { decimalOf, decimalText, lessDecimal } from './decimal-text.ts';

/** The first and the last reading of a register, and what it counted between them. */
export interface RegisterSummary {
  readonly stream: Stream;
  /** How many readings have a value. */
  readonly count: number;
  readonly first: RegisterValue;
  readonly last: RegisterValue;
  /** The last less the first, in kWh, exact; null where the last is below the first. */
  readonly advance: string | null;
}

/** A reading of a day alone comes before those of a minute. */
const isBefore = (a: RegisterValue, b: RegisterValue): boolean =>
  a.day < b.day || (a.day === b.day && (a.minute ?? -1) < (b.minute ?? -1));

/** Keeps the first and the last reading of a register, in whatever order they come. */
export class RegisterEnds {
  private readonly stream: Stream;
  private count = 0;
  private first: RegisterValue | null = null;
  private last: RegisterValue | null = null;

  constructor(stream: Stream) {
    this.stream = stream;
  }

  /** Add a reading; one without a value is left out. */
  add(reading: RegisterValue): void {
    if (reading.quality === 'missing') return;
    this.count += 1;
    if (this.first === null || isBefore(reading, this.first)) this.first = reading;
    if (this.last === null || !isBefore(reading, this.last)) this.last = reading;
  }

  /** What the register comes to; null where it has no reading. */
  result(): RegisterSummary | null {
    const { stream, count, first, last } = this;
    if (first === null || last === null) return null;
    const counted = lessDecimal(decimalOf(last.value), decimalOf(first.value));
    return { stream, count, first, last, advance: counted.whole < 0n ? null : decimalText(counted) };
  }
}
