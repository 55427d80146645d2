import type { Given } from './read-units.ts';

/** A quantity that follows from others: the sum of some, or one less another. */
interface Derived {
  readonly at: number;
  readonly of: readonly number[];
  readonly isDifference: boolean;
  /** Whether it is given, too: then both have to be the same. */
  readonly isGiven: boolean;
}

/** The quantities of a period by place, before any rule works others out. */
export interface GivenSlots {
  /** The place of each name that is known in every period. */
  readonly at: ReadonlyMap<string, number>;
  /** Facts of the account in their places. */
  readonly values: Float64Array;
  /** Where each column of the input goes. */
  readonly columns: Int32Array;
  readonly derived: readonly Derived[];
}

/** More than any quantity that can be given: ten digits of units. */
const TOO_MANY = 1e12;

/** Whole thousandths that can be given. */
const isQuantity = (value: number): boolean =>
  value >>> 0 === value || (value >= 0 && value < TOO_MANY && Math.floor(value) === value);

class SlotBuilder {
  readonly at = new Map<string, number>();
  readonly derived: Derived[] = [];

  place(name: string): number {
    const known = this.at.get(name);
    if (known !== undefined) return known;
    this.at.set(name, this.at.size);
    return this.at.size - 1;
  }

  private derive(name: string, of: readonly string[], isDifference: boolean): void {
    const places = of.map((one) => this.at.get(one) ?? -1);
    const isGiven = this.at.has(name);
    this.derived.push({ at: this.place(name), of: places, isDifference, isGiven });
  }

  sumBlocks(channel: string, blocks: readonly string[]): void {
    const known = blocks.map((block) => `${channel}@${block}`).filter((name) => this.at.has(name));
    const isPart = this.at.has(channel) && known.length < blocks.length;
    if (known.length > 0 && !isPart) this.derive(channel, known, false);
  }

  workOutAt(suffix: string): void {
    const derive = (name: string, of: readonly string[], isDifference: boolean): void => {
      const names = of.map((one) => `${one}${suffix}`);
      if (names.every((one) => this.at.has(one))) this.derive(`${name}${suffix}`, names, isDifference);
    };
    derive('self-consumption', ['generation', 'export'], true);
    derive('total-use', ['import', 'self-consumption'], false);
  }
}

/**
 * Give every quantity that is known a place, with what follows from them as `workOut` has it.
 *
 * @param names  of the columns of the input
 * @param facts  of the account; a column of the same name goes before
 * @param blocks of the tariff
 */
export function givenSlots(names: readonly string[], facts: Given, blocks: readonly string[]): GivenSlots {
  const builder = new SlotBuilder();
  const columns = Int32Array.from(names, (name) => builder.place(name));
  const own = Object.entries(facts).map(([name, figure]) => [builder.place(name), figure] as const);
  for (const channel of ['import', 'export', 'generation']) builder.sumBlocks(channel, blocks);
  for (const block of blocks) builder.workOutAt(`@${block}`);
  builder.workOutAt('');
  const values = new Float64Array(builder.at.size + 1);
  for (const [place, { numerator }] of own) values[place] = numerator as number;
  return { at: builder.at, values, columns, derived: builder.derived };
}

/**
 * What has to be worked out where only some names are used.
 *
 * @returns the same slots, without quantities that nothing uses and that were not given
 */
export function onlyUsed(slots: GivenSlots, used: ReadonlySet<string>): GivenSlots {
  const places = new Set([...used].map((name) => slots.at.get(name)));
  const derived = [...slots.derived].reverse().filter(({ at, of, isGiven }) => {
    if (!isGiven && !places.has(at)) return false;
    for (const place of of) places.add(place);
    return true;
  });
  return { ...slots, derived: derived.reverse() };
}

/**
 * Take the units of one period in.
 *
 * @param units  whole thousandths, a row for each period
 * @param row    the period
 * @returns      false where they are no quantities, do not add up, or one that is used cannot be worked out
 */
export function takeUnits(
  { values, columns, derived }: GivenSlots,
  units: Float64Array,
  row: number,
): boolean {
  const from = row * columns.length;
  for (let column = 0; column < columns.length; column += 1) {
    const value = units[from + column] as number;
    if (!isQuantity(value)) return false;
    values[columns[column] as number] = value;
  }
  for (let index = 0; index < derived.length; index += 1) {
    const { at, of, isDifference, isGiven } = derived[index] as Derived;
    let value = values[of[0] as number] as number;
    for (let next = 1; next < of.length; next += 1) {
      const other = values[of[next] as number] as number;
      value += isDifference ? -other : other;
    }
    if (value < 0 || (isGiven && value !== values[at])) return false;
    values[at] = value;
  }
  return true;
}

/** A quantity of all periods: in a column of values, from one place on, so many places apart. */
export interface GivenColumn {
  readonly values: Float64Array;
  readonly first: number;
  readonly every: number;
}

/** The quantities of all periods: what `takeUnits` takes in for one. */
export class GivenColumns {
  /** By place; the last one is for what a settlement works out. Places that nothing reads keep what they have. */
  readonly values: readonly Float64Array[];
  private readonly slots: GivenSlots;
  /** Columns of the input that are read by place. */
  private readonly copied: readonly number[];

  /**
   * @param places  that are read, besides those that others are worked out of
   */
  constructor(slots: GivenSlots, periods: number, places: Iterable<number>) {
    this.slots = slots;
    this.values = Array.from(slots.values, (fact) => new Float64Array(periods).fill(fact));
    const read = new Set([...places, ...slots.derived.flatMap(({ at, of }) => [at, ...of])]);
    this.copied = [...slots.columns.keys()].filter((column) => read.has(slots.columns[column] as number));
  }

  /**
   * Take the units of all periods in.
   *
   * @returns false where `takeUnits` is false for one of them
   */
  take(units: Float64Array): boolean {
    for (let at = 0; at < units.length; at += 1) if (!isQuantity(units[at] as number)) return false;
    const { columns, derived } = this.slots;
    for (const column of this.copied) {
      const own = this.values[columns[column] as number] as Float64Array;
      for (let at = 0; at < own.length; at += 1) own[at] = units[at * columns.length + column] as number;
    }
    return derived.every((one) => this.derive(one));
  }

  /** Where a quantity stands: among the units that were taken in, unless it is a fact or worked out. */
  columnOf(place: number, units: Float64Array): GivenColumn {
    const { columns, derived } = this.slots;
    const first = derived.some(({ at }) => at === place) ? -1 : columns.indexOf(place);
    return first < 0
      ? { values: this.values[place] as Float64Array, first: 0, every: 1 }
      : { values: units, first, every: columns.length };
  }

  private derive({ at: place, of, isDifference, isGiven }: Derived): boolean {
    const own = this.values[place] as Float64Array;
    const parts = of.map((one) => this.values[one] as Float64Array);
    for (let at = 0; at < own.length; at += 1) {
      let value = (parts[0] as Float64Array)[at] as number;
      for (let next = 1; next < parts.length; next += 1) {
        const other = (parts[next] as Float64Array)[at] as number;
        value += isDifference ? -other : other;
      }
      if (value < 0 || (isGiven && value !== own[at])) return false;
      own[at] = value;
    }
    return true;
  }
}
