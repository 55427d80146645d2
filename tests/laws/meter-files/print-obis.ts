import { calendarDay, type DayNumber } from '@unitbook/engine';

/** A register as it is printed: the code, the digits and their unit. */
export interface PrintedRegister {
  readonly register: string;
  readonly digits: string;
  readonly unit: string;
}

/** Registers of one meter at one moment. */
export interface PrintedReadout {
  readonly meter: string;
  readonly day: DayNumber;
  readonly minute: number;
  readonly registers: readonly PrintedRegister[];
}

/** How a telegram is printed; left out: version 5.0 in winter, with CR LF and its checksum. */
export interface TelegramForm {
  readonly version?: string;
  readonly season?: 'S' | 'W';
  readonly lineEnd?: string;
  /** '' for a telegram without a checksum. */
  readonly checksum?: string;
}

const two = (value: number): string => String(value).padStart(2, '0');

/** CRC-16/ARC bit by bit, from its definition (x^16 + x^15 + x^2 + 1, lowest bit first): no table. */
export function bitwiseChecksum(text: string): string {
  let rest = 0;
  for (const character of text) {
    for (let bit = 0; bit < 8; bit += 1) {
      const isOdd = ((rest ^ (character.charCodeAt(0) >> bit)) & 1) === 1;
      rest = isOdd ? (rest >> 1) ^ 0xa001 : rest >> 1;
    }
  }
  return rest.toString(16).toUpperCase().padStart(4, '0');
}

/** YYMMDD. */
function shortDay(day: DayNumber): string {
  const { year, month, day: date } = calendarDay(day);
  return two(year % 100) + two(month) + two(date);
}

/** hhmmss of a full minute. */
const shortTime = (minute: number): string => `${two(Math.floor(minute / 60))}${two(minute % 60)}00`;

const hexadecimal = (text: string): string =>
  Array.from(text, (character) => character.charCodeAt(0).toString(16).toUpperCase()).join('');

/** Put the lines of a telegram together, header first, and print the checksum behind them. */
export function frameTelegram(lines: readonly string[], form: TelegramForm = {}): string {
  const { lineEnd = '\r\n' } = form;
  const checksum = form.checksum ?? bitwiseChecksum(`${lines.map((line) => `${line}\r\n`).join('')}!`);
  return [...lines, `!${checksum}`, ''].join(lineEnd);
}

/** Print a readout as a telegram. */
export function printTelegram(readout: PrintedReadout, form: TelegramForm = {}): string {
  const { version = '50', season = 'W' } = form;
  const time = `${shortDay(readout.day)}${shortTime(readout.minute)}${season}`;
  const head = ['/XXX5MADE-UP', '', `1-3:0.2.8(${version})`, `0-0:1.0.0(${time})`];
  const meter = `0-0:96.1.1(${hexadecimal(readout.meter)})`;
  const registers = readout.registers.map(({ register, digits, unit }) => `${register}(${digits}*${unit})`);
  return frameTelegram([...head, meter, ...registers, '1-0:1.7.0(00.244*kW)'], form);
}

/** Print a readout as the lines of IEC 62056-21, or as a person would write them. */
export function printList(readout: PrintedReadout, style: 'readout' | 'written'): string {
  const { day, minute, meter } = readout;
  const { year, month, day: date } = calendarDay(day);
  const isReadout = style === 'readout';
  const head = isReadout
    ? [`0.0.0(${meter})`, `0.9.1(${shortTime(minute)})`, `0.9.2(${shortDay(day)})`]
    : [
        `${String(year)}-${two(month)}-${two(date)} ${two(Math.floor(minute / 60))}:${two(minute % 60)}`,
        `C.1.0 ${meter}`,
      ];
  const lines = readout.registers.map(({ register, digits, unit }) =>
    isReadout ? `${register}(${digits}*${unit})` : `${register} = ${digits} ${unit}`,
  );
  return [...head, ...lines, ''].join('\n');
}
