import { LARGEST_WHOLE } from '@unitbook/engine';
import { addDecimals, type Decimal } from './decimal-text.ts';

/** A sum of whole numbers of 10^-places that stays exact however large it is. */
interface Part {
  readonly places: number;
  /** What has not been carried yet: exact, because it is never larger than 2^53 - 1. */
  sum: number;
  carried: bigint;
}

/** A sum of values of any number of decimal places. */
export class ExactTotal {
  private readonly parts: Part[] = [];
  private part: Part | null = null;

  /** The part that counts in so many places. */
  private partOf(places: number): Part {
    if (this.part?.places === places) return this.part;
    let part = this.parts.find((one) => one.places === places);
    if (part === undefined) {
      part = { places, sum: 0, carried: 0n };
      this.parts.push(part);
    }
    this.part = part;
    return part;
  }

  /**
   * Add some values, except those that are no number.
   *
   * @param values  whole numbers of at most 2^53 - 1
   * @param places  they are counted in
   * @param from    the first
   * @param end     the one after the last
   */
  add(values: Float64Array, places: number, from = 0, end: number = values.length): void {
    const part = this.partOf(places);
    let { sum } = part;
    for (let index = from; index < end; index += 1) {
      const value = values[index] as number;
      if (Number.isNaN(value)) continue;
      const next = sum + value;
      if (next <= LARGEST_WHOLE && next >= -LARGEST_WHOLE) sum = next;
      else {
        part.carried += BigInt(sum);
        sum = value;
      }
    }
    part.sum = sum;
  }

  /** The sum of all, exactly. */
  total(): Decimal {
    return this.parts
      .map(({ places, sum, carried }) => ({ whole: carried + BigInt(sum), places }))
      .reduce(addDecimals, { whole: 0n, places: 0 });
  }
}
