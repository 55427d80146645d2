import type { Position } from './elements.ts';
import type { EntryLinks } from './links.ts';
import type { Tell } from './log.ts';
import type { RawReading } from './reading.ts';
import type { BlockClock } from './timing.ts';

/**
 * Readings that are held back at one time, in all, until their ReadingType comes: two flows of
 * five minutes over a year. In a feed in the usual order none is.
 */
export const HELD_READINGS = 250_000;

/** Different links of blocks that wait; every one is looked up again when an entry comes. */
const HELD_LINKS = 1000;

/** An IntervalBlock whose readings wait for their ReadingType. */
export interface HeldBlock {
  readonly at: Position;
  readonly clock: BlockClock;
  readonly readings: RawReading[];
}

/** Blocks of entries with the same links. */
interface HeldGroup {
  readonly links: EntryLinks;
  readonly blocks: HeldBlock[];
}

/** The blocks that wait. */
export interface HeldBlocks {
  readonly groups: ReadonlyMap<string, HeldGroup> & { readonly delete: (key: string) => boolean };
  readonly add: (block: HeldBlock, reading: RawReading) => void;
  /** Keep the blocks of an entry that has ended. */
  readonly keep: (links: EntryLinks, blocks: readonly HeldBlock[]) => void;
  /** Blocks that no longer wait. */
  readonly free: (blocks: readonly HeldBlock[]) => void;
  /** Tell how many could not be held back. */
  readonly end: () => void;
}

/** What blocks of one MeterReading have in common: the links above them. */
function groupKey({ self, up, related }: EntryLinks): string {
  const above = self.slice(0, self.lastIndexOf('/') + 1);
  return JSON.stringify(self === '' && up === '' ? related : [up, above]);
}

/** Make the place where blocks wait. */
export function heldBlocks(tell: Tell): HeldBlocks {
  const groups = new Map<string, HeldGroup>();
  let held = 0;
  let lost = 0;
  let firstLost: Position | null = null;

  const lose = (at: Position, count: number): void => {
    lost += count;
    firstLost ??= at;
  };
  const free = (blocks: readonly HeldBlock[]): void => {
    for (const { readings } of blocks) held -= readings.length;
  };
  return {
    groups,
    add: ({ readings }, reading) => {
      if (held >= HELD_READINGS) {
        lose(reading.at, 1);
        return;
      }
      held += 1;
      readings.push(reading);
    },
    keep: (links, blocks) => {
      const key = groupKey(links);
      const group = groups.get(key) ?? { links, blocks: [] };
      if (group.blocks.length === 0 && groups.size >= HELD_LINKS) {
        for (const { at, readings } of blocks) lose(readings[0]?.at ?? at, readings.length);
        free(blocks);
        return;
      }
      groups.set(key, group);
      group.blocks.push(...blocks);
    },
    free,
    end: () => {
      if (firstLost === null) return;
      const most = { readings: String(HELD_READINGS), links: String(HELD_LINKS) };
      tell('espi/held-too-many', firstLost, { count: String(lost), ...most });
    },
  };
}
