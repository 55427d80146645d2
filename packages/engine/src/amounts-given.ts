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
    if (!(value >= 0 && value < TOO_MANY && Math.floor(value) === value)) return false;
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
