import { isDecimalText } from './decimal.ts';

/** How much a finding stops: an error stops the figure, a question asks and goes on, a note only tells. */
export type Severity = 'error' | 'question' | 'note';

/** The way to a place in a document: keys and indexes, from the outside in. */
export type Path = readonly (string | number)[];

/** The three sentences of a finding; where it stands is told by its path. */
export interface FindingText {
  readonly found: string;
  readonly expected: string;
  readonly remedy: string;
}

/**
 * Something a reader of the result has to know about the input: what was found, what was expected and
 * what to do. Findings are returned, all of them at once; nothing is thrown for bad data.
 */
export interface Finding extends FindingText {
  readonly code: string;
  readonly severity: Severity;
  readonly path: Path;
  /** The values the sentences were made of, as text, for a reader in another language. */
  readonly values: Readonly<Record<string, string>>;
  /** Line and column in the file, both from 1, where the input was a text. */
  readonly position?: { readonly line: number; readonly column: number };
  /** A corrected text that the remedy offers, where there is one. */
  readonly offer?: string;
}

/** What every stage returns: its value (null when it could not be made) and its findings. */
export interface Outcome<Value> {
  readonly value: Value;
  readonly findings: readonly Finding[];
}

type Values = Readonly<Record<string, string>>;

/** A kind of finding: how severe it is and how its sentences are made. */
export interface FindingKind {
  readonly severity: Severity;
  /** The values that are amounts, for a surface to group their digits. */
  readonly grouped?: readonly string[];
  readonly text: (values: Values) => FindingText;
}

/**
 * The sentences of a finding with its amounts in a reader's grouping; a value that is not there, or is no decimal, stays
 * as it is.
 *
 * @param values  of the finding
 * @param number  how an exact decimal text is written
 * @example
 * groupedText({ severity: 'note', grouped: ['units'], text: (v) => ({ found: v.units, expected: '', remedy: '' }) }, { units: '42061' }, () => '42,061').found //=> "42,061"
 */
export function groupedText(
  { grouped = [], text }: FindingKind,
  values: Values,
  number: (text: string) => string,
): FindingText {
  const own = grouped.map((key): readonly [string, string] => {
    const value = values[key] ?? '';
    return [key, isDecimalText(value) ? number(value) : value];
  });
  return text({ ...values, ...Object.fromEntries(own) });
}

/** Where a finding stands, and what it offers. */
export interface FindingPlace {
  readonly path: Path;
  readonly offer?: string;
}

/**
 * Make the maker of findings for one stage: its codes are the keys of `kinds`, so an unknown code does
 * not compile.
 *
 * @param kinds  the stage's kinds by code
 * @returns      a function (code, place, values) → finding
 * @example
 * const make = findingMaker({ 'x/odd': { severity: 'note', text: (v) => ({ found: `${v.n} is odd`, expected: 'an even number', remedy: 'add one' }) } });
 * make('x/odd', { path: ['n'] }, { n: '3' }).found //=> "3 is odd"
 */
export function findingMaker<Code extends string>(
  kinds: Readonly<Record<Code, FindingKind>>,
): (code: Code, place: FindingPlace, values?: Values) => Finding {
  return (code, place, values = {}) => {
    const kind = kinds[code];
    return { code, severity: kind.severity, ...place, values, ...kind.text(values) };
  };
}
