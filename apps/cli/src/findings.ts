import { findingMaker, inFileOrder, type Finding, type FindingPlace } from '@unitbook/engine';
import { COMMAND_FILE_FINDINGS } from './told/file-findings.ts';
import { COMMAND_METER_FINDINGS } from './told/meter-findings.ts';
import { OPTION_FINDINGS } from './told/option-findings.ts';
import { PARQUET_FINDINGS } from './told/parquet-findings.ts';
import type { Values } from './told/values.ts';

/** Everything that a command says of itself, by code. */
export const COMMAND_FINDINGS = {
  ...OPTION_FINDINGS,
  ...COMMAND_FILE_FINDINGS,
  ...COMMAND_METER_FINDINGS,
  ...PARQUET_FINDINGS,
} as const satisfies Parameters<typeof findingMaker>[0];

/** A code of a finding about a command. */
export type CommandFindingCode = keyof typeof COMMAND_FINDINGS;

/** Make a finding about a command. */
export const commandFinding: (code: CommandFindingCode, place: FindingPlace, values?: Values) => Finding =
  findingMaker<CommandFindingCode>(COMMAND_FINDINGS);

/** A finding and what it is about: a file, or the command as it was typed. */
export interface PlacedFinding {
  readonly subject: string;
  readonly finding: Finding;
}

/**
 * Findings in the order in which a reader meets them: file by file, as the files came, and in each from
 * its beginning to its end.
 */
export function inReadingOrder(placed: readonly PlacedFinding[]): readonly PlacedFinding[] {
  const subjects = [...new Set(placed.map(({ subject }) => subject))];
  return subjects.flatMap((subject) =>
    about(
      subject,
      inFileOrder(placed.filter((one) => one.subject === subject).map(({ finding }) => finding)),
    ),
  );
}

/** Findings about one file or command. */
export function about(subject: string, findings: readonly Finding[]): readonly PlacedFinding[] {
  return findings.map((finding) => ({ subject, finding }));
}
