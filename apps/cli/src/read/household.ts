import { locate, readAccount, readHousehold, type Account, type Plant, type Tariff } from '@unitbook/engine';
import { exampleTariff, idsLike } from '../examples.ts';
import { about, commandFinding, type PlacedFinding } from '../findings.ts';
import type { CommandIo } from '../io.ts';
import type { DocumentFormat } from './document-format.ts';
import { fileName, readDocumentText } from './read-bytes.ts';
import type { ReadingsFile } from './own-readings.ts';
import { PLAIN_READINGS, readReadingsFile, type ReadingsOptions } from './readings-file.ts';
import { readTariffFile } from './tariff-file.ts';

/** What a book is kept from, each null where it could not be read, and everything that was found. */
export interface HouseholdInput {
  readonly tariff: Tariff | null;
  readonly account: Account | null;
  readonly readings: ReadingsFile | null;
  /** Of a household file that has one. */
  readonly plant: Plant | null;
  /** The files that the tariff and the account stand in, as messages name them. */
  readonly tariffSubject: string;
  readonly accountSubject: string;
  readonly findings: readonly PlacedFinding[];
}

/** The paths of a household in three files. */
export interface HouseholdPaths {
  readonly tariff: string;
  readonly account: string;
  readonly readings: string;
}

/** The tariff and the account of a household, each from its file. */
export interface TariffAndAccount {
  readonly tariff: Tariff | null;
  readonly account: Account | null;
  readonly tariffSubject: string;
  readonly accountSubject: string;
  readonly findings: readonly PlacedFinding[];
}

/** A part of a household, or null where it could not be read. */
export interface Part<Value> {
  readonly value: Value | null;
  readonly findings: readonly PlacedFinding[];
}

async function readPart<Value>(
  io: CommandIo,
  { path, format }: { readonly path: string; readonly format: DocumentFormat },
  read: (text: string) => { readonly value: Value | null; readonly findings: Parameters<typeof about>[1] },
): Promise<Part<Value>> {
  const subject = fileName(path);
  const { text, findings } = await readDocumentText(io, path, format);
  if (text === null) return { value: null, findings: about(subject, findings) };
  const outcome = read(text);
  return { value: outcome.value, findings: about(subject, outcome.findings) };
}

/** Read an account. */
export function readAccountFile(io: CommandIo, path: string): Promise<Part<Account>> {
  return readPart(io, { path, format: 'unitbook-account-1' }, readAccount);
}

/** Read a tariff and an account, each from its file. */
export async function readTariffAndAccount(
  io: CommandIo,
  paths: Pick<HouseholdPaths, 'tariff' | 'account'>,
): Promise<TariffAndAccount> {
  const tariff = await readTariffFile(io, paths.tariff);
  const account = await readAccountFile(io, paths.account);
  return {
    tariff: tariff.value,
    account: account.value,
    tariffSubject: fileName(paths.tariff),
    accountSubject: fileName(paths.account),
    findings: [...tariff.findings, ...account.findings],
  };
}

/** Read a tariff, an account and readings, each from its file. */
export async function readThreeFiles(
  io: CommandIo,
  paths: HouseholdPaths,
  options: ReadingsOptions = PLAIN_READINGS,
): Promise<HouseholdInput> {
  const both = await readTariffAndAccount(io, paths);
  const { readings, findings } = await readReadingsFile(io, paths.readings, options);
  return {
    ...both,
    plant: null,
    readings,
    findings: [...both.findings, ...about(fileName(paths.readings), findings)],
  };
}

/** The tariff of a household or check file: its own, or the example whose id it names. */
export function householdTariff(tariff: string | Tariff | null, subject: string): Part<Tariff> {
  if (typeof tariff !== 'string') return { value: tariff, findings: [] };
  const value = exampleTariff(tariff);
  if (value !== null) return { value, findings: [] };
  const values = { id: tariff, known: idsLike(tariff).join(', ') };
  return {
    value,
    findings: about(subject, [commandFinding('command/unknown-tariff', { path: ['tariff'] }, values)]),
  };
}

/**
 * Take a household from the text of its file.
 *
 * @param text     as the form exports it
 * @param subject  the file, as messages name it
 * @param other    a tariff that takes the place of the file's own
 */
export function householdFrom(text: string, subject: string, other?: Part<Tariff>): HouseholdInput {
  const { value, findings, source } = readHousehold(text);
  const tariff = other ?? householdTariff(value.tariff, subject);
  const placed = tariff.findings.map((one) =>
    one.subject === subject ? { ...one, finding: locate(source, one.finding) } : one,
  );
  const { readings: rows } = value;
  return {
    tariff: tariff.value,
    account: value.account,
    plant: value.plant,
    readings:
      rows === null
        ? null
        : { subject, words: subject, rows, gaps: [], place: (finding) => locate(source, finding) },
    tariffSubject: subject,
    accountSubject: subject,
    findings: [...about(subject, findings), ...placed],
  };
}

/** Read a household from one file, and a tariff from another if one is named. */
export async function readHouseholdFile(
  io: CommandIo,
  path: string,
  tariffPath?: string,
): Promise<HouseholdInput> {
  const subject = fileName(path);
  const other = tariffPath === undefined ? undefined : await readTariffFile(io, tariffPath);
  const { text, findings } = await readDocumentText(io, path, 'unitbook-household-1');
  if (text !== null) {
    const input = householdFrom(text, subject, other);
    return tariffPath === undefined ? input : { ...input, tariffSubject: fileName(tariffPath) };
  }
  return {
    tariff: null,
    account: null,
    readings: null,
    plant: null,
    tariffSubject: subject,
    accountSubject: subject,
    findings: [...about(subject, findings), ...(other?.findings ?? [])],
  };
}
