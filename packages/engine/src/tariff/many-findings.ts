import type { Finding } from '../quantity/index.ts';
import { documentFinding } from './document-findings.ts';

/** As many problems of one document as are listed: more than anybody corrects in one go. */
export const MOST_FINDINGS = 1000;

const isRest = ({ code }: Finding): boolean => code === 'document/more-problems';

/** A finding that stands for so many that are not listed; none where there are none. */
export function restOf(count: number): readonly Finding[] {
  return count === 0
    ? []
    : [documentFinding('document/more-problems', { path: [] }, { count: String(count) })];
}

/**
 * Keep the first findings of a document, and say how many more there are.
 *
 * @param findings  as many as there are; what an earlier list left out is counted in
 * @returns         at most `MOST_FINDINGS`, and one more that counts the rest
 * @example
 * firstFindings([]) //=> []
 */
export function firstFindings(findings: readonly Finding[]): readonly Finding[] {
  const listed = findings.filter((finding) => !isRest(finding));
  const left = findings
    .filter(isRest)
    .reduce((sum, { values }) => sum + Number.parseInt(values['count'] ?? '0', 10), 0);
  return [...listed.slice(0, MOST_FINDINGS), ...restOf(left + Math.max(0, listed.length - MOST_FINDINGS))];
}
