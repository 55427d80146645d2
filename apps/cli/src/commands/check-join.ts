import { createInterface } from 'node:readline';
import { Readable } from 'node:stream';
import type { Tariff } from '@unitbook/engine';
import {
  batchFinding,
  fileRefusals,
  fileSink,
  FileTrouble,
  isClean,
  joinParts,
  refused,
  streamSink,
  troubleFindings,
  type BatchSummary,
} from '../batch/index.ts';
import { failureFinding } from '../file-failure.ts';
import { about, type PlacedFinding } from '../findings.ts';
import type { CommandIo } from '../io.ts';
import { fileName } from '../read/read-bytes.ts';
import { tariffPaths, type BatchTariffs } from './check-batch-tariffs.ts';
import { tellSummary } from './check-batch-summary.ts';
import { finish, type TypedCommand } from './command.ts';

const SUBJECT = 'unitbook check';
/** Characters that are written at once. */
const PIECE = 1 << 16;
const RIGHT = '"verdict":"right"}';

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

/** Writes lines to a file, or to standard output, many of them at once. */
class LineWriter {
  /** Whether a line was written that tells of something. */
  isFound = false;
  private held: string[] = [];
  private length = 0;
  private readonly sink: ReturnType<typeof fileSink>;

  constructor(io: CommandIo, path: string | undefined) {
    this.sink = path === undefined ? streamSink(io.batch().write) : fileSink(path, 0);
  }

  async write(line: string): Promise<void> {
    if (!line.endsWith(`${RIGHT}\n`)) this.isFound = true;
    this.held.push(line);
    this.length += line.length;
    if (this.length >= PIECE) await this.flush();
  }

  private async flush(): Promise<void> {
    const text = this.held.join('');
    this.held = [];
    this.length = 0;
    await this.sink.write(Buffer.from(text));
  }

  /** Write what is held still. */
  async end(): Promise<void> {
    await this.flush();
  }

  close(): void {
    this.sink.close();
  }
}

interface Joined {
  readonly summary: BatchSummary | null;
  readonly findings: readonly PlacedFinding[];
  /** The status where whoever reads the findings reads no more; null: somebody does. */
  readonly closed: 1 | 2 | null;
}

/** Put the lines of all parts through a writer. */
async function joinInto(
  writer: LineWriter,
  lines: AsyncIterable<string>,
  { document }: Tariff,
): Promise<Omit<Joined, 'closed'>> {
  const { summary, problems } = await joinParts(lines, (line) => writer.write(line), document);
  await writer.end();
  const told = problems.map((problem) => batchFinding('batch/parts', { path: [] }, { problem }));
  return { summary, findings: about(SUBJECT, told) };
}

async function joined(typed: TypedCommand, io: CommandIo, tariff: Tariff): Promise<Joined> {
  const failed: PlacedFinding[] = [];
  const lines = linesOf(io, typed.lists.get('join') ?? [], failed);
  let writer: LineWriter | null = null;
  try {
    writer = new LineWriter(io, typed.values.get('findings'));
    const { summary, findings } = await joinInto(writer, lines, tariff);
    return { summary, findings: [...failed, ...findings], closed: null };
  } catch (error) {
    if (!(error instanceof FileTrouble)) throw error;
    // Lines that nobody took are of parts that were not put together.
    if (error.isClosedPipe) return { summary: null, findings: [], closed: writer?.isFound === true ? 1 : 2 };
    return { summary: null, findings: [...failed, ...troubleFindings(error, false)], closed: null };
  } finally {
    writer?.close();
  }
}

/** Findings that would be written over one of the parts, or over the tariff. */
function overwritten(typed: TypedCommand): readonly PlacedFinding[] {
  const out = typed.values.get('findings');
  if (out === undefined) return [];
  const parts = (typed.lists.get('join') ?? []).map((path) => ({ path, role: 'a part' }));
  const tariffs = tariffPaths(typed).map((path) => ({ path, role: 'a tariff' }));
  return refused(fileRefusals([...parts, ...tariffs], [{ path: out, role: 'the findings' }], '--findings'));
}

/** `unitbook check --join`: puts the findings of parts of a table together. */
export async function runCheckJoin(
  typed: TypedCommand,
  io: CommandIo,
  { tariff, findings }: BatchTariffs,
): Promise<number> {
  const refusals = overwritten(typed);
  if (tariff === null || refusals.length > 0)
    return finish(io, { ran: false, findings: [...findings, ...refusals] });
  const { summary, findings: own, closed } = await joined(typed, io, tariff);
  if (closed !== null) return closed;
  if (summary === null || own.length > 0) return finish(io, { ran: false, findings: [...findings, ...own] });
  tellSummary(summary, typed, io);
  const status = finish(io, { ran: true, findings });
  return status === 0 && isClean(summary) ? 0 : 1;
}
