import { describe, expect, it } from 'vitest';
import { BlockReader, cellRows, type ByteSource, type RowForm } from '../../apps/cli/src/batch/blocks.ts';
import { jsonRows } from '../../apps/cli/src/batch/json-rows.ts';
import { inPart } from '../../apps/cli/src/batch/part.ts';

const MEGABYTE = 1 << 20;

/** Gives some bytes, from a place on, in pieces of so many. */
function sourceOf(bytes: Uint8Array, from: number, piece = Infinity): ByteSource {
  let at = from;
  return {
    read: (into) => {
      const count = Math.min(into.length, bytes.length - at, piece);
      into.set(bytes.subarray(at, at + count));
      at += count;
      return Promise.resolve(count);
    },
  };
}

interface Cutting {
  readonly size: number;
  readonly from?: number;
  readonly piece?: number;
  readonly form?: RowForm;
}

const readerOf = (bytes: Uint8Array, { size, from = 0, piece, form = cellRows(0) }: Cutting): BlockReader =>
  new BlockReader(sourceOf(bytes, from, piece), size, form, { position: from, line: 1 });

/** Blocks as text. */
async function blocksOf(text: string, cutting: Cutting): Promise<readonly string[]> {
  const reader = readerOf(new TextEncoder().encode(text), cutting);
  const blocks: string[] = [];
  for (let block = await reader.next(); block !== null; block = await reader.next())
    blocks.push(new TextDecoder().decode(block.bytes.subarray(block.from, block.to)));
  return blocks;
}

/** Where the blocks of a table begin, from one of these places on. */
async function placesOf(bytes: Uint8Array, cutting: Cutting): Promise<readonly number[]> {
  const reader = readerOf(bytes, cutting);
  const places: number[] = [];
  for (;;) {
    const place = reader.position;
    if ((await reader.next()) === null) return places;
    places.push(place);
  }
}

/** 40 accounts of one row each, one of 500 rows, and 1000 more of one row each. */
const crowded = (): Uint8Array => {
  const one = (account: number): string => `account-${String(account).padStart(4, '0')},value\n`;
  const rows = [
    ...Array.from({ length: 40 }, (_, at) => one(at)),
    ...Array.from({ length: 500 }, () => one(40)),
    ...Array.from({ length: 1000 }, (_, at) => one(41 + at)),
  ];
  return new TextEncoder().encode(rows.join(''));
};

describe('blocks of a table', () => {
  it('are the same from wherever one of them begins, whatever pieces come, beside an account of many rows', async () => {
    const bytes = crowded();
    const size = 256;
    const all = await placesOf(bytes, { size });
    // 19 bytes a row: the account of 500 rows begins at 760 and ends at 10,260.
    expect(all).toContain(760);
    expect(all.length).toBeGreaterThan(20);
    for (const [index, from] of all.entries())
      for (const piece of [7, 300, Infinity])
        expect(await placesOf(bytes, { size, from, piece })).toEqual(all.slice(index));
  });

  it('are shared out among parts without one lost or doubled, one of them begun in its midst', async () => {
    const bytes = crowded();
    const [size, count] = [256, 5];
    const span = { from: 0, size: bytes.length };
    const all = await placesOf(bytes, { size });
    const shared: number[] = [];
    const placesIn = async (index: number, from: number): Promise<number[]> => {
      const reader = readerOf(bytes, { size, from });
      const next = inPart(reader, { index, count }, span);
      const places: number[] = [];
      for (let block = await next(); block !== null; block = await next())
        places.push(reader.position - (block.to - block.from));
      return places;
    };
    for (let index = 1; index <= count; index += 1) {
      const own = await placesIn(index, 0);
      for (const [at, from] of own.entries()) expect(await placesIn(index, from)).toEqual(own.slice(at));
      shared.push(...own);
    }
    expect(shared).toEqual(all);
  });

  it('do not cut an account at empty lines', async () => {
    const text = 'a,1\n\n\r\na,2\n\na,3\n\nb,1\n\n\nb,2\nc,1\nd,1\ne,1\n';
    for (const own of [text, text.replace('a,1', '"a",1')])
      for (let size = 1; size < 20; size += 1) {
        const blocks = await blocksOf(own, { size });
        expect(blocks.join('')).toBe(own);
        for (const rest of [',2', ',3'])
          expect(blocks.some((block) => block.startsWith(`a${rest}`))).toBe(false);
        expect(blocks.some((block) => block.startsWith('b,2'))).toBe(false);
      }
    // 4 bytes show one row of c; twice as many show that d follows.
    expect((await blocksOf(text, { size: 4 })).slice(1)).toEqual(['c,1\n', 'd,1\n', 'e,1\n']);
  });

  it('do not cut an account at empty lines between JSON objects', async () => {
    const first = '{"account":"a"}\n\n \n{"account":"a"}\n';
    const rest = ['b', 'c', 'd'].map((account) => `{"account":"${account}"}\n`);
    for (const size of [17, 19, 20, 36, 40]) {
      const blocks = await blocksOf(`${first}${rest.join('')}`, { size, form: jsonRows() });
      expect(blocks[0]?.startsWith(first)).toBe(true);
      expect(blocks.length).toBeGreaterThan(1);
    }
  });

  it('do not grow with the table behind a quote that nothing closes', async () => {
    const rows = Array.from({ length: 400_000 }, (_, at) => `account-${String(at)},value\n`);
    rows[3] = '"account-3,value\n';
    const bytes = new TextEncoder().encode(rows.join(''));
    const reader = readerOf(bytes, { size: 65_536 });
    let [largest, whole] = [0, 0];
    for (let block = await reader.next(); block !== null; block = await reader.next()) {
      largest = Math.max(largest, block.to - block.from);
      whole += block.to - block.from;
    }
    expect(whole).toBe(bytes.length);
    expect(largest).toBeLessThan(MEGABYTE);
  });
});
