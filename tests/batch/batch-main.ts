// The check of a table as a program of its own, for tests that need processes and threads:
// node batch-main.mjs '{"rows":"table.csv","tariff":"tariff.json","out":"found.ndjson"}'
import { readFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { createInterface } from 'node:readline';
import { readTariff, type Tariff } from '@unitbook/engine';
import {
  isBatchWorker,
  joinParts,
  runBatch,
  serveBatch,
  summaryPage,
  type BatchIo,
  type BatchOptions,
} from '../../apps/cli/src/batch/index.ts';
import { findingLine } from '../../apps/cli/src/render/finding-line.ts';

/** Options of a check, its tariff as a path. */
export interface MainOptions extends Omit<BatchOptions, 'tariff'> {
  readonly tariff: string;
  /** Put the findings of parts together instead, which come on standard input. */
  readonly isJoining?: boolean;
  /** Write the summary here, as JSON; left out: as a page, to standard error. */
  readonly summary?: boolean;
  /** Write what it took instead: milliseconds without the start of the program, and the most memory, in kilobytes. */
  readonly isMeasured?: boolean;
}

function tariffOf(path: string): Tariff {
  const { value } = readTariff(readFileSync(path, 'utf8'));
  if (value === null) throw new Error(`${path} cannot be read`);
  return value;
}

const write = (bytes: Uint8Array): Promise<void> =>
  new Promise((resolve, reject) => {
    process.stdout.write(bytes, (error) => {
      if (error) reject(error);
      else resolve();
    });
  });

async function main({
  tariff: path,
  isJoining,
  isMeasured,
  summary: isTold,
  ...options
}: MainOptions): Promise<number> {
  process.stdout.on('error', () => undefined);
  const tariff = tariffOf(path);
  if (isJoining === true) {
    const lines = createInterface({ input: process.stdin });
    const { summary, problems } = await joinParts(lines, (line) => write(Buffer.from(line)), tariff.document);
    for (const problem of problems) process.stderr.write(`${problem}\n`);
    if (problems.length > 0) return 2;
    if (isTold === true) process.stderr.write(`${JSON.stringify(summary)}\n`);
    return 0;
  }
  const io: BatchIo = {
    write,
    err: (text) => void process.stderr.write(text),
    isTerminal: process.stderr.isTTY,
    now: () => performance.now(),
    entry: process.argv[1] ?? null,
    cores: availableParallelism(),
  };
  const begun = performance.now();
  const { status, summary, findings } = await runBatch({ ...options, tariff }, io);
  if (isMeasured === true) {
    const measured = { milliseconds: performance.now() - begun, kilobytes: process.resourceUsage().maxRSS };
    process.stderr.write(`${JSON.stringify(measured)}\n`);
    return status;
  }
  for (const finding of findings) process.stderr.write(`${findingLine(finding)}\n`);
  if (summary !== null && isTold === true) process.stderr.write(`${JSON.stringify(summary)}\n`);
  else if (summary !== null) process.stderr.write(`${summaryPage(summary).join('\n')}\n`);
  return status;
}

if (isBatchWorker()) serveBatch();
else process.exitCode = await main(JSON.parse(process.argv[2] ?? '{}') as MainOptions);
