import { readTypedDay, type Finding, type ReadingRow } from '@unitbook/engine';
import type { Household } from '../household/household.ts';
import { changeOf } from '../household/meter-change.ts';

const MISSING = new Set([
  'reading/missing-register',
  'reading/event-empty',
  'reading/change-at-end',
  'account/number-missing',
]);

/** Whether a finding only says that something has still to be typed. */
export function isUnfinished({ code, values }: Finding): boolean {
  return MISSING.has(code) || (code === 'reading/no-day' && values['value'] === '');
}

/**
 * Whether a number cannot be judged yet: by its day a last or first reading belongs to its meter, and with
 * it the digits that it can have.
 */
export function isTooEarly(finding: Finding, { event, date }: ReadingRow): boolean {
  if (event === undefined || isUnfinished(finding) || finding.path[2] === 'date') return false;
  return readTypedDay(date) === null;
}

/** Codes that say that the other reading of a change is missing. */
const ONE_SIDED = new Set(['reading/first-without-final', 'reading/final-without-first']);

/**
 * Findings without those that say nothing new: where the other reading of a change is there and cannot be
 * used yet, what is said of that one is enough.
 */
export function withoutEchoes(findings: readonly Finding[], household: Household): readonly Finding[] {
  if (!findings.some(({ code }) => ONE_SIDED.has(code))) return findings;
  const isToldOf = (index: number | null): boolean =>
    findings.some(({ path, severity }) => path[1] === index && severity === 'error');
  return findings.filter(({ code, path }) => {
    if (!ONE_SIDED.has(code) || typeof path[1] !== 'number') return true;
    const { final = null, first = null } = changeOf(household, path[1]) ?? {};
    const other = final === path[1] ? first : final;
    return other === null || !isToldOf(other);
  });
}
