import type { TypedDay } from '@unitbook/engine';
import { leadingObis, type ObisCode } from './code.ts';
import type { Line } from './lines.ts';
import { displayWord, type DisplayWord } from './display-words.ts';
import { clockMinute, writtenDay } from './moment.ts';

/** A day line; the day is null where it is meant for one and is none. `number` is that of the line. */
export interface DayLine {
  readonly kind: 'day';
  readonly text: string;
  readonly day: TypedDay | null;
  readonly minute: number | null;
  readonly number: number;
  readonly at: number;
}

/** A register line: a code or a word in its place, and what stands behind it. Offsets count from 0. */
export interface RegisterLine {
  readonly kind: 'register';
  /** The code, or the word, as it stands. */
  readonly text: string;
  readonly code: ObisCode | null;
  readonly word: DisplayWord | null;
  readonly number: number;
  readonly at: number;
  readonly value: string;
  readonly valueAt: number;
}

/** Digits that can be meant for a code, without its points. */
interface BareLine {
  readonly kind: 'bare';
  readonly text: string;
  readonly offer: string;
  readonly at: number;
}

/** What a line of a list turned out to be. */
export type ListLine =
  DayLine | RegisterLine | BareLine | { readonly kind: 'nothing' | 'header' | 'unclear' };

/** What can stand between a code and its value. */
const BETWEEN = /^[\s:;=,|]*/;
const DAY_LABEL = /^(?:date|day|on|read(?:ing)?(?: on| date| day)?)\b[\s:=]*/i;
const TIME_BEHIND = /(?: +|T)(?:at +)?(\d{1,2}:\d\d(?::\d\d)?)$/;
const LIKE_A_DAY =
  /^(?:\d{1,4}([/-])\d{1,2}\1\d{1,4}|\d{1,2}(?:st|nd|rd|th)?[ .-]+[A-Za-z]{3,9}[ .,-]+\d{2,4})$/;
const LONGEST_DAY_LINE = 80;
const BARE = /^(15|16|1|2)(?:8(\d)| 8 (\d)|\.8)(?=[\s:;=,|(])/;
/** Control characters before a readout of IEC 62056-21, and behind it before its check character. */
const STARTS: readonly string[] = ['\u0001', '\u0002'];
const END_OF_TEXT = '\u0003';
/** The mark that ends a readout. */
const MARK = '!';

/** What is left of a line without the spaces around it, and where that begins, from 0. */
interface Start {
  readonly text: string;
  readonly number: number;
  readonly at: number;
}

function dayLine({ text, number, at }: Start): DayLine | null {
  if (text.length > LONGEST_DAY_LINE) return null;
  const label = DAY_LABEL.exec(text)?.[0] ?? '';
  const rest = text.slice(label.length);
  const behind = TIME_BEHIND.exec(rest);
  const minute = behind === null ? null : clockMinute(behind[1] ?? '');
  const date = minute === null ? rest : rest.slice(0, behind?.index);
  const day = writtenDay(date);
  if (day === null && label === '' && !LIKE_A_DAY.test(date)) return null;
  return { kind: 'day', text: date, day, minute, number, at: at + label.length };
}

/** A code whose group E is left out looks like a number, unless brackets or groups before tell. */
const isPlainNumber = (text: string, rest: string): boolean =>
  /^\d+\.\d+$/.test(text) && !rest.startsWith('(');

function registerLine({ text, number, at }: Start): RegisterLine | null {
  const found = leadingObis(text);
  const isCode = found !== null && !isPlainNumber(text.slice(0, found.length), text.slice(found.length));
  const word = isCode ? null : displayWord(text);
  const length = isCode ? found.length : (word?.length ?? 0);
  if (length === 0) return null;
  const rest = text.slice(length);
  const between = BETWEEN.exec(rest)?.[0].length ?? 0;
  if (between === 0 && rest !== '' && !rest.startsWith('(')) return null;
  return {
    kind: 'register',
    text: text.slice(0, length),
    code: isCode ? found.code : null,
    word,
    number,
    at,
    value: rest.slice(between),
    valueAt: at + length + between,
  };
}

function bareLine({ text, at }: Start): BareLine | null {
  const match = BARE.exec(text);
  if (match === null) return null;
  const [digits, group = '', closed, spaced] = match;
  return { kind: 'bare', text: digits, offer: `${group}.8.${closed ?? spaced ?? '0'}`, at };
}

/**
 * Tell what a line of a list is: a day, a register, or neither.
 *
 * @example
 * listLine({ text: '1.8.0 = 4342.1 kWh', number: 1 }).value //=> "4342.1 kWh"
 * listLine({ text: '180: 4342.1', number: 1 }).offer //=> "1.8.0"
 * listLine({ text: '12892.4', number: 1 }).kind //=> "unclear"
 */
export function listLine({ text: line, number }: Pick<Line, 'text' | 'number'>): ListLine {
  const text = (STARTS.includes(line.charAt(0)) ? line.slice(1) : line).trim();
  if (text === '' || text === MARK || text.startsWith(END_OF_TEXT)) return { kind: 'nothing' };
  // A readout of IEC 62056-21 begins with the make of the meter.
  if (text.startsWith('/')) return { kind: 'header' };
  const start = { text, number, at: line.indexOf(text) };
  return dayLine(start) ?? registerLine(start) ?? bareLine(start) ?? { kind: 'unclear' };
}
