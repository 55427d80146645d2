import type { PublishedCase } from './case.ts';

const KINDS = ['published', 'constructed', 'memory'];
const SUBJECTS = ['units', 'bill', 'identity', 'arithmetic'];
const YEAR = /^(?:\d{4}(?:[-–]\d{2,4})?|n\.d\.)$/;
const NUMBER = /^-?(?:0|[1-9]\d*)(?:\.\d+)?(?:\/[1-9]\d*)?$/;

const isText = (value: unknown): value is string => typeof value === 'string' && value !== '';
const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Places in a document where a number stands that is not written as text. */
function bareNumbers(value: unknown, path: string): string[] {
  if (typeof value === 'number') return [`${path} is a bare number: write it as text`];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, child]) => bareNumbers(child, `${path}.${key}`));
}

function sourceProblems({ source, kind, notes }: Record<string, unknown>): string[] {
  if (!isObject(source)) return ['source is missing'];
  const problems = ['title', 'publisher', 'year', 'address']
    .filter((key) => !isText(source[key]))
    .map((key) => `source.${key} is missing`);
  if (isText(source['year']) && !YEAR.test(source['year'])) problems.push(`year "${source['year']}"`);
  const isSaid = Array.isArray(notes) && notes.some((note) => /no address was kept/i.test(String(note)));
  if (kind === 'published' && !isSaid && !/^https?:\/\//.test(String(source['address']))) {
    problems.push('a published figure needs the address it was read at, or a note that none was kept');
  }
  return problems;
}

function expectedProblems(expected: unknown): string[] {
  if (!isObject(expected) || Object.keys(expected).length === 0) return ['nothing is expected'];
  return Object.entries(expected)
    .filter(([name, text]) => !isText(text) || !(NUMBER.test(text) || /(?:is|findings)$/.test(name)))
    .map(([name, text]) => `expected.${name}: ${JSON.stringify(text)} is no exact number`);
}

/**
 * Check that a case file's entry has the form of a case: known kinds, a whole source, numbers as text.
 *
 * @param value  as read from JSON
 * @returns      what is wrong with it, empty when nothing is
 * @example
 * checkCase({}).length > 0 //=> true
 */
export function checkCase(value: unknown): readonly string[] {
  if (!isObject(value)) return ['not an object'];
  const problems = ['id', 'title'].filter((key) => !isText(value[key])).map((key) => `${key} is missing`);
  if (!KINDS.includes(String(value['kind']))) problems.push(`kind ${String(value['kind'])}`);
  if (!SUBJECTS.includes(String(value['what']))) problems.push(`what ${String(value['what'])}`);
  if (!Array.isArray(value['runs']) || value['runs'].length === 0) problems.push('runs is empty');
  problems.push(...sourceProblems(value), ...expectedProblems(value['expected']));
  return [...problems, ...bareNumbers(value, '')];
}

/** The same as a type guard. */
export function isCase(value: unknown): value is PublishedCase {
  return checkCase(value).length === 0;
}
