import type { MeterReader, MeterSink } from '../stream.ts';
import { blocksOf } from './blocks.ts';
import { chunkBuilder } from './chunks.ts';
import { directory } from './directory.ts';
import { entries, type Entries } from './entries.ts';
import type { LocalTimeParameters } from './local-time.ts';
import { localTimeIn } from './local-time-fields.ts';
import { findingLog, type Tell } from './log.ts';
import { onceOnly } from './take.ts';
import { takers } from './takers.ts';
import { xmlReader } from './xml.ts';

/** A reader of an ESPI feed. */
export interface EspiReader extends MeterReader {
  /** Local time as the feed gives it; null as long as it has not given it. */
  readonly localTime: LocalTimeParameters | null;
}

/** Local time as it comes: the first that can be used; another one later is asked about. */
function localTimeKeeper(tell: Tell) {
  let kept: LocalTimeParameters | null = null;
  return {
    get: (): LocalTimeParameters | null => kept,
    read: (source: Parameters<typeof localTimeIn>[0]): void => {
      const parameters = localTimeIn(source);
      if (parameters === null) return;
      kept ??= parameters;
      if (JSON.stringify(kept) !== JSON.stringify(parameters)) tell('espi/second-local-time', source.at);
    },
  };
}

/** Say of a file that was read to its end that there was nothing to read. */
function tellNothing({ seen: { root, hasEspi, hasReading } }: Entries, tell: Tell): void {
  const at = { line: 1, column: 1 };
  if (!hasEspi) tell('espi/not-a-feed', at, { root });
  else if (!hasReading) tell('espi/no-readings', at);
}

/**
 * Read an ESPI feed (NAESB REQ.21: an Atom feed with meter readings), piece by piece.
 *
 * Entries can come in any order. Readings are handed on as they come where their ReadingType has come
 * before them; else they are held back until it comes, 250000 at most. Times of chunks are minutes of UTC.
 * Values are exact: whole numbers of the smallest unit that the feed uses. Every good reading is handed on,
 * everything else is told as a finding with its line and column, of one kind a hundred at most.
 *
 * @param sink  is given intervals, register readings and findings
 * @example
 * const found = [];
 * const reader = espiReader({ intervals: () => null, register: () => null, finding: ({ code }) => found.push(code) });
 * reader.write('<feed xmlns="http://www.w3.org/2005/Atom"></feed>');
 * reader.end();
 * found //=> ["espi/not-a-feed"]
 */
export function espiReader(sink: MeterSink): EspiReader {
  const log = findingLog(sink);
  const { tell } = log;
  const chunks = chunkBuilder(sink);
  const local = localTimeKeeper(tell);
  const known = directory(tell);
  const context = { sink, tell, tellOnce: onceOnly(tell), chunks, localTime: local.get };
  const blocks = blocksOf({ directory: known, takers: takers(known, context), chunks, tell });
  const feed = entries({
    ...known,
    blocks,
    localTime: (at, fields) => {
      local.read({ at, fields, tell });
    },
  });
  let isRefused = false;
  const xml = xmlReader({
    open: feed.open,
    close: feed.close,
    refuse: (code, position, values) => {
      isRefused = true;
      tell(code, position, values);
    },
  });
  return {
    clock: { offset: 0 },
    get localTime() {
      return local.get();
    },
    write: xml.write,
    end: () => {
      xml.end();
      feed.end();
      blocks.end();
      if (!isRefused) tellNothing(feed, tell);
      log.end();
    },
  };
}
