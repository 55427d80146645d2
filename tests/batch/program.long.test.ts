import { spawn } from 'node:child_process';
import { closeSync, existsSync, openSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { beforeAll, describe, expect, it } from 'vitest';
import { isWrongRow, tablePieces } from '../bench/check-batch-table.ts';
import { begin, ended, makeProgram, run, TARESCO } from './program.ts';
import type { MainOptions } from './batch-main.ts';
import { testFolder } from './table-run.ts';

const folder = testFolder();
const at = (name: string): string => join(folder, name);
const read = (name: string): string => readFileSync(at(name), 'utf8');
const TERMS = { accounts: 6000, wrongOfThousand: 20 };
const ACCOUNTS = TERMS.accounts;
const BLOCK = 20_000;
let program = '';
let whole = { out: '', err: '', side: '' };

/** Whether the row of an account cannot be used; the first one stands on line 1, from 0. */
const isSpoilt = (account: number): boolean => account % 997 === 5;

/** A table with a row here and there that cannot be used, and bills of all kinds. */
function table(): string {
  const text = [...tablePieces(TERMS)].join('');
  return text
    .split('\n')
    .map((row, line) => (isSpoilt(line) ? row.replace(',2025-05-01', ',May 2025') : row))
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
    const accounts = Array.from({ length: ACCOUNTS }, (_, at) => at + 1);
    const wrong = accounts.filter((account) => isWrongRow(account, TERMS) && !isSpoilt(account));
    expect(rows).toBe(ACCOUNTS);
    // Accounts 5, 1002, 1999, 2996, 3993, 4990 and 5987 say "May 2025".
    expect(verdicts['unreadable']?.bills).toBe(7);
    expect(verdicts['wrong']?.bills).toBe(wrong.length);
    expect(verdicts['right']?.bills).toBe(ACCOUNTS - 7 - wrong.length);
    const lines = whole.out.trimEnd().split('\n');
    const named = lines.flatMap((line) => (JSON.parse(line) as { account?: string }).account ?? []);
    expect(named).toEqual(wrong.map((account) => `TAR-${String(account).padStart(9, '0')}`));
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

  it('says that there is no room, and which file has none', async () => {
    // No file of the process can have more than 8 blocks of 1024 bytes, so that the findings, or the rows set aside,
    // are cut off at 8192.
    const limited = async (options: Partial<MainOptions>) => {
      const words = JSON.stringify({ rows: at('rows.csv'), tariff: TARESCO, workers: 2, ...options });
      return ended(spawn('bash', ['-c', 'ulimit -f 8; exec "$0" "$@"', process.execPath, program, words]));
    };
    const tooLarge = (name: string): string =>
      `${at(name)}  A file larger than the disk allows. Expected room and leave to write. Write to another disk, or in parts with --part. [batch/file]\n`;
    const { status, err } = await limited({ out: at('full.ndjson'), blockBytes: BLOCK });
    expect([status, err]).toEqual([2, tooLarge('full.ndjson')]);
    // What was written is the beginning of the findings, once: nothing was written again behind the failure.
    const written = read('full.ndjson');
    expect(written).toHaveLength(8192);
    expect(whole.out.startsWith(written)).toBe(true);
    const spoilt = table().replaceAll(',2025-05-31', ',May');
    writeFileSync(at('spoilt.csv'), spoilt);
    const side = await limited({ rows: at('spoilt.csv'), side: at('full.side') });
    expect([side.status, side.err]).toEqual([2, tooLarge('full.side')]);
  });

  it('says that standard output has no room, which nothing can go on with', async () => {
    const full = openSync('/dev/full', 'w');
    const words = JSON.stringify({ rows: at('rows.csv'), tariff: TARESCO, workers: 2 });
    const child = spawn(process.execPath, [program, words], { stdio: ['ignore', full, 'pipe'] });
    const { status, err } = await ended(child);
    closeSync(full);
    expect([status, err]).toEqual([
      2,
      'standard output  No space is left on the disk. Expected room and leave to write. Make room, and check again. [batch/file]\n',
    ]);
  });

  it('ends quietly where nobody reads on: with 1 where something was found, with 2 where rows were not looked at', async () => {
    const closed = async (options: Partial<MainOptions>) => {
      const child = begin(program, { workers: 2, blockBytes: 4000, ...options });
      child.stdout?.destroy();
      let err = '';
      child.stderr?.on('data', (more: Buffer) => (err += more.toString('utf8')));
      const status = await new Promise((resolve) => child.on('close', resolve));
      return [status, err];
    };
    expect(await closed({ rows: at('rows.csv') })).toEqual([1, '']);
    writeFileSync(at('right.csv'), [...tablePieces({ accounts: 300, wrongOfThousand: 0 })].join(''));
    expect(await closed({ rows: at('right.csv'), isEvery: true })).toEqual([2, '']);
  });

  it('says of a table that is not there what to do', async () => {
    const { status, err } = await run(program, { rows: at('none.csv') });
    expect([status, err]).toEqual([
      2,
      `${at('none.csv')}  No file of this name. Expected a file that is there. Check the name and the folder it is in. [command/missing-file]\n`,
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
