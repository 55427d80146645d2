import type { DayNumber } from '@unitbook/engine';
import { crc16 } from './checksum.ts';
import type { Line } from './lines.ts';
import { telegramTime } from './moment.ts';
import type { Moment, Registers } from './registers.ts';
import { meterOf, readTelegram, registerOn, type Telegram } from './telegram.ts';
import { named, shown, type Place, type Teller } from './teller.ts';

/** From this version on, telegrams end with a checksum. */
const CHECKED_FROM = 40;

/** What the reader of one file goes by. */
export interface Reading {
  readonly teller: Teller;
  readonly registers: Registers;
  /** The day of a telegram without a time, until it was used. */
  day: DayNumber | null;
  /** Whether a telegram without a time was met. */
  wasUntimed: boolean;
  /** Lines of a telegram whose beginning is missing. */
  stray: { readonly place: Place; readonly line: string; readonly names: Set<string> } | null;
  /** Codes of no counted energy, for a file in which there is nothing else. */
  passed: readonly string[];
  isEmpty: boolean;
}

/** Where a line begins. */
export const startOf: (line: Line) => Place = ({ number, column }) => ({ line: number, column });

/** The registers of energy on some lines, in words. */
export const registersOn: (lines: readonly Line[]) => string = (lines) =>
  named([...new Set(lines.flatMap((line) => registerOn(line) ?? []))]);

/**
 * The checksums that a telegram can have.
 *
 * The meter counts CR LF at the end of every line; a program that kept the telegram may have written LF
 * alone. So the line ends are put back first. What stands in the file is tried, too, for meters that send LF.
 */
function checksumsOf(lines: readonly Line[]): readonly [string, string] {
  const restored = lines.map(({ text }) => `${text}\r\n`).join('');
  const asRead = lines.map(({ text, end }) => text + end).join('');
  const first = crc16(`${restored}!`);
  return [first, asRead === restored ? first : crc16(`${asRead}!`)];
}

/** The moment of a telegram that gives no time: the day that the reader was told, for the first of them. */
function untimed(lines: readonly Line[], meter: string, reading: Reading): Moment | null {
  const { day, wasUntimed, teller } = reading;
  // A second one is of a later moment, perhaps of another day.
  const found = wasUntimed ? 'one more telegram without a time' : 'a telegram without a time';
  [reading.day, reading.wasUntimed] = [null, true];
  if (day !== null) return { meter, day, minute: null, time: null };
  const header = lines[0] === undefined ? { line: 1, column: 1 } : startOf(lines[0]);
  teller.tell('obis/no-time', header, { found, registers: registersOn(lines) });
  return null;
}

/** When a telegram was made, or null after saying why that cannot be told. */
function momentOf(telegram: Telegram, lines: readonly Line[], reading: Reading): Moment | null {
  const { teller } = reading;
  const meter = meterOf(telegram);
  const [first] = telegram.times;
  if (first === undefined) return untimed(lines, meter, reading);
  const { text, place } = first;
  const texts = [...new Set(telegram.times.map((one) => one.text))];
  if (texts.length > 1) {
    const found = `the times ${named(texts.map(shown))} in one telegram`;
    teller.tell('obis/no-time', place, { found, registers: registersOn(lines) });
    return null;
  }
  const time = telegramTime(text);
  if (time === null) {
    teller.tell('obis/no-such-time', place, { time: shown(text), registers: registersOn(lines) });
    return null;
  }
  const { day, minute, second } = time;
  return { meter, day, minute, time: { second, text, place } };
}

/** Take a telegram with its beginning and its end. */
export function takeTelegram(lines: readonly Line[], mark: Line, reading: Reading): void {
  const { teller } = reading;
  const printed = mark.text.slice(1).trim();
  if (printed !== '') {
    const [counted, asRead] = checksumsOf(lines);
    if (![counted, asRead].includes(printed.toUpperCase())) {
      const values = { printed: shown(printed), counted, registers: registersOn(lines) };
      teller.tell('obis/checksum', startOf(mark), values);
      return;
    }
  }
  const telegram = readTelegram(lines.slice(1), teller, printed !== '');
  if (reading.passed.length === 0) reading.passed = telegram.passed;
  const { version } = telegram;
  if (printed === '' && version !== null && version >= CHECKED_FROM)
    teller.tell('obis/no-checksum', startOf(mark), {
      version: `${String(Math.floor(version / 10))}.${String(version % 10)}`,
    });
  const moment = momentOf(telegram, lines, reading);
  if (moment !== null) reading.registers.handOn(telegram.readout, moment);
}
