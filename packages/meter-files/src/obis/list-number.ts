import { readNumberText } from '@unitbook/engine';
import { energyUnit, type EnergyUnit } from './units.ts';

/** A value as a person writes it, in two: the number, and the unit, both as they stand. */
export interface ValueText {
  readonly number: string;
  readonly unit: string;
}

/** What a text that should be a number turned out to be. */
export type ListNumber =
  | { readonly kind: 'number'; readonly text: string }
  | { readonly kind: 'comma-unclear'; readonly grouped: string; readonly decimal: string }
  | { readonly kind: 'not-a-number'; readonly offer: string };

/** The most characters of a value with its unit. */
const LONGEST_VALUE = 100;
/** The most characters of a number, its grouping counted. */
const LONGEST_NUMBER = 40;
/** Digits of any script, what groups and what marks decimals, and the letters that are mistaken for digits. */
const NUMBER_LIKE = /^[-+\u2212]?[\p{Nd}.,'\u2019 \u00a0\u202foOlIiSB]+$/u;
/** A space or a stroke between digits groups them by three: "1 234,5". Two numbers on a line are none. */
const SPACED = /^[-+\u2212]?\p{Nd}{1,3}(?:[ '\u2019\u00a0\u202f]\p{Nd}{3})+(?:[.,]\p{Nd}+)?$/u;

/**
 * Take a value in two. A value in brackets has a star before its unit: (004342.1*kWh).
 * Without brackets the unit stands behind the number or before it.
 *
 * @returns null where a bracket is not closed, there is more than one, or the text is longer than a value
 * @example
 * splitValue('(004342.1*kWh)') //=> {"number":"004342.1","unit":"kWh"}
 * splitValue('4342,1 kWh') //=> {"number":"4342,1","unit":"kWh"}
 * splitValue('(1') //=> null
 */
export function splitValue(text: string): ValueText | null {
  if (text.length > LONGEST_VALUE) return null;
  const isBracketed = text.startsWith('(') && text.endsWith(')') && text.length > 1;
  const inner = isBracketed ? text.slice(1, -1).trim() : text;
  if (/[()]/.test(inner)) return null;
  const star = inner.lastIndexOf('*');
  if (star >= 0) return { number: inner.slice(0, star).trim(), unit: inner.slice(star + 1).trim() };
  const before = /^([kM]?Wh)[\s:=]+(.+)$/i.exec(inner);
  if (before !== null) return { number: before[2] ?? '', unit: before[1] ?? '' };
  const last = lastDigit(inner);
  const unit = inner.slice(last + 1).replace(/^[\s;,:|]+|[\s;,|]+$/g, '');
  // Letters that touch the digits can be a unit, or digits that were misread.
  if (unit !== '' && inner.startsWith(unit, last + 1) && listUnit(unit) === null)
    return { number: inner, unit: '' };
  return { number: inner.slice(0, last + 1).trim(), unit };
}

/** Where the last digit of a text stands, of whatever script; −1 for none. */
function lastDigit(text: string): number {
  for (let at = text.length - 1; at >= 0; at -= 1) if (/\p{Nd}/u.test(text[at] ?? '')) return at;
  return -1;
}

/**
 * The unit that a person writes; "units" are kWh.
 *
 * @returns null for any other, and for none
 */
export function listUnit(text: string): EnergyUnit | null {
  return /^units?$/i.test(text) ? { unit: text, shift: 0 } : energyUnit(text);
}

/**
 * Read a number as a person writes it: 004342.1, 4342,1, 12 892.4, 1,16,444, digits of other scripts.
 *
 * @returns plain decimal text, zeros before it kept; or what stands in the way
 * @example
 * readListNumber('0004342,1').text //=> "0004342.1"
 * readListNumber('4342 5').kind //=> "not-a-number"
 */
export function readListNumber(text: string): ListNumber {
  const nothing = { kind: 'not-a-number', offer: '' } as const;
  if (text.length > LONGEST_NUMBER || !NUMBER_LIKE.test(text)) return nothing;
  if (/[ '\u2019\u00a0\u202f]/.test(text) && !SPACED.test(text)) return nothing;
  const read = readNumberText(text);
  if (read.kind === 'number' || read.kind === 'comma-unclear') return read;
  return read.kind === 'letter' ? { kind: 'not-a-number', offer: read.offer } : nothing;
}
