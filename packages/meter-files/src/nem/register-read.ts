import type { ValueQuality } from '../stream.ts';
import { readMoment, type Moment } from './moment.ts';
import { qualityIndex, qualityName, readQuality, UNKNOWN_QUALITY, VARIABLE } from './quality.ts';
import { cellOf, placeOf, shown, type NemRecord, type Report } from './record.ts';
import { readFileNumber, type FileNumber } from './register-text.ts';

/** Which of the two reads of a record 250. */
export type Which = 'previous' | 'current';

/** The cells of a record 250 (their order is from memory; it matches the operator's own sample lines). */
export const CELL = {
  point: 1,
  registerId: 3,
  suffix: 4,
  meter: 6,
  direction: 7,
  previous: 8,
  current: 13,
  quantity: 18,
  unit: 19,
} as const;

/** One read of a record 250. */
export interface RegisterRead {
  readonly number: FileNumber;
  readonly moment: Moment;
  readonly quality: ValueQuality;
}

const MISSING = qualityIndex('missing');
const ESTIMATED = qualityIndex('estimated');

function readFlag(record: NemRecord, at: number, report: Report): number {
  const text = cellOf(record, at);
  const quality = readQuality(text);
  if (quality !== UNKNOWN_QUALITY && quality !== VARIABLE) return quality;
  report('nem/quality', placeOf(record, at), { quality: shown(text), flags: 'A, E, F, S or N' });
  return ESTIMATED;
}

function readNumber(record: NemRecord, which: Which, report: Report): FileNumber | null {
  const at = CELL[which];
  const text = cellOf(record, at);
  const number = readFileNumber(text);
  if (typeof number === 'object') return number;
  const read = shown(text);
  if (number === 'too-many')
    report('nem/too-many-digits', placeOf(record, at), { what: `"${read}" as the ${which} read` });
  else report('nem/read', placeOf(record, at), { read, which });
  return null;
}

/** Nothing was read; a number all the same is asked about. */
function noRead(record: NemRecord, which: Which, report: Report): void {
  const at = CELL[which];
  const text = cellOf(record, at);
  const number = readFileNumber(text);
  if (text === '' || (typeof number === 'object' && number.whole === 0))
    report('nem/no-read', placeOf(record, at), { which });
  else
    report('nem/value-of-no-quality', placeOf(record, at), { what: `"${shown(text)}" as the ${which} read` });
}

/**
 * Read one of the two reads of a record 250: what the register showed, when, and how that is known.
 *
 * @returns null where there is none, or none that can be used
 */
export function readRegister(record: NemRecord, which: Which, report: Report): RegisterRead | null {
  const at = CELL[which];
  const quality = readFlag(record, at + 2, report);
  if (quality === MISSING) {
    noRead(record, which, report);
    return null;
  }
  const number = readNumber(record, which, report);
  const time = cellOf(record, at + 1);
  const moment = readMoment(time);
  if (moment === null) report('nem/read-time', placeOf(record, at + 1), { time: shown(time), which });
  return number === null || moment === null ? null : { number, moment, quality: qualityName(quality) };
}
