import { locate, readCheck, type CheckFile, type Tariff } from '@unitbook/engine';
import { about, type PlacedFinding } from '../findings.ts';
import type { CommandIo } from '../io.ts';
import { householdTariff } from './household.ts';
import { placedIn, type Placed } from './placed.ts';
import { fileName, readDocumentText } from './read-bytes.ts';
import { readTariffFile } from './tariff-file.ts';

/** Printed bills and what they are checked against, ready to be checked. */
export interface CheckFiles extends CheckFile {
  readonly tariff: Tariff | null;
  /** The file of the bills, as messages name it. */
  readonly subject: string;
  /** Findings of later stages, at their places in that file. */
  readonly place: Placed<never>['place'];
  readonly findings: readonly PlacedFinding[];
}

/** Read printed bills, and a tariff from another file if one is named. */
export async function readCheckFile(
  io: CommandIo,
  path: string,
  tariffPath?: string,
): Promise<CheckFiles | readonly PlacedFinding[]> {
  const subject = fileName(path);
  const other = tariffPath === undefined ? null : await readTariffFile(io, tariffPath);
  const { text, findings } = await readDocumentText(io, path, 'unitbook-check-1');
  if (text === null) return [...about(subject, findings), ...(other?.findings ?? [])];
  const { value, findings: own, source } = readCheck(text);
  const tariff = other ?? householdTariff(value.tariff, subject);
  const placed = tariff.findings.map((one) =>
    one.subject === subject ? { ...one, finding: locate(source, one.finding) } : one,
  );
  return {
    ...value,
    tariff: tariff.value,
    subject,
    place: placedIn(subject, source),
    findings: [...about(subject, own), ...placed],
  };
}
