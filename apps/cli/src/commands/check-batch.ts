import { open } from 'node:fs/promises';
import { createInterface } from 'node:readline';
import { Readable } from 'node:stream';
import { quotientOf, type Tariff } from '@unitbook/engine';
import {
  batchFinding,
  fileFailure,
  isFileError,
  joinParts,
  runBatch,
  summaryPage,
  type BatchOptions,
  type BatchSummary,
} from '../batch/index.ts';
import { about, type PlacedFinding } from '../findings.ts';
import type { CommandIo } from '../io.ts';
import { failureFinding, fileName } from '../read/read-bytes.ts';
import { readTariffFile } from '../read/tariff-file.ts';
import { findingLines } from '../render/finding-line.ts';
import { checkBatchOptions, readPart } from './check-batch-options.ts';
import { finish, type TypedCommand } from './command.ts';

const SUBJECT = 'unitbook check';

/** The summary goes where the findings do not: they are to be piped on. */
function tell(summary: BatchSummary, { values, switches }: TypedCommand, io: CommandIo): void {
  const text = switches.has('json') ? JSON.stringify(summary, null, 2) : summaryPage(summary).join('\n');
  if (values.has('findings')) io.out(`${text}\n`);
  else io.err(`${text}\n`);
}

interface Tariffs {
  readonly tariff: Tariff | null;
  readonly others: readonly Tariff[];
  readonly findings: readonly PlacedFinding[];
}

async function readTariffs({ values, lists }: TypedCommand, io: CommandIo): Promise<Tariffs> {
  const first = await readTariffFile(io, values.get('tariff') ?? '');
  const rest = [];
  for (const path of lists.get('other') ?? []) rest.push(await readTariffFile(io, path));
  const all = [first, ...rest];
  const isWhole = all.every(({ value }) => value !== null);
  return {
    tariff: isWhole ? first.value : null,
    others: rest.flatMap(({ value }) => (value === null ? [] : [value])),
    findings: all.flatMap(({ findings }) => findings),
  };
}

/** What was typed, as the batch takes it; what was not typed is left out. */
function optionsOf({ values, switches }: TypedCommand, { tariff, others }: Tariffs): BatchOptions | null {
  if (tariff === null) return null;
  const text = <Key extends string>(key: Key, name: string): Partial<Record<Key, string>> => {
    const value = values.get(name);
    return value === undefined ? {} : ({ [key]: value } as Record<Key, string>);
  };
  const [tolerance, workers, part] = [values.get('tolerance'), values.get('workers'), values.get('part')];
  const read = readPart(part ?? '');
  return {
    rows: values.get('batch') ?? '',
    tariff,
    otherTariffs: others,
    account: { ...text('since', 'since'), ...text('settlementDay', 'settlement-day') },
    ...text('out', 'findings'),
    ...text('side', 'unread'),
    ...(switches.has('json-lines') ? { form: 'ndjson' as const } : {}),
    ...(tolerance === undefined ? {} : { tolerance: quotientOf(tolerance) }),
    ...(workers === undefined ? {} : { workers: Number(workers) }),
    ...(read === null ? {} : { part: read, withTally: true }),
    isResumed: switches.has('resume'),
    isEvery: switches.has('every'),
  };
}

/** The lines of several files, one after the other. */
async function* linesOf(
  io: CommandIo,
  paths: readonly string[],
  failed: PlacedFinding[],
): AsyncGenerator<string> {
  for (const path of paths) {
    const bytes = async function* (): AsyncGenerator<Uint8Array> {
      for await (const piece of io.pieces(path)) {
        if (piece.kind === 'bytes') yield piece.bytes;
        else failed.push(...about(fileName(path), [failureFinding(piece)]));
      }
    };
    yield* createInterface({ input: Readable.from(bytes()), crlfDelay: Infinity });
  }
}

/** Writes lines to a file, or to standard output. */
async function lineWriter(io: CommandIo, path: string | undefined) {
  if (path === undefined) {
    const { write } = io.batch();
    return { write: (line: string) => write(Buffer.from(line)), end: () => Promise.resolve() };
  }
  const file = await open(path, 'w');
  return { write: (line: string) => file.appendFile(line), end: () => file.close() };
}

/** Every part ends with what its rows came to: one that was broken off does not. A file can hold several parts. */
function brokenOff(paths: readonly string[], parts: number): readonly PlacedFinding[] {
  if (parts >= paths.length) return [];
  const values = {
    reason: `${String(paths.length)} files, and ${String(parts)} lines that say what the rows of a part came to`,
    expected: 'findings of parts that were done to their end, each file once',
    remedy: 'Check the part again that was broken off, and put all together once more.',
  };
  return about(SUBJECT, [batchFinding('batch/file', { path: [] }, values)]);
}

interface Joined {
  readonly summary: BatchSummary | null;
  readonly findings: readonly PlacedFinding[];
}

async function joined(typed: TypedCommand, io: CommandIo, tariff: Tariff): Promise<Joined> {
  const failed: PlacedFinding[] = [];
  const paths = typed.lists.get('join') ?? [];
  const target = typed.values.get('findings');
  try {
    const writer = await lineWriter(io, target);
    const { summary, parts } = await joinParts(linesOf(io, paths, failed), writer.write, tariff.document);
    await writer.end();
    return { summary, findings: failed.length > 0 ? failed : brokenOff(paths, parts) };
  } catch (error) {
    if (!isFileError(error)) throw error;
    return { summary: null, findings: fileFailure(target ?? 'standard output', error) };
  }
}

/** Put findings of parts together. */
async function joinFiles(typed: TypedCommand, io: CommandIo, { tariff, findings }: Tariffs): Promise<number> {
  if (tariff === null) return finish(io, { ran: false, findings });
  const { summary, findings: own } = await joined(typed, io, tariff);
  if (summary === null || own.length > 0) return finish(io, { ran: false, findings: [...findings, ...own] });
  tell(summary, typed, io);
  const status = finish(io, { ran: true, findings });
  return status === 0 && isClean(summary) ? 0 : 1;
}

const RIGHT = ['right', 'right-but-surprising'];

const isClean = ({ verdicts }: BatchSummary): boolean =>
  Object.entries(verdicts).every(([verdict, { bills }]) => RIGHT.includes(verdict) || bills === 0);

/** `unitbook check --batch`: a table of bills of many accounts. */
export async function runCheckBatch(typed: TypedCommand, io: CommandIo): Promise<number> {
  const problems = about(SUBJECT, checkBatchOptions(typed));
  if (problems.length > 0) return finish(io, { ran: false, findings: problems });
  const tariffs = await readTariffs(typed, io);
  if (typed.lists.has('join')) return joinFiles(typed, io, tariffs);
  const options = optionsOf(typed, tariffs);
  if (options === null) return finish(io, { ran: false, findings: tariffs.findings });
  const { status, summary, findings } = await runBatch(options, io.batch());
  const lines = findingLines([...tariffs.findings, ...findings]);
  if (lines.length > 0) io.err(`${lines.join('\n')}\n`);
  if (summary !== null) tell(summary, typed, io);
  return status === 0 && lines.length > 0 ? 1 : status;
}
