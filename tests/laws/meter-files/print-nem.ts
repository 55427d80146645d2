import { dayText, wholeToDecimal, type DayNumber } from '@unitbook/engine';
import { kilowattHours } from '../../../packages/meter-files/src/nem/register-text.ts';
import {
  VALUE_QUALITIES,
  type IntervalChunk,
  type RegisterValue,
  type Stream,
} from '../../../packages/meter-files/src/stream.ts';

/** Flags by the order of VALUE_QUALITIES; the format has none for a value that was edited. */
const FLAGS = ['A', 'E52', 'S14', '', 'N'] as const;

const PLACES: Readonly<Record<string, number>> = { Wh: 3, kWh: 0, MWh: -3 };

const shiftOf = ({ quantity, unit }: Stream): number => (quantity === 'other' ? 0 : (PLACES[unit] ?? 0));

const dayOf = (day: number): string => dayText(day as DayNumber).replaceAll('-', '');

/** How a value is written: a whole number of 10^-places, with any number of zeros more or less. */
export type WriteNumber = (whole: number, places: number) => string;

/** The quality of a day, and records 400 where it varies. */
function qualitiesOf({ qualities, values }: IntervalChunk): { flag: string; ranges: readonly string[] } {
  const flags = Array.from(values, (_, at) => FLAGS[qualities?.[at] ?? 0] ?? '');
  const starts = [...flags.keys()].filter((at) => at === 0 || flags[at] !== flags[at - 1]);
  if (starts.length === 1) return { flag: flags[0] ?? '', ranges: [] };
  const ranges = starts.map(
    (from, order) => `400,${from + 1},${starts[order + 1] ?? flags.length},${flags[from] ?? ''},,`,
  );
  return { flag: 'V', ranges };
}

function dayLines(chunk: IntervalChunk, write: WriteNumber): readonly string[] {
  const { start, places, values, stream } = chunk;
  const texts = Array.from(values, (value) =>
    Number.isNaN(value) ? '' : write(value, places - shiftOf(stream)),
  );
  const { flag, ranges } = qualitiesOf(chunk);
  return [`300,${dayOf(start / 1440)},${texts.join(',')},${flag},,,,`, ...ranges];
}

const streamLine = ({ stream, minutes }: IntervalChunk): string =>
  `200,${stream.point},${stream.register},1,${stream.register},,${stream.meter},${stream.unit},${minutes},`;

/**
 * Print days of intervals as a NEM12 file that reads back as the same.
 *
 * @param chunks  a whole day each
 * @param write   how a value is written; left out, with all its places
 */
export function printNem12(chunks: readonly IntervalChunk[], write: WriteNumber = wholeToDecimal): string {
  const lines = ['100,NEM12,202401010900,S,R'];
  let above = '';
  for (const chunk of chunks) {
    const line = streamLine(chunk);
    if (line !== above) lines.push(line);
    above = line;
    lines.push(...dayLines(chunk, write));
  }
  return [...lines, '900', ''].join('\n');
}

function readCells({ day, minute, value, quality, stream }: RegisterValue): string {
  const clock =
    minute === null ? '' : wholeToDecimal(Math.trunc(minute / 60) * 100 + (minute % 60), 0).padStart(4, '0');
  const text = kilowattHours(value, -shiftOf(stream));
  const flag = FLAGS[VALUE_QUALITIES.indexOf(quality)] ?? '';
  return `${text},${dayOf(day)}${clock === '' ? '' : `${clock}00`},${flag},,`;
}

/**
 * Print reads of registers as a NEM13 file that reads back as the same.
 *
 * @param reads  the previous and the current read of one register, then those of the next record
 */
export function printNem13(reads: readonly RegisterValue[]): string {
  const lines = ['100,NEM13,203001010900,S,R'];
  for (let at = 0; at + 1 < reads.length; at += 2) {
    const [previous, current] = [reads[at], reads[at + 1]];
    if (previous === undefined || current === undefined) break;
    const { point, meter, register, quantity, unit } = previous.stream;
    const direction = quantity === 'export' ? 'I' : 'E';
    lines.push(
      `250,${point},${register},1,${register},,${meter},${direction},` +
        `${readCells(previous)},${readCells(current)},,${unit},,,`,
    );
  }
  return [...lines, '900', ''].join('\n');
}
