import { INTERVAL_CHANNELS, type IntervalChannel } from '@unitbook/engine';
import type { Assign, CollectedFile, Stream } from '@unitbook/meter-files';

/** What a register is to be counted as, where a person says otherwise than its own words. */
export type CountAs = IntervalChannel | 'nothing';

/** Which registers of a file are counted. */
export interface Counting {
  /** The connection, of several; null: none was chosen. */
  readonly point: string | null;
  readonly counts: ReadonlyMap<Stream, CountAs>;
}

/** As the words of the file have it. */
export const OWN_WORDS: Counting = { point: null, counts: new Map() };

/** Every register and channel of a file, once. */
export function streamsOf({ registers, intervals }: CollectedFile): readonly Stream[] {
  return [...new Set([...registers, ...intervals].map(({ stream }) => stream))];
}

/** The connections of a file that count active energy. */
export function pointsOf(file: CollectedFile): readonly string[] {
  const energy = streamsOf(file).filter(({ quantity }) => quantity !== 'other');
  return [...new Set(energy.map(({ point }) => point))];
}

/** What a register is counted as. */
export function countedAs(stream: Stream, { point, counts }: Counting): CountAs {
  const said = counts.get(stream);
  if (said !== undefined) return said;
  if (point !== null && stream.point !== point) return 'nothing';
  return INTERVAL_CHANNELS.find((channel) => channel === stream.quantity) ?? 'nothing';
}

/** For the readers of a collected file; undefined where its own words are to count. */
export function assignOf(counting: Counting): Assign | undefined {
  if (counting.point === null && counting.counts.size === 0) return undefined;
  return (stream) => {
    const as = countedAs(stream, counting);
    return as === 'nothing' ? null : as;
  };
}
