import { readTariff } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { Workers } from '../../apps/cli/src/batch/pool.ts';
import tariffText from '../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';
import { TABLE_HEADER } from '../bench/check-batch-table.ts';

/** A thread that finds nothing in any block. */
const SCRIPT = `
import { parentPort } from 'node:worker_threads';
parentPort.on('message', ({ index, bytes }) => {
  const none = new Uint8Array(0);
  parentPort.postMessage({ index, findings: none, side: none, tally: {}, bytes }, [bytes]);
});
`;
const ENTRY = new URL(`data:text/javascript,${encodeURIComponent(SCRIPT)}`);

function poolOf(count: number): Workers {
  const { value: tariff } = readTariff(tariffText);
  if (tariff === null) throw new Error('the example tariff cannot be read');
  const { document } = tariff;
  const header = TABLE_HEADER.split(',');
  const rest = { otherTariffs: [], account: {}, tolerance: null, isEvery: false, header };
  return new Workers({ unitbook: 'batch', tariff: document, ...rest }, count, ENTRY);
}

const block = { bytes: new TextEncoder().encode('\n'), from: 0, to: 1, line: 2 };

describe('threads that check', () => {
  it('are told of in the order of the blocks', async () => {
    const pool = poolOf(2);
    const told: number[] = [];
    for (let index = 0; index < 20; index += 1)
      await pool.add(block, () => {
        told.push(index);
        return Promise.resolve();
      });
    await pool.end();
    await pool.close();
    expect(told).toEqual(Array.from({ length: 20 }, (_, index) => index));
  });

  it('are told of no more behind a block that could not be written, and not twice of that one', async () => {
    const pool = poolOf(2);
    const told: number[] = [];
    const take = (index: number) => () => {
      told.push(index);
      return index === 1 ? Promise.reject(new Error('no room')) : Promise.resolve();
    };
    const all = async (): Promise<void> => {
      for (let index = 0; index < 20; index += 1) await pool.add(block, take(index));
      await pool.end();
    };
    await expect(all()).rejects.toThrow('no room');
    // Answers that are on their way come in.
    await new Promise((resolve) => setTimeout(resolve, 100));
    await pool.close();
    expect(told).toEqual([0, 1]);
  });
});
