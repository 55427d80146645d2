import type { Finding, Severity } from '@unitbook/engine';

/** A finding, and how many more there are like it. */
export interface FindingGroup {
  readonly finding: Finding;
  /** How many others of the same kind it stands for. */
  readonly more: number;
  /** The lines of the first few of those others; '' where they stand nowhere. */
  readonly lines: string;
}

/** Findings as a page shows them. */
export interface ShownFindings {
  readonly groups: readonly FindingGroup[];
  /** How many findings are in none of the groups. */
  readonly left: number;
}

/** More are shown by kind, and of kinds no more than so many. */
const MOST = 20;
const MOST_LINES = 6;
const ORDER: Readonly<Record<Severity, number>> = { error: 0, question: 1, note: 2 };

function linesOf(findings: readonly Finding[]): string {
  const lines = [...new Set(findings.flatMap(({ position }) => position?.line ?? []))];
  if (lines.length === 0) return '';
  const shown = lines.slice(0, MOST_LINES).join(', ');
  const rest = lines.length > MOST_LINES ? ' and further on' : '';
  return `${lines.length === 1 ? 'line' : 'lines'} ${shown}${rest}`;
}

/** Findings of one kind, the first for all of them. */
function groupOf(findings: readonly Finding[]): readonly FindingGroup[] {
  const [finding, ...others] = findings;
  return finding === undefined ? [] : [{ finding, more: others.length, lines: linesOf(others) }];
}

/**
 * Put findings into an order in which they can be read: errors first, then questions, then notes. Up to 20
 * are shown one by one; of more, the first of each kind stands for the others.
 *
 * @example
 * shownFindings([]).groups //=> []
 */
export function shownFindings(findings: readonly Finding[]): ShownFindings {
  const ordered = [...findings].sort((a, b) => ORDER[a.severity] - ORDER[b.severity]);
  if (ordered.length <= MOST)
    return { groups: ordered.map((finding) => ({ finding, more: 0, lines: '' })), left: 0 };
  const kinds = new Map<string, Finding[]>();
  for (const finding of ordered) kinds.set(finding.code, [...(kinds.get(finding.code) ?? []), finding]);
  const all = [...kinds.values()];
  const groups = all.slice(0, MOST).flatMap(groupOf);
  return { groups, left: all.slice(MOST).reduce((sum, { length }) => sum + length, 0) };
}
