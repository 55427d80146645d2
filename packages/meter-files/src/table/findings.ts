import { findingMaker, type Finding, type FindingPlace } from '@unitbook/engine';
import { LAYOUT_FINDINGS, TABLE_FILE_FINDINGS } from './file-findings.ts';
import { ROW_FINDINGS } from './row-findings.ts';

/** Everything that can be said of a table of meter values, and of the document that maps its columns. */
export const TABLE_FINDINGS = { ...TABLE_FILE_FINDINGS, ...ROW_FINDINGS, ...LAYOUT_FINDINGS } as const;

/** A code of a finding about a table of meter values or its layout. */
export type TableFindingCode = keyof typeof TABLE_FINDINGS;

/**
 * Make a finding about a table of meter values or its layout.
 *
 * @example
 * tableFinding('table/no-value', { path: [] }).severity //=> "note"
 */
export const tableFinding: (
  code: TableFindingCode,
  place: FindingPlace,
  values?: Readonly<Record<string, string>>,
) => Finding = findingMaker<TableFindingCode>(TABLE_FINDINGS);

const LONGEST = 60;

/** A text short enough to be quoted in a finding, line breaks and tabs shown as spaces. */
export function quotable(text: string): string {
  const plain = text.replace(/\s/g, ' ').trim();
  return plain.length > LONGEST ? `${plain.slice(0, LONGEST - 3)}…` : plain;
}
