import { obisKey, type ObisCode } from './code.ts';
import type { Blocks } from './list-block.ts';
import type { RegisterLine } from './list-line.ts';
import { clockDay, clockMinute, telegramTime } from './moment.ts';
import { serialNumber } from './telegram.ts';
import { shown, type Place, type Teller } from './teller.ts';

const CLOCK_FORM = '250501, the year first';
const LONGEST_SERIAL = 64;

/** Serial numbers by groups C to E, the one that tells most first; C.1.0 is 96.1.0. */
const IDENTITY: readonly string[] = ['96.1.1', '96.1.0', '0.0.0', '42.0.0'];
const TELEGRAM_TIME = '0-0:1.0.0';

/** Groups C to E of a code that is of no measured kind: of the meter itself; '' for others. */
function headCode(code: ObisCode): string {
  const isOfMeter = (code.a ?? 0) <= 1 && (code.b ?? 0) === 0;
  return isOfMeter ? obisKey(code).slice('0-0:'.length) : '';
}

/** The text of a value, brackets off. */
const bare = (value: string): string => (/^\(.*\)$/.test(value) ? value.slice(1, -1) : value).trim();

function readSerial({ value, text }: RegisterLine, rank: number, blocks: Blocks): void {
  const name = bare(value).slice(0, LONGEST_SERIAL);
  // In full, the code is copied from a telegram, which writes characters in hexadecimal digits.
  if (name !== '') blocks.meter(text.startsWith('0-0:') ? serialNumber(name) : name, rank);
}

function readDay(value: string, place: Place, blocks: Blocks, teller: Teller): void {
  const day = clockDay(value);
  if (day === null) teller.tell('obis/no-such-day', place, { value: shown(value), form: CLOCK_FORM });
  else blocks.clockDay(day, value, place);
}

function readMinute(value: string, place: Place, blocks: Blocks, teller: Teller): void {
  const minute = clockMinute(value);
  if (minute === null) teller.tell('obis/no-such-hour', place, { value: shown(value) });
  else blocks.clockMinute(minute);
}

/**
 * Read a line about the meter itself: its serial number (C.1.0, 0.0.0), its date (0.9.2), its time (0.9.1).
 *
 * @param line  of a code
 * @returns     whether the line is one
 */
export function readHead(line: RegisterLine, code: ObisCode, blocks: Blocks, teller: Teller): boolean {
  const head = headCode(code);
  const value = bare(line.value);
  const rank = IDENTITY.indexOf(head);
  const place = { line: line.number, column: line.valueAt + 1 };
  if (rank >= 0) readSerial(line, rank, blocks);
  else if (head === '0.9.1') readMinute(value, place, blocks, teller);
  else if (head === '0.9.2') readDay(value, place, blocks, teller);
  else if (line.text === TELEGRAM_TIME) {
    const time = telegramTime(value);
    readDay(time === null ? value : value.slice(0, 6), place, blocks, teller);
    if (time !== null) blocks.clockMinute(time.minute);
  } else return false;
  return true;
}
