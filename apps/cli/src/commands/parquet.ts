import type { Finding } from '@unitbook/engine';
import { FileTrouble, sharedFiles, streamSink, troubleFindings } from '../batch/index.ts';
import { commandFinding, about, type PlacedFinding } from '../findings.ts';
import { failureFinding } from '../file-failure.ts';
import { PARQUET_HELP } from '../help-parquet.ts';
import type { CommandIo } from '../io.ts';
import { fileName } from '../read/read-bytes.ts';
import { csvOf, inexactColumns, tableQuery } from '../parquet/bill-rows.ts';
import { ParquetTrouble, type ParquetEngine } from '../parquet/engine.ts';
import { writeStatement } from '../parquet/finding-columns.ts';
import { finish, type Command, type TypedCommand } from './command.ts';

const SUBJECT = 'unitbook parquet';
const HERE = { path: [] };

const ONE_WAY = 'Read bills with the one, write findings with the other.';

/** What is missing of the command as it was typed, or too much. */
function optionFindings({ values, others }: TypedCommand): readonly Finding[] {
  const has = (name: string): boolean => values.has(name);
  const remedy = 'Name a table after --rows, or findings after --findings.';
  const findings = others.map((value) => commandFinding('command/extra-argument', HERE, { value, remedy }));
  if (has('rows')) {
    for (const name of ['findings', 'to'])
      if (has(name))
        findings.push(
          commandFinding('command/options-exclude', HERE, {
            name: '--rows',
            other: `--${name}`,
            remedy: ONE_WAY,
          }),
        );
    return findings;
  }
  if (!has('findings') && !has('to')) {
    const expected = '--rows FILE to read bills, or --findings FILE --to FILE to write findings';
    return [...findings, commandFinding('command/missing-option', HERE, { name: '--rows', expected })];
  }
  for (const [name, expected] of [
    ['findings', 'findings of unitbook check --batch'],
    ['to', 'the file to write them into'],
  ] as const)
    if (!has(name))
      findings.push(commandFinding('command/missing-option', HERE, { name: `--${name}`, expected }));
  return findings;
}

/** Why a file cannot be read; null when it can, as far as its first bytes tell. */
async function unreadFinding(io: CommandIo, { path, code }: Work): Promise<Finding | null> {
  if (path === '-')
    return commandFinding(code, HERE, { reason: 'standard input, which cannot be read from its end' });
  for await (const piece of io.pieces(path)) return piece.kind === 'bytes' ? null : failureFinding(piece);
  return null;
}

/** Print a table of bills as CSV; what keeps it from being printed. */
async function printRows(io: CommandIo, engine: ParquetEngine, path: string): Promise<readonly Finding[]> {
  const columns = await engine.columns(tableQuery(path));
  const inexact = inexactColumns(columns);
  if (inexact.length > 0)
    return inexact.map(({ name, type }) =>
      commandFinding('command/parquet-column', HERE, { column: name, type }),
    );
  const sink = streamSink(io.batch().write);
  for await (const piece of csvOf(engine, path, columns)) await sink.write(Buffer.from(piece));
  return [];
}

interface Work {
  readonly path: string;
  readonly code: 'command/parquet-table' | 'command/parquet-findings';
  readonly run: (engine: ParquetEngine) => Promise<readonly Finding[]>;
}

function workOf({ values }: TypedCommand, io: CommandIo): Work {
  const rows = values.get('rows');
  if (rows !== undefined)
    return { path: rows, code: 'command/parquet-table', run: (engine) => printRows(io, engine, rows) };
  const [path, to] = [values.get('findings') ?? '', values.get('to') ?? ''];
  const run = async (engine: ParquetEngine): Promise<readonly Finding[]> => {
    if (sharedFiles([{ path, role: 'read' }], [{ path: to, role: 'written' }]).length > 0)
      return [commandFinding('command/parquet-same-file', HERE)];
    await engine.run(writeStatement(path, to));
    return [];
  };
  return { path, code: 'command/parquet-findings', run };
}

/** What went wrong while an engine was at work; an error of this program goes on. */
function failed(error: unknown, { path, code }: Work): readonly PlacedFinding[] {
  if (error instanceof ParquetTrouble)
    return about(path, [commandFinding(code, HERE, { reason: error.message })]);
  if (!(error instanceof FileTrouble)) throw error;
  // Whoever read the rows has enough of them.
  return error.isClosedPipe ? [] : troubleFindings(error, false);
}

interface Worked {
  readonly isDone: boolean;
  readonly findings: readonly PlacedFinding[];
}

async function worked(work: Work, io: CommandIo): Promise<Worked> {
  const unread = await unreadFinding(io, work);
  if (unread !== null) return { isDone: false, findings: about(fileName(work.path), [unread]) };
  const engine = await io.parquet();
  if (engine === null)
    return {
      isDone: false,
      findings: about(SUBJECT, [commandFinding('command/parquet-not-installed', HERE)]),
    };
  try {
    const findings = about(work.path, await work.run(engine));
    return { isDone: findings.length === 0, findings };
  } catch (error) {
    return { isDone: false, findings: failed(error, work) };
  } finally {
    engine.close();
  }
}

async function runParquet(typed: TypedCommand, io: CommandIo): Promise<number> {
  const problems = about(SUBJECT, optionFindings(typed));
  if (problems.length > 0) return finish(io, { ran: false, findings: problems });
  const { isDone, findings } = await worked(workOf(typed, io), io);
  return finish(io, { ran: isDone, findings });
}

/** `unitbook parquet`: bills out of Parquet, findings into it. */
export const parquetCommand: Command = {
  name: 'parquet',
  help: PARQUET_HELP,
  options: { rows: 'FILE', findings: 'FILE', to: 'FILE' },
  run: runParquet,
};
