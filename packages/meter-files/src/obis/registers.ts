import type { DayNumber } from '@unitbook/engine';
import type { MeterSink, Stream } from '../stream.ts';
import { checkTotals, MOST_REGISTERS, type Entry, type Readout } from './readout.ts';
import type { Place, Teller } from './teller.ts';
import { compareDecimals } from './units.ts';

/** When and on which meter a readout was made. */
export interface Moment {
  readonly meter: string;
  readonly day: DayNumber;
  readonly minute: number | null;
  /** Of a telegram: seconds on a clock that is never changed, as text, and where the time stands. */
  readonly time: { readonly second: number; readonly text: string; readonly place: Place } | null;
}

interface Kept {
  readonly stream: Stream;
  value: string;
}

interface KeptMeter {
  time: { readonly second: number; readonly text: string } | null;
  readonly registers: Map<string, Kept>;
}

/** Hands on the registers of readouts one after the other. */
export interface Registers {
  readonly handOn: (readout: Readout, moment: Moment) => void;
  /** How many values were handed on. */
  readonly count: () => number;
}

function makeStream({ register, quantity, rate, unit }: Entry, meter: string): Stream {
  return { point: '', meter, register, quantity, rate, unit };
}

/** What is to be said of a register when it is met for the first time. */
function tellFirst(entry: Entry, teller: Teller): void {
  if (entry.other !== null)
    teller.tell('obis/other-energy', entry, { register: entry.register, what: entry.other });
  if (entry.rate !== null) teller.tellOnce('obis/rates-numbered', entry, { register: entry.register });
}

/** A total counts up; the net register does not, and the energy of an interval begins anew. */
const countsUp = (entry: Entry): boolean => entry.group !== '' && entry.quantity !== 'net';

/** Ask where time went back; whether it did. */
function checkTime(meter: KeptMeter, { time }: Moment, teller: Teller): boolean {
  const before = meter.time;
  if (time === null) return false;
  meter.time = time;
  if (before === null || time.second >= before.second) return false;
  teller.tell('obis/time-goes-back', time.place, { time: time.text, before: before.text });
  return true;
}

/**
 * Make the place where readouts are put together: one stream for each register of each meter, in the whole file.
 *
 * What it keeps grows with the registers, of which it takes MOST_REGISTERS, and not with the readouts.
 */
export function makeRegisters(sink: MeterSink, teller: Teller): Registers {
  const meters = new Map<string, KeptMeter>();
  let known = 0;
  let count = 0;
  const meterOf = (name: string): KeptMeter => {
    const meter = meters.get(name) ?? { time: null, registers: new Map<string, Kept>() };
    // A meter without a register is not kept: their number is bounded by that of the registers.
    if (known < MOST_REGISTERS) meters.set(name, meter);
    return meter;
  };
  const keptOf = (entry: Entry, name: string, meter: KeptMeter): Kept | null => {
    const kept = meter.registers.get(entry.key);
    if (kept !== undefined) return kept;
    if (known >= MOST_REGISTERS) {
      teller.tellOnce('obis/too-many-registers', entry, { most: String(MOST_REGISTERS) });
      return null;
    }
    known += 1;
    tellFirst(entry, teller);
    const made = { stream: makeStream(entry, name), value: entry.value };
    meter.registers.set(entry.key, made);
    return made;
  };
  const handOne = (entry: Entry, kept: Kept, moment: Moment, isInOrder: boolean): void => {
    const { value, register } = entry;
    if (isInOrder && countsUp(entry) && compareDecimals(value, kept.value) < 0)
      teller.tell('obis/goes-down', entry, { value, register, before: kept.value });
    kept.value = value;
    const { day, minute } = moment;
    sink.register({ stream: kept.stream, day, minute, value, quality: 'actual', line: entry.line });
    count += 1;
  };
  const handOn: Registers['handOn'] = (readout, moment) => {
    checkTotals(readout, teller);
    const entries = [...readout.entries.values()].filter(({ key }) => !readout.refused.has(key));
    if (entries.length === 0) return;
    const meter = meterOf(moment.meter);
    // Out of order, registers go down of themselves: one question is enough.
    const isInOrder = !checkTime(meter, moment, teller) && moment.time !== null;
    for (const entry of entries) {
      const kept = keptOf(entry, moment.meter, meter);
      if (kept !== null) handOne(entry, kept, moment, isInOrder);
    }
  };
  return { handOn, count: () => count };
}
