import { leadingObis, obisKey, type LeadingObis } from './code.ts';
import type { Line } from './lines.ts';
import { obisMeaning } from './meaning.ts';
import { addEntry, emptyReadout, entryOf, groupOf, type Entry, type Readout } from './readout.ts';
import { shown, type Place, type Teller } from './teller.ts';
import { energyUnit } from './units.ts';

/** What stands in a telegram. */
export interface Telegram {
  readonly readout: Readout;
  /** The texts of 0-0:1.0.0 as they stand, and where; there should be one. */
  readonly times: { readonly text: string; readonly place: Place }[];
  /** Serial numbers by their code. */
  readonly serials: Map<string, string>;
  /** The version of the requirements, 42 for 4.2; null where the telegram does not say. */
  version: number | null;
  /** Codes of electricity that are no counted energy, to name when nothing else was found. */
  readonly passed: string[];
}

/** Where a line of a telegram is read from, and whether a checksum has shown that nothing in it is damaged. */
interface Context {
  readonly telegram: Telegram;
  readonly teller: Teller;
  readonly isSound: boolean;
}

/** Serial numbers by their codes, the one that tells most first. */
const IDENTITY: readonly string[] = ['0-0:96.1.1', '0-0:96.1.0', '0-0:42.0.0'];
const TIME = '0-0:1.0.0';
const VERSIONS: readonly string[] = ['1-3:0.2.8', '0-0:96.1.4'];

/** Text messages, in hexadecimal digits, can be as long as 1024 characters: the one line with no limit. */
const MESSAGE = '0-0:96.13.';
/** The longest line that is read. */
export const LONGEST_LINE = 2_048;

const MOST_PASSED = 9;
const FORM = 'a code and its value in brackets, such as 1-0:1.8.1(004342.100*kWh)';
const NUMBER = /^-?\d{1,20}(?:\.\d{1,20})?$/;
const CHARACTERS = /^(?:[2-6][\dA-Fa-f]|7[\dA-Ea-e])+$/;

/**
 * The serial number that a telegram gives in hexadecimal digits, two for each character.
 *
 * @returns the text as it stands where not every character could be printed
 * @example
 * serialNumber('4B384547') //=> "K8EG"
 * serialNumber('3960') //=> "9`"
 * serialNumber('0012') //=> "0012"
 */
export function serialNumber(text: string): string {
  if (!CHARACTERS.test(text)) return text;
  return text.replace(/../g, (pair) => String.fromCharCode(Number.parseInt(pair, 16)));
}

const placeOf = (line: Line, offset = 0): Place => ({ line: line.number, column: line.column + offset });

function unclear(line: Line, { isSound, teller }: Context): void {
  // A meter wrote a sound line so; only a register that would be lost with it is worth a word.
  if (isSound && !/wh\b/i.test(line.text)) return;
  teller.tell('obis/line-unclear', placeOf(line), { line: shown(line.text), form: FORM });
}

/** A register of energy: its value has to be a number with a unit. Null after saying what it is instead. */
function readRegister(line: Line, found: LeadingObis, inner: string, teller: Teller): Entry | null {
  const register = line.text.slice(0, found.length);
  const place = placeOf(line, found.length + 1);
  const star = inner.lastIndexOf('*');
  const text = star < 0 ? inner : inner.slice(0, star);
  const value = shown(text);
  const unit = energyUnit(inner.slice(text.length + 1));
  if (text === '') teller.tell('obis/no-value', place, { register });
  else if (!NUMBER.test(text)) teller.tell('obis/not-a-number', place, { value, register, offer: '' });
  else if (star < 0) teller.tell('obis/no-unit', place, { value, register });
  else if (unit === null) teller.tell('obis/unit', place, { unit: shown(inner.slice(star + 1)), register });
  else if (text.startsWith('-') && obisMeaning(found.code).quantity !== 'net')
    teller.tell('obis/below-zero', place, { value, register });
  else return entryOf(found.code, register, { text, unit, place });
  return null;
}

/** A line of a register of energy. */
function takeRegister(line: Line, found: LeadingObis, inner: string, context: Context): void {
  const { telegram, teller } = context;
  const isOneValue = !/[()]/.test(inner);
  if (!isOneValue) unclear(line, context);
  const entry = isOneValue ? readRegister(line, found, inner, teller) : null;
  if (entry === null) telegram.readout.spoilt.add(groupOf(found.code));
  else addEntry(telegram.readout, entry, 'telegram', teller);
}

/** What a telegram says of itself: its time, its meter, its version. */
function readHead(telegram: Telegram, key: string, inner: string, place: Place): void {
  if (key === TIME) telegram.times.push({ text: inner, place });
  if (VERSIONS.includes(key) && /^\d\d/.test(inner))
    telegram.version = Number.parseInt(inner.slice(0, 2), 10);
  if (IDENTITY.includes(key) && inner !== '') telegram.serials.set(key, serialNumber(inner));
}

/** Read one line; whether it may go on in the next, as values of gas meters did up to version 3. */
function readLine(line: Line, context: Context, goesOn: boolean): boolean {
  const { telegram, teller } = context;
  const text = line.text.trimEnd();
  if (text === '' || (goesOn && text.startsWith('('))) return goesOn;
  const found = leadingObis(text);
  if (text.length > LONGEST_LINE && !text.startsWith(MESSAGE)) {
    teller.tell('obis/line-too-long', placeOf(line), { line: shown(text), most: String(LONGEST_LINE) });
    return true;
  }
  if (found === null || text[found.length] !== '(' || !text.endsWith(')')) {
    unclear(line, context);
    if (found !== null) telegram.readout.spoilt.add(groupOf(found.code));
    return false;
  }
  const register = text.slice(0, found.length);
  const inner = text.slice(found.length + 1, -1);
  const { isEnergy, isPast } = obisMeaning(found.code);
  if (!isEnergy) {
    readHead(telegram, obisKey(found.code), inner, placeOf(line, found.length + 1));
    if (found.code.a === 1 && telegram.passed.length < MOST_PASSED) telegram.passed.push(register);
    return true;
  }
  if (isPast) teller.tellOnce('obis/past-value', placeOf(line), { register });
  else takeRegister(line, found, inner, context);
  return false;
}

/**
 * Read the lines between the header and the mark "!".
 *
 * @param isSound  whether the checksum is right
 */
export function readTelegram(lines: readonly Line[], teller: Teller, isSound: boolean): Telegram {
  const telegram = { readout: emptyReadout(), times: [], serials: new Map(), version: null, passed: [] };
  const context: Context = { telegram, teller, isSound };
  let goesOn = false;
  for (const line of lines) goesOn = readLine(line, context, goesOn);
  return telegram;
}

/** The serial number of the meter; '' where the telegram gives none. */
export function meterOf({ serials }: Telegram): string {
  return IDENTITY.map((code) => serials.get(code)).find((one) => one !== undefined) ?? '';
}

/** The code of the register that a line of a telegram is of, where that is energy counted up to now. */
export function registerOn({ text }: Line): string | null {
  const found = leadingObis(text);
  if (found === null || text[found.length] !== '(') return null;
  const { isEnergy, isPast } = obisMeaning(found.code);
  return isEnergy && !isPast ? text.slice(0, found.length) : null;
}
