import {
  describeFinding,
  groupedText,
  QUOTE_FINDINGS,
  type Finding,
  type FindingKind,
  type FindingText,
} from '@unitbook/engine';
import { localDates, type Writing } from '../../writing/writing.ts';

const KINDS: Readonly<Record<string, FindingKind | undefined>> = QUOTE_FINDINGS;

/** What the engine says of a file, said of the page. */
const ON_THE_PAGE: Readonly<Record<string, string>> = {
  'quote/months-missing use': 'Ask for the bill, or choose below how it is filled: it will be marked.',
  'quote/needs-profile selfUse':
    'Choose a meter file with a year of intervals under “Own use”: months alone do not tell at which time units are used.',
};

/** The sentences of a finding with its amounts in the reader's grouping. */
function sentences(finding: Finding, number: Writing['number']): FindingText {
  const kind = KINDS[finding.code];
  return kind === undefined ? describeFinding(finding, number) : groupedText(kind, finding.values, number);
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A finding about a quote in one breath: what was found, what was expected, what to do. */
export function quoteFindingText(finding: Finding, writing: Writing): string {
  const { found, expected, remedy } = sentences(finding, writing.printed);
  const own = ON_THE_PAGE[`${finding.code} ${String(finding.path[0])}`] ?? remedy;
  return localDates(`${capital(found)}. Expected: ${expected}. ${own}`, writing);
}
