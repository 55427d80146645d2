import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runBatch, type BatchIo, type BatchOptions } from '../../apps/cli/src/batch/index.ts';
import { DEMO_TARIFF, goodTariff } from '../support/demo.ts';
import { said, type MessageCase } from './message-case.ts';

/** What is told of a table, or of one of its rows: there "line:column" is where. */
export type Told = Pick<MessageCase, 'code' | 'at' | 'found' | 'expected' | 'remedy'>;

/** A table of bills, or a choice of options, that brings about one finding. */
export interface BatchCase extends Told {
  readonly when: string;
  readonly make: () => Promise<readonly Told[]>;
}

interface Line extends Told {
  readonly verdict: string;
  readonly line: number;
  readonly column: string | null;
}

/** A folder of its own for the files of a case. */
export const folder = (): string => mkdtempSync(join(tmpdir(), 'unitbook-batch-'));

/** What is said of a finding. */
export const toldOf = (finding: Parameters<typeof said>[0]): Told => {
  const { code, at, found, expected, remedy } = said(finding);
  return { code, at, found, expected, remedy };
};

/** Everything that a check says of itself and of rows that it cannot read. */
export async function check(options: Omit<BatchOptions, 'tariff'>): Promise<readonly Told[]> {
  let out = '';
  const io: BatchIo = {
    write: (bytes) => {
      out += Buffer.from(bytes).toString('utf8');
      return Promise.resolve();
    },
    err: () => undefined,
    isTerminal: false,
    now: () => 0,
    entry: null,
    cores: 1,
  };
  const { findings } = await runBatch({ ...options, tariff: goodTariff(DEMO_TARIFF) }, io);
  const lines = out.split('\n').filter((line) => line !== '');
  const rows = lines.map((line) => JSON.parse(line) as Line);
  return [
    ...findings.map(({ finding }) => toldOf(finding)),
    ...rows
      .filter(({ verdict }) => verdict === 'unreadable')
      .map(({ line, column, code, found, expected, remedy }) => {
        const at = column === null ? String(line) : `${String(line)}:${column}`;
        return { code, at, found, expected, remedy };
      }),
  ];
}

/** The check of a table of this text. */
export const table =
  (text: string | Uint8Array, form: 'csv' | 'ndjson' = 'csv') =>
  (): Promise<readonly Told[]> => {
    const rows = join(folder(), 'rows');
    writeFileSync(rows, text);
    return check({ rows, form });
  };

/** The first row of tables. */
export const HEADER =
  'account,from,to,sanctioned-load,import,export,opening,printed.line.energy,printed.payable';
/** A bill that is right. */
export const APRIL = 'TAR-41-00001,2025-04-01,2025-05-01,3,222,280,0,,180';
/** The next one of the same account. */
export const MAY = 'TAR-41-00001,2025-05-01,2025-06-01,3,298,216,,72.00,230';
