import { createInterface } from 'node:readline';
import { Readable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { joinParts } from '../../apps/cli/src/batch/index.ts';
import { TABLE_HEADER, tableRow } from '../bench/check-batch-table.ts';
import { makeRandom, type Random } from '../support/random.ts';
import { runTable } from './table-run.ts';

const TARESCO = { id: 'tarumira-domestic', supplier: 'TARESCO', currency: 'INR' };

/** A row that may be spoilt in one way or another. */
function randomRow(random: Random, account: number): string {
  const row = tableRow(account, { accounts: 0, wrongOfThousand: 60 });
  const dice = random.below(20);
  if (dice === 0) return row.replace(',2025', ',202x');
  if (dice === 1) return row.replace(',', ',,');
  if (dice === 2) return `"${row.slice(0, 5)}\n ""x"" ,${row.slice(5, 13)}"${row.slice(13)}`;
  if (dice === 3) return `${row.trimEnd()}\r\n`;
  if (dice === 4) return '\n';
  if (dice === 5) return row.replace('TAR', 'T"R');
  return row;
}

/** Accounts of one or two bills, rows that are spoilt among them. */
function randomTable(random: Random, first: number): string {
  let text = `${TABLE_HEADER}\n`;
  for (let account = first + 1; account < first + 120; account += 1) {
    const row = randomRow(random, account);
    text +=
      row + (random.chance(30) ? later(row) : '') + (random.chance(10) ? randomRow(random, account) : '');
  }
  return text;
}

/** A second month of an account, for chains that a block must not cut. */
const later = (row: string): string => row.replace('2025-05-01,2025-05-31', '2025-05-31,2025-06-30');

describe('a table in blocks', () => {
  it('comes to the same whatever their size: findings, rows set aside and counts', async () => {
    const random = makeRandom(11);
    for (let round = 0; round < 4; round += 1) {
      const text = randomTable(random, round * 200);
      const whole = await runTable(text);
      for (const blockBytes of [1, 70, 333, 2000]) {
        const own = await runTable(text, { blockBytes });
        expect(own.out).toBe(whole.out);
        expect(own.side).toBe(whole.side);
        expect(own.summary).toEqual(whole.summary);
      }
      expect(whole.lines.length).toBeGreaterThan(10);
    }
  });

  it('comes to the same in any number of parts, put together', async () => {
    const text = randomTable(makeRandom(12), 0);
    const { out, summary } = await runTable(text, { isEvery: true });
    for (const [count, blockBytes] of [
      [1, 333],
      [2, 70],
      [7, 333],
      [40, 70],
    ] as const) {
      let parts = '';
      for (let index = 1; index <= count; index += 1) {
        const part = { index, count };
        parts += (await runTable(text, { blockBytes, part, withTally: true, isEvery: true })).out;
      }
      let joined = '';
      const write = (line: string): Promise<void> => {
        joined += line;
        return Promise.resolve();
      };
      const own = await joinParts(createInterface({ input: Readable.from([parts]) }), write, TARESCO);
      expect([own.problems, own.summary, joined]).toEqual([[], summary, out]);
    }
  });

  it('shows progress on a terminal, with the time left', async () => {
    const rows = Array.from({ length: 300 }, (_, at) =>
      tableRow(at + 1, { accounts: 300, wrongOfThousand: 0 }),
    );
    const { err } = await runTable(`${TABLE_HEADER}\n${rows.join('')}`, {
      blockBytes: 2000,
      isTerminal: true,
    });
    const [first] = err.split('\r\u001b[K').slice(1);
    expect(first).toMatch(/^\d+ % {2}[\d,]+ rows {2}[\d,]+ a second {2}0 wrong {2}\d+ s left$/);
    expect(err.endsWith('\r\u001b[K')).toBe(true);
    expect((await runTable(`${TABLE_HEADER}\n`)).err).toBe('');
  });
});
