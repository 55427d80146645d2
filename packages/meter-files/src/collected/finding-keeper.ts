import type { Finding, Severity } from '@unitbook/engine';
import { collectedFinding, type CollectedFindingCode } from './collected-findings.ts';
import { addLine, linesText, noLines, type LineRanges } from './line-ranges.ts';

/** How many findings of one code are kept in full. */
export const MOST_OF_ONE_CODE = 1000;

/** Findings as they come, so many of each code; of the others the count and the lines. */
export interface FindingKeeper {
  readonly add: (finding: Finding) => void;
  readonly findings: () => readonly Finding[];
}

interface Code {
  readonly severity: Severity;
  kept: number;
  more: number;
  readonly lines: LineRanges;
}

const MORE: Readonly<Record<Severity, CollectedFindingCode>> = {
  error: 'meter-file/more-errors',
  question: 'meter-file/more-questions',
  note: 'meter-file/more-notes',
};

function moreFinding(code: string, { severity, more, lines }: Code): Finding {
  const values = { code, count: String(more), lines: linesText(lines) };
  const line = lines.ranges[0]?.from;
  const finding = collectedFinding(MORE[severity], { path: [] }, values);
  return line === undefined ? finding : { ...finding, position: { line, column: 1 } };
}

/** Keep findings: at most a thousand of one code in full, then one that says how many more there are. */
export function keepFindings(): FindingKeeper {
  const kept: Finding[] = [];
  const codes = new Map<string, Code>();
  const add = (finding: Finding): void => {
    const { code, severity, position } = finding;
    const known = codes.get(code) ?? { severity, kept: 0, more: 0, lines: noLines() };
    codes.set(code, known);
    if (known.kept < MOST_OF_ONE_CODE) {
      known.kept += 1;
      kept.push(finding);
      return;
    }
    known.more += 1;
    if (position !== undefined) addLine(known.lines, position.line);
  };
  const findings = (): readonly Finding[] => [
    ...kept,
    ...[...codes].filter(([, { more }]) => more > 0).map(([code, one]) => moreFinding(code, one)),
  ];
  return { add, findings };
}
