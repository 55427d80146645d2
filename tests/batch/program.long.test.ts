import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { beforeAll, describe, expect, it } from 'vitest';
import { tablePieces } from '../bench/check-batch-table.ts';
import { begin, ended, makeProgram, run } from './program.ts';
import { testFolder } from './table-run.ts';

const folder = testFolder();
const at = (name: string): string => join(folder, name);
const read = (name: string): string => readFileSync(at(name), 'utf8');
const ACCOUNTS = 6000;
const BLOCK = 20_000;
let program = '';
let whole = { out: '', err: '', side: '' };

/** A table with a row here and there that cannot be used, and bills of all kinds. */
function table(): string {
  const text = [...tablePieces({ accounts: ACCOUNTS, wrongOfThousand: 20 })].join('');
  return text
    .split('\n')
    .map((row, line) => (line % 997 === 5 ? row.replace(',2025-05-01', ',May 2025') : row))
    .join('\n');
}

beforeAll(async () => {
  program = await makeProgram(folder);
  writeFileSync(at('rows.csv'), table());
  const { status, out, err } = await run(program, {
    rows: at('rows.csv'),
    workers: 1,
    blockBytes: BLOCK,
    side: at('whole.side'),
  });
  whole = { out, err, side: read('whole.side') };
  expect(status).toBe(1);
}, 120_000);

describe('the check of a table as a program', () => {
  it('comes to what the table was made with', () => {
    const { verdicts, rows } = JSON.parse(whole.err) as {
      rows: number;
      verdicts: Record<string, { bills: number }>;
    };
    const lines = whole.out.trimEnd().split('\n');
    expect(rows).toBe(ACCOUNTS);
    // Lines 5, 1002, 1999, 2996, 3993, 4990 and 5987 from 0 say "May 2025".
    expect(verdicts['unreadable']?.bills).toBe(7);
    expect(lines).toHaveLength(ACCOUNTS - (verdicts['right']?.bills ?? 0));
  });

  it('comes to the same with any number of workers, in the order of the rows', async () => {
    for (const workers of [2, 3, 5]) {
      const own = await run(program, {
        rows: at('rows.csv'),
        workers,
        blockBytes: BLOCK,
        side: at('w.side'),
      });
      expect(own.out).toBe(whole.out);
      expect(own.err).toBe(whole.err);
      expect(read('w.side')).toBe(whole.side);
    }
  });

  it('takes rows in and gives findings out, as a filter', async () => {
    const own = await run(program, { rows: '-', workers: 2 }, table());
    expect([own.out, own.err]).toEqual([whole.out, whole.err]);
  });

  it('goes on after it was killed, without a row lost or doubled', async () => {
    const options = {
      rows: at('rows.csv'),
      out: at('found.ndjson'),
      blockBytes: 4000,
      journalEvery: 0,
      workers: 2,
    };
    let kills = 0;
    for (;;) {
      const child = begin(program, { ...options, isResumed: true });
      const end = ended(child);
      // Long enough for some blocks, never for all of them: 130 blocks, each noted and synchronised.
      const isDone = await Promise.race([end.then(() => true), untilFurther(kills).then(() => false)]);
      if (isDone) {
        expect((await end).err).toBe(whole.err);
        break;
      }
      child.kill('SIGKILL');
      await end;
      kills += 1;
    }
    expect(kills).toBeGreaterThan(2);
    expect(read('found.ndjson')).toBe(whole.out);
    expect(read('found.ndjson.unread.csv')).toBe(whole.side);
  }, 120_000);

  it('does not go on with another table', async () => {
    const options = { rows: at('other.csv'), out: at('other.ndjson'), workers: 1 };
    writeFileSync(at('other.csv'), table().slice(0, 5000));
    await run(program, options);
    writeFileSync(at('other.csv'), table().slice(0, 6000));
    const { status, err } = await run(program, { ...options, isResumed: true });
    expect(status).toBe(2);
    expect(err).toContain('[batch/cannot-resume]');
  });

  it('says that a disk is full, and that it can go on', async () => {
    const { status, err } = await run(program, {
      rows: at('rows.csv'),
      out: '/dev/full',
      side: at('full.side'),
      workers: 2,
    });
    expect(status).toBe(2);
    expect(err).toBe(
      '/dev/full  No space is left on the disk. Expected room and leave to write. Make room, and go on with --resume: what is written stays. [batch/file]\n',
    );
  });

  it('ends quietly where nobody reads on', async () => {
    const child = begin(program, { rows: at('rows.csv'), workers: 2, isEvery: true, blockBytes: 4000 });
    child.stdout?.destroy();
    let err = '';
    child.stderr?.on('data', (more: Buffer) => (err += more.toString('utf8')));
    const status = await new Promise((resolve) => child.on('close', resolve));
    expect([status, err]).toEqual([0, '']);
  });

  it('says of a table that is not there what to do', async () => {
    const { status, err } = await run(program, { rows: at('none.csv') });
    expect([status, err]).toEqual([
      2,
      `${at('none.csv')}  No such file. Expected a file that can be read. Check the path. [batch/file]\n`,
    ]);
  });

  it('comes to the same in parts, one of them done again after its process was killed', async () => {
    const parts = [1, 2, 3, 4, 5];
    const options = { rows: at('rows.csv'), workers: 1, blockBytes: BLOCK, withTally: true };
    const found = parts.map(async (index) => {
      const part = { index, count: parts.length };
      const first = begin(program, { ...options, part });
      const end = ended(first);
      if (index === 3) {
        first.kill('SIGKILL');
        expect((await end).out).toBe('');
        return (await run(program, { ...options, part })).out;
      }
      return (await end).out;
    });
    const joined = await run(program, { isJoining: true }, (await Promise.all(found)).join(''));
    expect([joined.out, joined.err]).toEqual([whole.out, whole.err]);
  });
});

/** Until the journal has been written a few times more. */
async function untilFurther(kills: number): Promise<void> {
  const path = at('found.ndjson.journal');
  const place = (): number =>
    existsSync(path) ? (JSON.parse(readFileSync(path, 'utf8')) as { position: number }).position : 0;
  const begun = place();
  while (place() < begun + 60_000 + kills * 10_000) await setTimeout(1);
}
