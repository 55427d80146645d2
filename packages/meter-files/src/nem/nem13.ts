import type { MeteredQuantity, MeterReader, MeterSink, Stream } from '../stream.ts';
import { nemReader } from './frame.ts';
import { readMoment, type Moment } from './moment.ts';
import { cellOf, placeOf, reporter, shown, type NemRecord, type Report } from './record.ts';
import { areInOrder, checkChain, checkQuantity, checkTime } from './register-checks.ts';
import { CELL, readRegister, type RegisterRead } from './register-read.ts';
import { kilowattHours } from './register-text.ts';
import { keepStreams, MOST_STREAMS_TEXT, type Streams } from './streams.ts';
import { readUnit, type NemUnit } from './unit.ts';

/** A register of the file, and its current read in the record that was read last. */
interface Register {
  readonly stream: Stream;
  last: RegisterRead | null;
}

/**
 * What a register counts, by its direction (from memory): the market's words are those of the grid, E for
 * export from the grid to the customer, which the customer imports, and I the other way.
 */
const DIRECTIONS: ReadonlyMap<string, MeteredQuantity> = new Map([
  ['E', 'import'],
  ['I', 'export'],
]);

function quantityOf(record: NemRecord, unit: NemUnit, report: Report): MeteredQuantity {
  const direction = cellOf(record, CELL.direction);
  const quantity = DIRECTIONS.get(direction.toUpperCase());
  if (quantity === undefined)
    report('nem/direction', placeOf(record, CELL.direction), { direction: shown(direction) });
  if (unit.kind === 'unknown')
    report('nem/unit', placeOf(record, CELL.unit), { unit: shown(cellOf(record, CELL.unit)) });
  return unit.kind === 'energy' ? (quantity ?? 'other') : 'other';
}

/** The register of a record 250: two ids of registers at one suffix are two registers. */
function registerOf(
  record: NemRecord,
  quantity: MeteredQuantity,
  registers: Streams<Register>,
): Register | null {
  const id = cellOf(record, CELL.registerId);
  const suffix = cellOf(record, CELL.suffix);
  const fields: Stream = {
    point: cellOf(record, CELL.point),
    meter: cellOf(record, CELL.meter),
    register: suffix === '' ? id : suffix,
    quantity,
    rate: null,
    unit: cellOf(record, CELL.unit),
  };
  return registers.of(fields, id, (stream) => ({ stream, last: null }));
}

/** Hands on the reads of a record. */
function registerTeller(record: NemRecord, { stream }: Register, shift: number, sink: MeterSink) {
  return ({ number, moment: { day, minute }, quality }: RegisterRead): void => {
    const value = kilowattHours(number.text, shift);
    sink.register({ stream, day, minute, value, quality, line: record.line });
  };
}

function hasAllCells(record: NemRecord, report: Report): boolean {
  if (record.cells.length > CELL.unit) return true;
  const values = { count: String(record.cells.length), least: String(CELL.unit + 1) };
  report('nem/too-few-cells', { line: record.line, column: 1 }, values);
  return false;
}

function readRecord(record: NemRecord, made: Moment | null, registers: Streams<Register>, sink: MeterSink) {
  const report = reporter(sink.finding);
  if (!hasAllCells(record, report)) return;
  const unit = readUnit(cellOf(record, CELL.unit));
  const quantity = quantityOf(record, unit, report);
  const register = registerOf(record, quantity, registers);
  if (register === null) {
    report('nem/too-many-streams', placeOf(record, CELL.suffix), { most: MOST_STREAMS_TEXT });
    return;
  }
  const previous = readRegister(record, 'previous', report);
  const current = readRegister(record, 'current', report);
  const both = previous !== null && current !== null ? ([previous, current] as const) : null;
  if (both !== null && !areInOrder(record, both, report)) return;
  if (previous !== null) checkChain(record, previous, register.last, report);
  if (both !== null) checkQuantity(record, both, report);
  if (current !== null) checkTime(record, current, made, report);
  const tell = registerTeller(record, register, quantity === 'other' ? 0 : unit.shift, sink);
  for (const read of [previous, current]) if (read !== null) tell(read);
  register.last = current;
}

/**
 * A reader of NEM13, the format of register reads of the Australian Energy Market Operator.
 *
 * Each record 250 gives two reads of a register, the previous and the current, in market time, UTC+10 all
 * year. Their digits are kept as written; only the point is moved where the unit is Wh or MWh. The printed
 * quantity is compared with the two reads and not handed on. What cannot be read is told by findings with
 * line and column; all else is handed on.
 *
 * Source: AEMO, Meter Data File Format Specification NEM12 & NEM13, v1.06 (2017); the order of cells, the
 * directions and the meaning of the qualities F, S and N are from memory.
 *
 * @example
 * const reads = [];
 * const reader = nem13Reader({ intervals: () => {}, register: (read) => reads.push([read.day, read.minute, read.value]), finding: () => {} });
 * reader.write('100,NEM13,197002010000,A,B\n250,N1,11,1,11,,M1,E,0007.5,19700102093000,A,,,0010.0,19700131,A,,,2.5,kWh,,,\n900\n');
 * reader.end();
 * reads //=> [[1,570,"0007.5"],[30,null,"0010.0"]]
 */
export function nem13Reader(sink: MeterSink): MeterReader {
  const report = reporter(sink.finding);
  const registers = keepStreams<Register>();
  let made: Moment | null = null;

  const header = (record: NemRecord): void => {
    const time = cellOf(record, 2);
    made = readMoment(time);
    if (made === null) report('nem/header-time', placeOf(record, 2), { time: shown(time) });
  };
  const nothing = (): void => undefined;
  const records = {
    '100': header,
    '250': (record: NemRecord): void => {
      readRecord(record, made, registers, sink);
    },
    '550': nothing,
    '900': nothing,
  };
  return nemReader(sink, { version: 'NEM13', records, end: nothing });
}
