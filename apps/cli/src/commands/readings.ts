import type { Finding } from '@unitbook/engine';
import type { TableLayout, ToldKind } from '@unitbook/meter-files';
import { about } from '../findings.ts';
import { READINGS_HELP } from '../help.ts';
import type { CommandIo } from '../io.ts';
import { localeFindings } from '../locale.ts';
import { messageStream } from '../message-stream.ts';
import { readColumnsFile } from '../read/columns-file.ts';
import { meterSource, ownSource, type MeterSource } from '../read/meter-source.ts';
import { openFile, type OpenedFile } from '../read/open-file.ts';
import { fileName } from '../read/read-bytes.ts';
import { idleOptions } from '../read/readings-file.ts';
import { kindFinding, kindOf } from '../read/stream-meter-file.ts';
import { makeNotation } from '../render/notation.ts';
import { finish, type Command, type TypedCommand } from './command.ts';
import { runDocument } from './readings-document.ts';
import { runEnergy } from './readings-energy.ts';
import { checkReadingsOptions } from './readings-options.ts';
import { runProposal, runUnknownTable } from './readings-proposal.ts';
import { runSummary } from './readings-summary.ts';
import { optionFinding, typedDay, wantedDays } from './shared-options.ts';

const SUBJECT = 'unitbook readings';

/** What is needed to read a file: the file, what it is, what was typed. */
interface Reading {
  readonly typed: TypedCommand;
  readonly io: CommandIo;
  readonly subject: string;
  readonly file: OpenedFile;
  readonly told: ToldKind;
  readonly layout: TableLayout | null;
}

/** Options that say nothing about this kind of file. */
function idleFindings({ typed, told: { kind } }: Reading): readonly Finding[] {
  const idle = idleOptions(kind, { day: typedDay(typed), on: wantedDays(typed) });
  if (!typed.switches.has('propose') || kind === 'table') return idle;
  const values = { name: '--propose', wanted: 'a table of which nobody has said what its columns are' };
  return [...idle, optionFinding('command/option-idle', values)];
}

/** How the file is read; null, and why, where it cannot be. */
async function sourceOf({
  typed,
  file,
  told,
  subject,
  layout,
}: Reading): Promise<{ readonly source: MeterSource | null; readonly findings: readonly Finding[] }> {
  const { kind, why } = told;
  if (kind === null || kind === 'own-register-list') return ownSource(file, told, subject);
  const day = typedDay(typed);
  const options = { ...(day === null ? {} : { day }), ...(layout === null ? {} : { layout }) };
  return { source: meterSource(file, { kind, why }, subject, options), findings: [] };
}

async function readFile(reading: Reading): Promise<number> {
  const { typed, io, subject, file, told, layout } = reading;
  const messages = messageStream(io, subject);
  if (told.kind === 'table' && layout === null) {
    const table = { subject, head: file.head, told };
    return typed.switches.has('propose')
      ? runProposal(table, messages, io)
      : runUnknownTable(table, messages, io);
  }
  const { source, findings } = await sourceOf(reading);
  if (source === null) return finish(io, { ran: false, findings: about(subject, findings) });
  findings.forEach(messages.add);
  const notation = makeNotation(typed.values.get('locale') ?? 'en', 2);
  const zone = typed.values.get('zone') ?? layout?.zone ?? null;
  const has = (name: string): boolean => typed.switches.has(name);
  if (has('document')) return runDocument(source, messages, io, wantedDays(typed));
  if (has('monthly') || has('daily'))
    return runEnergy(source, messages, io, { by: has('daily') ? 'day' : 'month', zone, notation });
  return runSummary(source, messages, io, { zone, notation });
}

/** What keeps a file from being read at all. */
function obstacles(reading: Reading): readonly Finding[] {
  const { file, told } = reading;
  if (file.findings.length > 0) return file.findings;
  const unknown = kindFinding(told);
  return unknown === null ? [] : [unknown];
}

async function runReadings(typed: TypedCommand, io: CommandIo): Promise<number> {
  const locale = typed.values.get('locale');
  const problems = [...about(SUBJECT, checkReadingsOptions(typed)), ...localeFindings(locale, SUBJECT)];
  if (problems.length > 0) return finish(io, { ran: false, findings: problems });
  const columns = await readColumnsFile(io, typed.values.get('columns'));
  if (columns.isBroken) return finish(io, { ran: false, findings: columns.findings });
  const [path = ''] = typed.others;
  const file = await openFile(io, path);
  const told = kindOf(file, columns.layout !== null);
  const reading: Reading = { typed, io, subject: fileName(path), file, told, layout: columns.layout };
  try {
    const found = obstacles(reading);
    if (found.length > 0) return finish(io, { ran: false, findings: about(reading.subject, found) });
    const idle = idleFindings(reading);
    if (idle.length > 0) return finish(io, { ran: false, findings: about(SUBJECT, idle) });
    return await readFile(reading);
  } finally {
    await file.close();
  }
}

/** `unitbook readings`: what is in a meter file. */
export const readingsCommand: Command = {
  name: 'readings',
  help: READINGS_HELP,
  options: {
    columns: 'FILE',
    propose: null,
    day: 'DAY',
    zone: 'ZONE',
    monthly: null,
    daily: null,
    document: null,
    on: 'DAY',
    locale: 'TAG',
  },
  repeated: ['on'],
  run: runReadings,
};
