import { quotientOf } from '@unitbook/engine';
import { batchRefusals, placeOf, runBatch, type BatchOptions } from '../batch/index.ts';
import { about } from '../findings.ts';
import type { CommandIo } from '../io.ts';
import { findingLines } from '../render/finding-line.ts';
import { checkBatchOptions } from './check-batch-options.ts';
import { tellSummary } from './check-batch-summary.ts';
import { readBatchTariffs, tariffPaths } from './check-batch-tariffs.ts';
import { runCheckJoin } from './check-join.ts';
import { finish, type TypedCommand } from './command.ts';

const SUBJECT = 'unitbook check';

/** What was typed, as the batch takes it; what was not typed is left out. */
function optionsOf(typed: TypedCommand): Omit<BatchOptions, 'tariff'> {
  const { values, switches } = typed;
  const text = <Key extends string>(key: Key, name: string): Partial<Record<Key, string>> => {
    const value = values.get(name);
    return value === undefined ? {} : ({ [key]: value } as Record<Key, string>);
  };
  const [tolerance, workers] = [values.get('tolerance'), values.get('workers')];
  const part = placeOf(values.get('part') ?? '');
  return {
    rows: values.get('batch') ?? '',
    tariffFiles: tariffPaths(typed),
    account: { ...text('since', 'since'), ...text('settlementDay', 'settlement-day') },
    ...text('out', 'findings'),
    ...text('side', 'unread'),
    ...(switches.has('json-lines') ? { form: 'ndjson' as const } : {}),
    ...(tolerance === undefined ? {} : { tolerance: quotientOf(tolerance) }),
    ...(workers === undefined ? {} : { workers: Number(workers) }),
    ...(part === null ? {} : { part, withTally: true }),
    isResumed: switches.has('resume'),
    isEvery: switches.has('every'),
  };
}

/** `unitbook check --batch`: a table of bills of many accounts. */
export async function runCheckBatch(typed: TypedCommand, io: CommandIo): Promise<number> {
  const problems = about(SUBJECT, checkBatchOptions(typed));
  if (problems.length > 0) return finish(io, { ran: false, findings: problems });
  const tariffs = await readBatchTariffs(typed, io);
  if (typed.lists.has('join')) return runCheckJoin(typed, io, tariffs);
  const options = optionsOf(typed);
  const { tariff, others } = tariffs;
  if (tariff === null)
    return finish(io, { ran: false, findings: [...tariffs.findings, ...batchRefusals(options)] });
  const { status, summary, findings } = await runBatch(
    { ...options, tariff, otherTariffs: others },
    io.batch(),
  );
  const lines = findingLines([...tariffs.findings, ...findings]);
  if (lines.length > 0) io.err(`${lines.join('\n')}\n`);
  if (summary !== null) tellSummary(summary, typed, io);
  return status === 0 && lines.length > 0 ? 1 : status;
}
