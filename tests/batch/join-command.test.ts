import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { nodeIo } from '../../apps/cli/src/node-io.ts';
import { run } from '../../apps/cli/src/run.ts';
import { TABLE_HEADER, tableRow } from '../bench/check-batch-table.ts';
import { TARESCO } from './program.ts';
import { runTable, testFolder } from './table-run.ts';

const TERMS = { accounts: 60, wrongOfThousand: 200 };
const TABLE = `${TABLE_HEADER}\n${Array.from({ length: 60 }, (_, at) => tableRow(at + 1, TERMS)).join('')}`;

/** What `unitbook check --join` printed, and how it ended; its reader may be gone. */
async function joined(words: readonly string[], isClosed = false) {
  let [out, err] = ['', ''];
  const io = nodeIo();
  const write = (bytes: Uint8Array): Promise<void> => {
    if (isClosed) return Promise.reject(Object.assign(new Error(), { code: 'EPIPE', syscall: 'write' }));
    out += Buffer.from(bytes).toString('utf8');
    return Promise.resolve();
  };
  const own = { ...io, out: (text: string) => void (out += text), err: (text: string) => void (err += text) };
  const status = await run(['check', '--tariff', TARESCO, ...words], {
    ...own,
    batch: () => ({ ...io.batch(), write }),
  });
  return { status, out, err };
}

/** Two parts of a table in a folder of their own, as options. */
async function parts(text = TABLE, isEvery = false) {
  const folder = testFolder();
  const at = (name: string): string => join(folder, name);
  for (const index of [1, 2]) {
    const options = { blockBytes: 500, part: { index, count: 2 }, withTally: true, isEvery };
    writeFileSync(at(`${String(index)}.ndjson`), (await runTable(text, options)).out);
  }
  return { at, words: ['--join', at('1.ndjson'), '--join', at('2.ndjson')] };
}

describe('unitbook check --join', () => {
  it('writes what one process writes', async () => {
    const whole = await runTable(TABLE, { blockBytes: 500 });
    const { at, words } = await parts();
    const printed = await joined([...words, '--json']);
    expect([printed.status, printed.out]).toEqual([1, whole.out]);
    expect(JSON.parse(printed.err)).toEqual(whole.summary);
    const kept = await joined([...words, '--json', '--findings', at('found.ndjson')]);
    expect([kept.status, kept.err, readFileSync(at('found.ndjson'), 'utf8')]).toEqual([1, '', whole.out]);
    expect(JSON.parse(kept.out)).toEqual(whole.summary);
  });

  it('writes over none of the parts', async () => {
    const { at, words } = await parts();
    const before = readFileSync(at('2.ndjson'), 'utf8');
    const { status, err } = await joined([...words, '--findings', `${at('.')}/2.ndjson`]);
    expect(status).toBe(2);
    expect(err).toContain('One file for a part and the findings');
    expect(readFileSync(at('2.ndjson'), 'utf8')).toBe(before);
  });

  it('tells of every part that is wrong at once', async () => {
    const { at, words } = await parts();
    writeFileSync(at('2.ndjson'), readFileSync(at('2.ndjson'), 'utf8').slice(0, -30));
    const { status, err } = await joined([...words, '--join', at('3.ndjson')]);
    expect(status).toBe(2);
    expect(err.split('\n').map((line) => line.split('. ')[0])).toEqual([
      `${at('3.ndjson')}  No file of this name`,
      'unitbook check  A line that says what the rows of a part came to, but not to its end',
      'unitbook check  No part 2/2',
      '',
    ]);
  });

  it('ends quietly where nobody reads on: with 1 where something was found, with 2 where nothing was', async () => {
    const { words } = await parts();
    expect(await joined(words, true)).toEqual({ status: 1, out: '', err: '' });
    const right = Array.from({ length: 60 }, (_, at) => tableRow(at + 1, { ...TERMS, wrongOfThousand: 0 }));
    const clean = await parts(`${TABLE_HEADER}\n${right.join('')}`, true);
    expect(await joined(clean.words, true)).toEqual({ status: 2, out: '', err: '' });
  });
});
