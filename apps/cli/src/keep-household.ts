import {
  keepBook,
  readReadings,
  type Account,
  type Book,
  type DayNumber,
  type Finding,
  type ReadReadingsOptions,
  type Tariff,
} from '@unitbook/engine';
import type { PlacedFinding } from './findings.ts';
import type { HouseholdInput } from './read/household.ts';
import type { ReadingsFile } from './read/own-readings.ts';

/** A book and everything that was found while it was kept. */
export interface KeptBook {
  readonly book: Book;
  readonly findings: readonly PlacedFinding[];
}

const isNone = (finding: Finding): boolean => finding.code === 'reading/none';

function moved(finding: Finding, by: number): Finding {
  const [list, index, ...rest] = finding.path;
  return typeof index === 'number' ? { ...finding, path: [list ?? '', index + by, ...rest] } : finding;
}

/** Rows behind a gap are checked, but no bill is made of them: the credit they begin with is not known. */
function checkBehindGaps(readings: ReadingsFile, account: Account, options: ReadReadingsOptions): Finding[] {
  const { rows, gaps } = readings;
  return gaps.flatMap((from, index) => {
    const part = rows.slice(from, gaps[index + 1]);
    const { findings } = readReadings(part, account, options);
    return findings.filter((finding) => !isNone(finding)).map((finding) => moved(finding, from));
  });
}

/** What a book is kept of: everything that could be read. */
export interface KeepInput {
  readonly tariff: Tariff;
  readonly account: Account;
  readonly readings: ReadingsFile;
  readonly tariffSubject: string;
}

/** The input where all of it could be read. */
export function wholeInput(input: HouseholdInput): KeepInput | null {
  const { tariff, account, readings, tariffSubject } = input;
  return tariff === null || account === null || readings === null
    ? null
    : { tariff, account, readings, tariffSubject };
}

/**
 * Keep the book of a household and put every finding in its place.
 *
 * @param today  the last day a reading can have; left out: not checked
 */
export function keepHousehold(input: KeepInput, today?: DayNumber): KeptBook {
  const { tariff, account, readings } = input;
  const options = today === undefined ? {} : { today };
  const [end] = readings.gaps;
  const kept = keepBook({ tariff, account, readings: readings.rows.slice(0, end) }, options);
  const own = end === undefined ? kept.findings : kept.findings.filter((finding) => !isNone(finding));
  const all = [...own, ...checkBehindGaps(readings, account, options)];
  const findings = all.map((finding): PlacedFinding => {
    const isReading = finding.path[0] === 'readings';
    return isReading
      ? { subject: readings.subject, finding: readings.place(finding) }
      : { subject: input.tariffSubject, finding };
  });
  return { book: kept.value, findings };
}
