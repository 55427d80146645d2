import type { BlockReader } from './blocks.ts';
import type { Block } from './check-block.ts';
import type { BatchOptions } from './options.ts';

/**
 * The blocks of one part of a table: those that begin in its share of the bytes. Every part cuts the whole table above
 * it into the same blocks, since only that tells where rows begin; it only does not check them.
 *
 * @param span  where the rows begin, and the bytes of the table
 */
export function inPart(
  reader: BlockReader,
  part: BatchOptions['part'],
  { from, size }: { readonly from: number; readonly size: number | null },
): () => Promise<Block | null> {
  if (part === undefined || size === null) return () => reader.next();
  const boundary = (index: number): number => from + Math.floor(((size - from) * index) / part.count);
  const [begin, end] = [boundary(part.index - 1), boundary(part.index)];
  return async () => {
    for (;;) {
      const place = reader.position;
      if (part.index < part.count && place >= end) return null;
      const block = await reader.next();
      if (block === null || place >= begin) return block;
    }
  };
}
