import { confirmationKey, type Finding, type RegisterId } from '@unitbook/engine';
import type { PlacedFinding } from '../findings.ts';
import { plainText } from './text.ts';

/** The most findings that are printed one by one. */
const MOST = 200;
/** A sentence that quotes more than a line of the file is cut. */
const LONGEST = 400;

const SEVERITY_WORDS = { error: '', question: 'Question: ', note: 'Note: ' } as const;

function cut(text: string): string {
  return text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text;
}

function sentence(text: string): string {
  const plain = cut(plainText(text.trim()));
  const begun = plain.charAt(0).toUpperCase() + plain.slice(1);
  return /[.?!…]$/.test(begun) ? begun : `${begun}.`;
}

/** "The clause …" goes on a sentence as "the clause …"; "UTF-8 …" stays. */
function continued(text: string): string {
  return /^[A-Z][a-z ]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}

/** The one error that can be right: a counter that passed its full scale. */
const CONFIRMABLE = 'reading/below-before';

/** The first step of the path of a reading that came from a meter file: nothing can be confirmed in that. */
export const METER_READINGS = 'meter-readings';

/** Where an answer is put, by the first step of the path of what is asked about. */
const ANSWER_PLACES: Readonly<Record<string, string>> = {
  readings: 'put KEY under "confirmed"',
  [METER_READINGS]:
    'make a list of the readings with unitbook readings FILE --document, put KEY under "confirmed" there and bill that',
};

/** How to answer a question about a reading with "it is right". */
function answer({ severity, path, code }: Finding): string {
  const place = ANSWER_PLACES[String(path[0])];
  if ((severity !== 'question' && code !== CONFIRMABLE) || place === undefined) return '';
  const last = path.at(-1);
  const register = ['date', 'export', 'generation'].includes(String(last))
    ? (last as RegisterId | 'date')
    : 'import';
  return ` To confirm, ${place.replace('KEY', () => confirmationKey(code, register))}.`;
}

/**
 * A finding on one line: where, what was found, what was expected, what to do, its code.
 *
 * @param placed  a finding and the file or command it is about
 */
export function findingLine({ subject, finding }: PlacedFinding): string {
  const { position, severity, found, expected, remedy, code } = finding;
  const place = position === undefined ? '' : `:${String(position.line)}:${String(position.column)}`;
  const told = `${SEVERITY_WORDS[severity]}${sentence(found)} ${sentence(`Expected ${continued(expected)}`)} ${sentence(remedy)}`;
  return `${plainText(subject)}${place}  ${told}${answer(finding)} [${code}]`;
}

/** Findings, each on its line; beyond a number that nobody reads, only their count. */
export function findingLines(placed: readonly PlacedFinding[]): readonly string[] {
  const lines = placed.slice(0, MOST).map(findingLine);
  const more = placed.length - lines.length;
  return more === 0 ? lines : [...lines, `… and ${String(more)} more.`];
}
