import { once } from 'node:events';
import { createWriteStream, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { columnNames, readTariff } from '@unitbook/engine';
import { BlockChecker } from '../../apps/cli/src/batch/check-block.ts';
import { readLayout } from '../../apps/cli/src/batch/layout.ts';
import { RowScanner } from '../../apps/cli/src/batch/scan-rows.ts';
import type { MainOptions } from '../batch/batch-main.ts';
import { makeProgram, run, TARESCO } from '../batch/program.ts';
import { TABLE_HEADER, tablePieces, type TableTerms } from './check-batch-table.ts';
import { measure, type Subject } from './measure.ts';

/** Nanoseconds for an account, in one thread. */
export interface BatchSpeed {
  /** Cutting rows into cells and cells into numbers, and nothing else. */
  readonly parsed: number;
  /** Bills that are all right, from text to a verdict. */
  readonly right: number;
  /** The same with 2 % wrong bills, each explained. */
  readonly someWrong: number;
}

const ACCOUNTS = 2000;
const NAMES = TABLE_HEADER.split(',');

/** A table without its header, as bytes. */
function rowsOf(terms: TableTerms): Uint8Array {
  const [, ...rows] = tablePieces(terms);
  return new TextEncoder().encode(rows.join(''));
}

const times = (count: number, one: () => number): number => {
  let sum = 0;
  for (let at = 0; at < count; at += 1) sum += one();
  return sum;
};

/** Measure the check of blocks in memory, beside the bare reading of their rows. */
export function measureBatchSpeed(): BatchSpeed {
  const { value: tariff } = readTariff(readFileSync(TARESCO, 'utf8'));
  if (tariff === null) throw new Error('the example tariff cannot be read');
  const { value: layout } = readLayout(NAMES, columnNames(tariff));
  if (layout === null) throw new Error('the header cannot be read');
  const terms = { tariff, otherTariffs: [], account: {}, options: {}, isEvery: false, header: NAMES };
  const checker = new BlockChecker(terms);
  const scanner = new RowScanner(layout);
  const right = rowsOf({ accounts: ACCOUNTS, wrongOfThousand: 0 });
  const wrong = rowsOf({ accounts: ACCOUNTS, wrongOfThousand: 20 });
  const check = (bytes: Uint8Array) => checker.check({ bytes, from: 0, to: bytes.length, line: 2 });
  const verdicts = check(right).tally.verdicts;
  if (verdicts['right']?.bills !== ACCOUNTS) throw new Error('right bills are found wrong');
  const subjects: readonly Subject[] = [
    {
      name: 'parsed',
      run: (count) =>
        times(count, () => {
          scanner.scan(right, 0, right.length);
          return scanner.table.count;
        }),
    },
    { name: 'right', run: (count) => times(count, () => check(right).tally.rows) },
    { name: 'someWrong', run: (count) => times(count, () => check(wrong).findings.length) },
  ];
  const timings = measure(subjects, { warmUpMs: 1500, sampleMs: 300, samples: 9 });
  const of = (name: string): number => (timings.get(name) ?? NaN) / ACCOUNTS;
  return { parsed: of('parsed'), right: of('right'), someWrong: of('someWrong') };
}

/** What checks of whole files took, in processes of their own. */
export interface BatchRuns {
  /** How many times as fast two threads are as one: bills that are all right, and a fifth of them wrong. */
  readonly twoOnRight: number;
  readonly twoOnWrong: number;
  /** The most memory, in megabytes, with 2 % wrong bills: a million accounts, and ten million. */
  readonly million: number;
  readonly tenMillion: number | null;
}

interface Measured {
  readonly milliseconds: number;
  readonly kilobytes: number;
}

/** Write a table to a file. */
export async function writeTable(path: string, terms: TableTerms): Promise<void> {
  const file = createWriteStream(path);
  for (const piece of tablePieces(terms)) if (!file.write(piece)) await once(file, 'drain');
  file.end();
  await once(file, 'close');
}

const SAMPLES = 3;

/**
 * Measure checks of whole files. Ten million accounts take a gigabyte of disk and minutes.
 *
 * @param isLong  whether ten million are measured, too
 */
export async function measureBatchRuns(isLong: boolean): Promise<BatchRuns> {
  const folder = mkdtempSync(join(tmpdir(), 'unitbook-bench-'));
  const program = await makeProgram(folder);
  const measured = async (terms: TableTerms, options: Partial<MainOptions>): Promise<Measured> => {
    const rows = join(folder, `${String(terms.accounts)}-${String(terms.wrongOfThousand)}.csv`);
    await writeTable(rows, terms);
    let best: Measured = { milliseconds: Infinity, kilobytes: 0 };
    for (let sample = 0; sample < (terms.accounts > 1e6 ? 1 : SAMPLES); sample += 1) {
      const { err } = await run(program, { rows, out: join(folder, 'found'), isMeasured: true, ...options });
      const own = JSON.parse(err) as Measured;
      best = {
        milliseconds: Math.min(best.milliseconds, own.milliseconds),
        kilobytes: Math.max(best.kilobytes, own.kilobytes),
      };
    }
    rmSync(rows);
    return best;
  };
  const twice = async (terms: TableTerms): Promise<number> => {
    const one = await measured(terms, { workers: 1 });
    return one.milliseconds / (await measured(terms, { workers: 2 })).milliseconds;
  };
  try {
    const twoOnRight = await twice({ accounts: 3_000_000, wrongOfThousand: 0 });
    const twoOnWrong = await twice({ accounts: 100_000, wrongOfThousand: 200 });
    const { kilobytes } = await measured({ accounts: 1_000_000, wrongOfThousand: 20 }, { workers: 2 });
    const more = isLong
      ? await measured({ accounts: 10_000_000, wrongOfThousand: 20 }, { workers: 2 })
      : null;
    return {
      twoOnRight,
      twoOnWrong,
      million: kilobytes / 1000,
      tenMillion: more === null ? null : more.kilobytes / 1000,
    };
  } finally {
    rmSync(folder, { recursive: true });
  }
}
