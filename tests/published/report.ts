import type { CaseSource, PublishedCase } from './case.ts';
import { runCase, type CaseResult } from './run-case.ts';

/** A case with what came out of it. */
export interface CaseReport {
  readonly one: PublishedCase;
  readonly result: CaseResult;
}

const sourceText = ({ title, publisher, year }: CaseSource): string => `${title}, ${publisher}, ${year}`;

function caseLines({ one, result }: CaseReport): string[] {
  const head = `${result.ok ? 'reproduced' : 'DIFFERS   '}  ${one.id}  ${one.title} (${one.kind}; ${sourceText(one.source)})`;
  if (result.stopped !== null) return [head, `            stopped: ${result.stopped}`];
  const differing = Object.keys(result.expected).filter((name) => result.got[name] !== result.expected[name]);
  return [
    head,
    ...differing.map(
      (name) => `            ${name}: expected ${result.expected[name] ?? ''}, got ${result.got[name] ?? ''}`,
    ),
  ];
}

/** Run cases, one after the other. */
export function runCases(cases: readonly PublishedCase[]): readonly CaseReport[] {
  return cases.map((one) => ({ one, result: runCase(one) }));
}

/** How many cases came out as published. */
export function reproduced(reports: readonly CaseReport[]): number {
  return reports.filter(({ result }) => result.ok).length;
}

/** The report as people read it: one line for each case, then the count. */
export function reportText(reports: readonly CaseReport[]): string {
  const count = `${reproduced(reports)} of ${reports.length} published cases reproduced`;
  return [...reports.flatMap(caseLines), count].join('\n');
}

/** The report for programs, as a plain object. */
export function reportDocument(reports: readonly CaseReport[]) {
  const cases = reports.map(({ one, result }) => ({
    id: one.id,
    source: sourceText(one.source),
    kind: one.kind,
    ok: result.ok,
  }));
  return { total: reports.length, reproduced: reproduced(reports), cases };
}
