import type { MeterReader, MeterSink, Stream } from '../stream.ts';
import { readChannel, type Channel } from './channel.ts';
import { awaitRanges, checkRanges, readDayQuality, takeRange } from './day-quality.ts';
import { dayValues, FIRST_VALUE, readValues, settle, type DayValues } from './day-values.ts';
import { nemReader } from './frame.ts';
import { readDay } from './moment.ts';
import { qualityIndex, VARIABLE } from './quality.ts';
import { cellOf, placeOf, reporter, shown, type NemRecord, type Report } from './record.ts';
import { keepStreams } from './streams.ts';

const MINUTES_OF_DAY = 1440;
const ACTUAL = qualityIndex('actual');

/** A day that was read. */
interface Day {
  readonly channel: Channel;
  readonly record: NemRecord;
  /** Minutes since 1970 in market time. */
  readonly start: number;
  readonly values: DayValues;
}

function handOn({ channel, record, start, values: day }: Day, areAllActual: boolean, sink: MeterSink): void {
  const { stream, minutes } = channel;
  const { places, values } = day;
  const qualities = areAllActual ? null : day.qualities;
  sink.intervals({ stream, start, minutes, places, values, qualities, line: record.line });
}

/** Days as records 300 and 400 tell them; one is held back while records 400 may follow. */
function dayKeeper(sink: MeterSink, report: Report) {
  const rooms = new Map([5, 15, 30].map((minutes) => [minutes, dayValues(MINUTES_OF_DAY / minutes)]));
  let held: Day | null = null;
  /** What the record 300 above was, for a record 400 that has no use for it; null says nothing. */
  let above: string | null = 'without a record 300 above it';

  const release = (): void => {
    if (held === null) return;
    const { record, values } = held;
    checkRanges(values, placeOf(record, FIRST_VALUE + values.count), report);
    settle(record, values, report);
    const areAllActual = values.qualities.every((quality) => quality === ACTUAL);
    handOn(held, areAllActual, sink);
    held = null;
  };

  const take = (channel: Channel, record: NemRecord): void => {
    above = null;
    const values = rooms.get(channel.minutes);
    const day = readDay(cellOf(record, 1));
    if (day === null) report('nem/day', placeOf(record, 1), { day: shown(cellOf(record, 1)) });
    if (values === undefined || day === null) return;
    const quality = readDayQuality(record, values.count, report);
    if (quality === null) return;
    readValues(record, values, channel.shift, report);
    const read = { channel, record, start: day * MINUTES_OF_DAY, values };
    if (quality === VARIABLE) {
      awaitRanges(values);
      held = read;
      return;
    }
    above = `below a record 300 of the quality ${shown(cellOf(record, FIRST_VALUE + values.count))}`;
    values.qualities.fill(quality);
    const areAllActual = quality === ACTUAL && !values.hasMissing;
    if (!areAllActual) settle(record, values, report);
    handOn(read, areAllActual, sink);
  };

  const range = (record: NemRecord): void => {
    if (held !== null) takeRange(record, held.values, report);
    else if (above !== null)
      report('nem/range-of-nothing', { line: record.line, column: 1 }, { after: above });
  };

  /** Leave a record 300 out, and the records 400 below it. */
  const skip = (): void => {
    above = null;
  };
  const reset = (): void => {
    release();
    above = 'without a record 300 above it';
  };
  return { release, reset, skip, take, range };
}

/**
 * A reader of NEM12, the format of interval values of the Australian Energy Market Operator.
 *
 * Times are market time, UTC+10 all year. A value is labelled by the end of its interval in the format and
 * handed on by its beginning: value 1 of a day begins at 00:00. One chunk for each record 300; its values are
 * whole numbers of 10^-places kWh, exactly as written, with as many places as the finest needs. A suffix E
 * is import, B export, any other `other`. What cannot be read is told by findings with line and column; all
 * else is handed on.
 *
 * Source: AEMO, Meter Data File Format Specification NEM12 & NEM13, v1.06 (2017); the order of cells and the
 * meaning of the qualities F, S, N and V are from memory.
 *
 * @example
 * const chunks = [];
 * const reader = nem12Reader({ intervals: (chunk) => chunks.push([chunk.start, chunk.places, chunk.values[1]]), register: () => {}, finding: () => {} });
 * reader.write('100,NEM12,197001030000,A,B\n200,N1,E1,1,E1,,M1,kWh,30,\n');
 * reader.write(`300,19700102,${'0.5,'.repeat(48)}A,,,,\n900\n`);
 * reader.end();
 * chunks //=> [[1440,1,5]]
 */
export function nem12Reader(sink: MeterSink): MeterReader {
  const report = reporter(sink.finding);
  const streams = keepStreams<Stream>();
  const days = dayKeeper(sink, report);
  let channel: Channel | null = null;
  let hasStream = false;

  const day = (record: NemRecord): void => {
    days.release();
    if (channel !== null) {
      days.take(channel, record);
      return;
    }
    days.skip();
    // Of days below a record 200 that could not be read nothing is said: the finding about that record does.
    if (!hasStream) report('nem/no-stream', { line: record.line, column: 1 });
  };
  const open = (record: NemRecord): void => {
    days.reset();
    channel = readChannel(record, streams, report);
    hasStream = true;
  };
  const header = (): void => {
    days.reset();
    channel = null;
    hasStream = false;
  };
  const records = {
    '100': header,
    '200': open,
    '300': day,
    '400': days.range,
    '500': days.reset,
    '900': days.reset,
  };
  return nemReader(sink, { version: 'NEM12', records, end: days.release });
}
