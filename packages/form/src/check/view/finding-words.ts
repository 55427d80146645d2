import {
  CHECK_FINDINGS,
  describeFinding,
  isDecimalText,
  type Finding,
  type FindingKind,
} from '@unitbook/engine';
import { localDates, type Writing } from '../../writing/writing.ts';

const KINDS: Readonly<Record<string, FindingKind | undefined>> = CHECK_FINDINGS;

/** The sentences of a finding with its amounts in the reader's grouping. */
function sentences(finding: Finding, { number }: Writing) {
  const kind = KINDS[finding.code];
  if (kind === undefined) return describeFinding(finding, number);
  const grouped = (kind.grouped ?? []).map((key): [string, string] => {
    const text = finding.values[key] ?? '';
    return [key, isDecimalText(text) ? number(text) : text];
  });
  return kind.text({ ...finding.values, ...Object.fromEntries(grouped) });
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A finding about a printed bill in one breath: what was found, what was expected, what to do. */
export function checkFindingText(finding: Finding, writing: Writing): string {
  const { found, expected, remedy } = sentences(finding, writing);
  return localDates(`${capital(found)}. Expected: ${expected}. ${remedy}`, writing);
}
