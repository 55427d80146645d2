import type { ChunkBuilder } from './chunks.ts';
import type { Directory } from './directory.ts';
import type { Position } from './elements.ts';
import { heldBlocks, type HeldBlock } from './held.ts';
import type { EntryLinks } from './links.ts';
import type { Tell } from './log.ts';
import type { RawReading } from './reading.ts';
import type { KnownTaker, Takers } from './takers.ts';
import type { BlockClock } from './timing.ts';

/** The IntervalBlocks of a feed, as they are read. */
export interface Blocks {
  /** @param links  of the entry, as far as they have been read */
  readonly begin: (links: EntryLinks, at: Position) => void;
  /** The start of the block, in seconds since 1970 UTC. */
  readonly start: (seconds: number) => void;
  readonly reading: (reading: RawReading) => void;
  readonly finish: () => void;
  /** The entry has ended, so that all of its links are known. */
  readonly entryEnds: (links: EntryLinks) => void;
  /** A MeterReading or a ReadingType has come, for which blocks may have waited. */
  readonly release: () => void;
  /** The feed has ended. */
  readonly end: () => void;
}

interface Parts {
  readonly directory: Directory;
  readonly takers: Takers;
  readonly chunks: ChunkBuilder;
  readonly tell: Tell;
}

/** A block whose readings are taken as they come. */
interface DirectBlock {
  readonly taker: KnownTaker;
  readonly clock: BlockClock;
}

function tellUnknown(links: EntryLinks, blocks: readonly HeldBlock[], { directory, tell }: Parts): void {
  const [first] = blocks;
  if (first === undefined) return;
  const header = directory.meterReadingOf(links);
  const why =
    header === null
      ? 'to which no MeterReading of the feed is linked'
      : `whose MeterReading "${header.title}" has no ReadingType in the feed`;
  const readings = String(blocks.reduce((sum, block) => sum + block.readings.length, 0));
  tell('espi/no-reading-type', first.at, { blocks: String(blocks.length), readings, why });
}

/** Blocks that wait for the links of their entry, or for their type. */
function waitingBlocks(parts: Parts) {
  const { takers, chunks, tell } = parts;
  const held = heldBlocks(tell);
  let ofEntry: HeldBlock[] = [];

  const takeAll = (taker: KnownTaker, blocks: readonly HeldBlock[]): void => {
    for (const { readings, clock } of blocks) {
      if (taker !== 'unusable') for (const reading of readings) taker.take(reading, clock);
      chunks.flush();
    }
    held.free(blocks);
  };
  const release = (): void => {
    for (const [key, { links, blocks }] of held.groups) {
      const taker = takers.of(links);
      if (taker === null) continue;
      held.groups.delete(key);
      takeAll(taker, blocks);
    }
  };
  return {
    add: held.add,
    release,
    finish: (block: HeldBlock): void => {
      // A block without readings, or with no room left for them, has nothing to wait for.
      if (block.readings.length > 0) ofEntry.push(block);
    },
    entryEnds: (links: EntryLinks): void => {
      if (ofEntry.length === 0) return;
      const taker = takers.of(links);
      if (taker === null) held.keep(links, ofEntry);
      else takeAll(taker, ofEntry);
      ofEntry = [];
    },
    end: (): void => {
      release();
      for (const { links, blocks } of held.groups.values()) tellUnknown(links, blocks, parts);
      held.end();
    },
  };
}

/** Take the readings of blocks whose type is known, hold back the others. */
export function blocksOf(parts: Parts): Blocks {
  const { takers, chunks } = parts;
  const waiting = waitingBlocks(parts);
  let current: DirectBlock | HeldBlock | null = null;
  return {
    begin: (links, at) => {
      const taker = takers.of(links);
      const clock = { next: NaN };
      current = taker === null ? { at, clock, readings: [] } : { taker, clock };
    },
    start: (seconds) => {
      if (current !== null) current.clock.next = seconds;
    },
    reading: (reading) => {
      if (current === null) return;
      if ('readings' in current) waiting.add(current, reading);
      else if (current.taker !== 'unusable') current.taker.take(reading, current.clock);
    },
    finish: () => {
      if (current !== null && 'readings' in current) waiting.finish(current);
      chunks.flush();
      current = null;
    },
    entryEnds: waiting.entryEnds,
    release: waiting.release,
    end: () => {
      waiting.end();
      takers.end();
    },
  };
}
