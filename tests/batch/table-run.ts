import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readTariff, type Tariff } from '@unitbook/engine';
import {
  runBatch,
  type BatchIo,
  type BatchOptions,
  type BatchResult,
} from '../../apps/cli/src/batch/index.ts';
import { findingLine } from '../../apps/cli/src/render/finding-line.ts';
import tariffText from '../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';

/** The tariff of the invented utility TARESCO. */
function taresco(): Tariff {
  const { value } = readTariff(tariffText);
  if (value === null) throw new Error('the example tariff cannot be read');
  return value;
}

/** A folder of its own for the files of a test. */
export const testFolder = (): string => mkdtempSync(join(tmpdir(), 'unitbook-batch-'));

/** What a check in this process came to, with everything it wrote. */
export interface TableRun extends BatchResult {
  readonly lines: readonly Record<string, unknown>[];
  readonly out: string;
  readonly side: string;
  /** What was told of the check itself. */
  readonly told: readonly string[];
  readonly err: string;
}

/** Options of a check in a test; rows that cannot be used are kept unless a test says "beside" the findings. */
type RunOptions = Partial<BatchOptions> & { readonly isTerminal?: boolean; readonly sideIs?: 'beside' };

const textOf = (path: string): string => (existsSync(path) ? readFileSync(path, 'utf8') : '');

/** Check the text of a table in this process. */
export async function runTable(
  text: string | Uint8Array,
  { isTerminal = false, sideIs, ...options }: RunOptions = {},
): Promise<TableRun> {
  const folder = testFolder();
  const path = join(folder, 'rows.csv');
  writeFileSync(path, text);
  let [out, err, clock] = ['', '', 0];
  const io: BatchIo = {
    write: (bytes) => {
      out += Buffer.from(bytes).toString('utf8');
      return Promise.resolve();
    },
    err: (more) => {
      err += more;
    },
    isTerminal,
    now: () => (clock += 250),
    entry: null,
    cores: 1,
  };
  const side = options.side ?? join(folder, 'unread.csv');
  const kept = sideIs === 'beside' ? {} : { side };
  const result = await runBatch({ rows: path, tariff: taresco(), ...kept, ...options }, io);
  const isDone = result.status !== 2;
  const found = options.out === undefined ? out : isDone ? textOf(options.out) : '';
  const lines = found
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as Record<string, unknown>);
  const told = result.findings.map((finding) => findingLine(finding).replace(path, 'rows.csv'));
  return {
    ...result,
    lines,
    out: found,
    side: isDone ? textOf(side) : '',
    told,
    err,
  };
}
