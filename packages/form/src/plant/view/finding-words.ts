import {
  describeFinding,
  groupedText,
  PLANT_FINDINGS,
  type Finding,
  type FindingKind,
  type FindingText,
} from '@unitbook/engine';
import { localDates, type Writing } from '../../writing/writing.ts';

const KINDS: Readonly<Record<string, FindingKind | undefined>> = PLANT_FINDINGS;

/** The sentences of a finding with its amounts in the reader's grouping. */
function sentences(finding: Finding, number: Writing['number']): FindingText {
  const kind = KINDS[finding.code];
  return kind === undefined ? describeFinding(finding, number) : groupedText(kind, finding.values, number);
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A finding in one breath: what was found, what was expected, what to do. */
export function plantFindingText(finding: Finding, writing: Writing): string {
  const { found, expected, remedy } = sentences(finding, writing.number);
  return localDates(`${capital(found)}. Expected: ${expected}. ${remedy}`, writing);
}
