import type { Account, DayNumber, Finding, Plant } from '@unitbook/engine';
import { about, commandFinding, type PlacedFinding } from '../findings.ts';
import type { CommandIo } from '../io.ts';
import type { Generation } from '../plant/generation.ts';
import { generationOfDays } from '../plant/of-days.ts';
import { generationOfReadings } from '../plant/of-readings.ts';
import { readColumnsFile, type ColumnsFile } from '../read/columns-file.ts';
import { readAccountFile, readHouseholdFile } from '../read/household.ts';
import { readIntervalsFile } from '../read/intervals-file.ts';
import type { ReadingsFile } from '../read/own-readings.ts';
import { readPlantFile } from '../read/plant-file.ts';
import { fileName } from '../read/read-bytes.ts';
import { readReadingsFile } from '../read/readings-file.ts';
import { periodWords } from '../render/day-words.ts';
import type { TypedCommand } from './command.ts';
import { typedDay, wantedDays } from './shared-options.ts';

/** A plant, and what it made. */
export interface PlantInput {
  readonly plant: Plant;
  readonly generation: Generation;
  /** The file that tells what it made. */
  readonly subject: string;
  /** What the page says of it: a label, and words. */
  readonly source: readonly [label: string, words: string];
}

/** The input, or null where it cannot be used; with findings of all files. */
export interface ReadPlantInput {
  readonly value: PlantInput | null;
  readonly findings: readonly PlacedFinding[];
}

/** What one of the ways to tell a plant's energy comes to. */
interface Told {
  readonly generation: Generation | null;
  readonly subject: string;
  readonly source: readonly [label: string, words: string];
  /** A plant that stood in the same file. */
  readonly plant: Plant | null;
  readonly findings: readonly PlacedFinding[];
}

/** The periods that are known, in words. */
function spanWords({ periods }: Generation): string {
  const [first, last] = [periods[0]?.period.from, periods.at(-1)?.period.to];
  return first === undefined || last === undefined ? '' : `, ${periodWords({ from: first, to: last })}`;
}

/** What is known of an account and its readings; both stand in files. */
interface AccountAndReadings {
  readonly account: Account;
  readonly accountSubject: string;
  readonly readings: ReadingsFile;
}

function ofReadings(
  { account, accountSubject, readings }: AccountAndReadings,
  today: DayNumber,
): Omit<Told, 'plant'> {
  const { subject, words, rows } = readings;
  if (account.registers.generation === null) {
    const finding: Finding = commandFinding(
      'command/no-generation',
      { path: [] },
      { what: 'an account without a generation meter' },
    );
    return {
      generation: null,
      subject,
      source: ['Readings', words],
      findings: about(accountSubject, [finding]),
    };
  }
  const generation = generationOfReadings(account, readings, today);
  const text = `${String(rows.length)}${spanWords(generation)} (${words})`;
  return { generation, subject, source: ['Readings', text], findings: [] };
}

const none = (findings: readonly PlacedFinding[]): Told => ({
  generation: null,
  subject: '',
  source: ['', ''],
  plant: null,
  findings,
});

async function ofHousehold(typed: TypedCommand, io: CommandIo, today: DayNumber): Promise<Told> {
  const read = await readHouseholdFile(io, typed.values.get('household') ?? '');
  const { account, accountSubject, readings, plant, findings } = read;
  if (account === null || readings === null) return none(findings);
  const told = ofReadings({ account, accountSubject, readings }, today);
  return { ...told, plant, findings: [...findings, ...told.findings] };
}

async function ofAccount(
  typed: TypedCommand,
  io: CommandIo,
  columns: ColumnsFile,
  today: DayNumber,
): Promise<Told> {
  const path = typed.values.get('readings') ?? '';
  const account = await readAccountFile(io, typed.values.get('account') ?? '');
  const options = { layout: columns.layout, day: typedDay(typed), on: wantedDays(typed) };
  const read = await readReadingsFile(io, path, options);
  const findings = [...account.findings, ...about(fileName(path), read.findings)];
  if (account.value === null || read.readings === null) return none(findings);
  const accountSubject = fileName(typed.values.get('account') ?? '');
  const both = { account: account.value, accountSubject, readings: read.readings };
  const told = ofReadings(both, today);
  return { ...told, plant: null, findings: [...findings, ...told.findings] };
}

async function ofDays(typed: TypedCommand, io: CommandIo, { layout }: ColumnsFile): Promise<Told> {
  const path = typed.values.get('days') ?? '';
  const subject = fileName(path);
  const read = await readIntervalsFile(io, path, layout);
  if (read.file === null) return none(about(subject, read.findings));
  const zone = typed.values.get('zone') ?? layout?.zone ?? null;
  const { value, findings } = generationOfDays(read.file, zone);
  const words = value === null ? '' : `${String(value.days.length)} (${subject}, ${read.words})`;
  return {
    generation: value,
    subject,
    source: ['Days', words],
    plant: null,
    findings: about(subject, findings),
  };
}

/** The plant of a household file, where no other was named. */
function ownPlant(plant: Plant | null, subject: string): ReadPlantDocument {
  if (plant !== null) return { value: plant, findings: [] };
  return { value: null, findings: about(subject, [commandFinding('command/no-plant', { path: [] })]) };
}

type ReadPlantDocument = Awaited<ReturnType<typeof readPlantFile>>;

/**
 * Read what `unitbook plant` needs.
 *
 * @param today  the last day that a reading can have
 */
export async function plantInput(
  typed: TypedCommand,
  io: CommandIo,
  today: DayNumber,
): Promise<ReadPlantInput> {
  const { values } = typed;
  const columns = await readColumnsFile(io, values.get('columns'));
  if (columns.isBroken) return { value: null, findings: columns.findings };
  const told = values.has('household')
    ? await ofHousehold(typed, io, today)
    : values.has('days')
      ? await ofDays(typed, io, columns)
      : await ofAccount(typed, io, columns, today);
  const path = values.get('plant');
  const plant =
    path === undefined
      ? ownPlant(told.plant, fileName(values.get('household') ?? ''))
      : await readPlantFile(io, path);
  const findings = [...plant.findings, ...told.findings];
  const { generation, subject, source } = told;
  if (plant.value === null || generation === null) return { value: null, findings };
  return { value: { plant: plant.value, generation, subject, source }, findings };
}
