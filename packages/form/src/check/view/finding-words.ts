import { findingSentences, type Finding } from '@unitbook/engine';
import { isUnfinished } from '../../view/unfinished.ts';
import type { Writing } from '../../writing/writing.ts';
import { notationOf } from './notation.ts';

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/**
 * A finding about a printed bill in one breath: what was found, what was expected, what to do.
 *
 * @param writing  of the household: amounts are grouped and days written as it does
 */
export function checkFindingText(finding: Finding, writing: Writing): string {
  const { found, expected, remedy } = findingSentences(finding, notationOf(writing));
  return `${capital(found)}. Expected: ${expected}. ${remedy}`;
}

/**
 * What was found alone, for a list that leads to where the finding stands whole.
 *
 * @param writing  of the household
 */
export function foundText(finding: Finding, writing: Writing): string {
  if (isUnfinished(finding)) return 'Still to type.';
  return `${capital(findingSentences(finding, notationOf(writing)).found)}.`;
}
