/** Numbers that look random and come again in the same order from the same seed (mulberry32). */
export interface Random {
  /** A whole number from 0 to below `end`. */
  readonly below: (end: number) => number;
  /** One of some things. */
  readonly pick: <Item>(items: readonly Item[]) => Item;
  /** Whether something with so many chances in a hundred happens. */
  readonly chance: (percent: number) => boolean;
}

/** Make a source of random numbers; the same seed gives the same numbers. */
export function makeRandom(seed: number): Random {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  const below = (end: number): number => Math.floor(next() * end);
  return {
    below,
    pick: (items) => {
      const item = items[below(items.length)];
      if (item === undefined) throw new RangeError('nothing to pick from');
      return item;
    },
    chance: (percent) => below(100) < percent,
  };
}
