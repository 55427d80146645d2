import { describe, expect, it } from 'vitest';
import { joinParts } from '../../apps/cli/src/batch/index.ts';
import { TABLE_HEADER, tableRow } from '../bench/check-batch-table.ts';
import { runTable } from './table-run.ts';

const TARIFF = { id: 'tarumira-domestic', supplier: 'TARESCO', currency: 'INR' };
const TERMS = { accounts: 90, wrongOfThousand: 100 };
const TABLE = `${TABLE_HEADER}\n${Array.from({ length: 90 }, (_, at) => tableRow(at + 1, TERMS)).join('')}`;

const partOf = async (index: number, count: number, text = TABLE): Promise<string> =>
  (await runTable(text, { blockBytes: 500, part: { index, count }, withTally: true })).out;

/** Join texts of parts; what is written, and what is wrong. */
async function joined(...texts: readonly string[]) {
  let out = '';
  const lines = async function* (): AsyncGenerator<string> {
    for (const line of texts.join('').split('\n')) yield await Promise.resolve(line);
  };
  const write = (line: string): Promise<void> => {
    out += line;
    return Promise.resolve();
  };
  const { summary, problems } = await joinParts(lines(), write, TARIFF);
  return { out, summary, problems };
}

describe('parts of a table', () => {
  it('end with what their rows came to, which part they are, and of which check', async () => {
    const [first, second] = [await partOf(1, 2), await partOf(2, 2)];
    const tallyOf = (text: string) =>
      JSON.parse(text.trimEnd().split('\n').at(-1) ?? '') as { part: string; of: string };
    expect([tallyOf(first).part, tallyOf(second).part]).toEqual(['1/2', '2/2']);
    expect(tallyOf(first).of).toMatch(/^[0-9a-f]{64}$/);
    expect(tallyOf(second).of).toBe(tallyOf(first).of);
  });

  it('come to what the whole comes to', async () => {
    const whole = await runTable(TABLE, { blockBytes: 500 });
    const own = await joined(await partOf(1, 3), await partOf(2, 3), await partOf(3, 3));
    expect(own.problems).toEqual([]);
    expect(own.out).toBe(whole.out);
    expect(own.summary).toEqual(whole.summary);
  });

  it('are needed once each', async () => {
    const [first, second, third] = [await partOf(1, 3), await partOf(2, 3), await partOf(3, 3)];
    expect((await joined(first, second, second, third)).problems).toEqual(['part 2/3 twice']);
    expect((await joined(first, third)).problems).toEqual(['no part 2/3']);
    expect((await joined(second)).problems).toEqual(['no part 1/3', 'no part 3/3']);
    expect((await joined('')).problems).toEqual(['no line that says what the rows of a part came to']);
  });

  it('are all of one check', async () => {
    const other = await partOf(2, 2, TABLE.replace('TAR-000000001', 'TAR-1'));
    expect((await joined(await partOf(1, 2), other)).problems).toEqual(['parts of different checks']);
    expect((await joined(await partOf(1, 2), await partOf(2, 3))).problems).toEqual([
      'parts of 2 and parts of 3',
    ]);
  });

  it('are refused where the last line of one was cut, or where lines stand behind it', async () => {
    const [first, second] = [await partOf(1, 2), await partOf(2, 2)];
    const torn = `${first.slice(0, -40)}\n`;
    const { problems, out } = await joined(torn, second);
    expect(problems).toEqual([
      'a line that says what the rows of a part came to, but not to its end',
      'no part 1/2',
    ]);
    expect(out).not.toContain('tally');
    expect((await joined('{"tally":5}\n', first, second)).problems).toEqual([
      'a line that says what the rows of a part came to, but not to its end',
    ]);
    expect((await joined(first, second, '{"account":"x"}\n')).problems).toEqual([
      'lines of a part behind the last one that was done to its end',
    ]);
  });
});
