import {
  describeFinding,
  groupedText,
  QUOTE_FINDINGS,
  type Finding,
  type FindingKind,
  type FindingText,
} from '@unitbook/engine';
import type { PlacedFinding } from '../findings.ts';
import type { PageNotation } from './notation.ts';

/** What `describeFinding` leaves as it is: the page that uses it has no need of quotes at first. */
const KINDS: Readonly<Record<string, FindingKind | undefined>> = QUOTE_FINDINGS;

function sentences(finding: Finding, number: PageNotation['number']): FindingText {
  const kind = KINDS[finding.code];
  return kind === undefined ? describeFinding(finding, number) : groupedText(kind, finding.values, number);
}

/** Findings with their amounts grouped as the pages are. */
export function inNotation(
  placed: readonly PlacedFinding[],
  { number }: Pick<PageNotation, 'number'>,
): readonly PlacedFinding[] {
  return placed.map(({ subject, finding }) => ({
    subject,
    finding: { ...finding, ...sentences(finding, number) },
  }));
}
