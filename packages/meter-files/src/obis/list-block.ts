import { dayText, type DayNumber, type TypedDay } from '@unitbook/engine';
import { emptyReadout, type Readout } from './readout.ts';
import type { Registers } from './registers.ts';
import { named, shown, type Place, type Teller } from './teller.ts';

/** Who says on which day, or at what time, a block was read. */
type Source = 'line' | 'clock' | 'before';

interface Told<Value> {
  readonly value: Value;
  readonly source: Source;
}

/** Registers of one day and one meter. */
interface Block {
  readonly readout: Readout;
  day: Told<DayNumber> | null;
  minute: Told<number> | null;
  /** The serial numbers by the rank of their code: the lower, the better. */
  readonly serials: Map<number, string>;
  /** That of the block before, until the block has its own. */
  meterBefore: string;
}

/** Puts registers and what is said of them together: which day, which time, which meter. */
export interface Blocks {
  /** The registers of now. */
  readonly readout: () => Readout;
  /** A line with a day, and perhaps a time. */
  readonly dayLine: (day: TypedDay, minute: number | null, text: string, place: Place) => void;
  /** The date of the meter's clock. */
  readonly clockDay: (day: TypedDay, text: string, place: Place) => void;
  /** The time of the meter's clock. */
  readonly clockMinute: (minute: number) => void;
  /** A serial number, and the rank of the code it came with. */
  readonly meter: (name: string, rank: number) => void;
  /** Hand on what is held. */
  readonly close: () => void;
}

const emptyBlock = (): Block => ({
  readout: emptyReadout(),
  day: null,
  minute: null,
  serials: new Map(),
  meterBefore: '',
});

/** The serial number by the code that tells most. */
function meterOf({ serials, meterBefore }: Block): string {
  return serials.get(Math.min(...serials.keys())) ?? meterBefore;
}

const asBefore = <Value>(told: Told<Value> | null): Told<Value> | null =>
  told === null ? null : { value: told.value, source: 'before' };

function askWhichDay({ day, other }: TypedDay, text: string, place: Place, teller: Teller): void {
  if (other === null) return;
  const values = { value: shown(text), read: dayText(day), other: dayText(other) };
  teller.tell('obis/day-or-month', place, values);
}

/** Hand on the registers of a block, or ask for the day that they are of. */
function closeBlock(block: Block, day: DayNumber | null, registers: Registers, teller: Teller): void {
  const [first] = block.readout.entries.values();
  if (first === undefined) return;
  if (day === null) {
    const names = [...block.readout.entries.values()].map(({ register }) => register);
    teller.tell('obis/no-day', first, { registers: named(names) });
    return;
  }
  const minute = block.minute?.value ?? null;
  registers.handOn(block.readout, { meter: meterOf(block), day, minute, time: null });
}

/**
 * Put the lines of a list together to blocks.
 *
 * A day line begins a block. So do a second date, time or serial number of a meter once registers stand
 * under the first: readouts one after the other each bring their own. What a readout says behind its
 * registers counts for them where nothing was said before.
 *
 * @param day  of the registers that the list gives no day for; null to ask
 */
export function makeBlocks(registers: Registers, teller: Teller, day: DayNumber | null): Blocks {
  let block = emptyBlock();
  const hasRegisters = (): boolean => block.readout.entries.size > 0;
  const close = (): void => {
    closeBlock(block, block.day?.value ?? day, registers, teller);
    block = emptyBlock();
  };
  /** Begin a block that takes over what is not said anew. */
  const next = (kept: { readonly day: boolean; readonly minute: boolean }): void => {
    const { day: lastDay, minute } = block;
    const meterBefore = meterOf(block);
    close();
    block.day = kept.day ? asBefore(lastDay) : null;
    block.minute = kept.minute ? asBefore(minute) : null;
    block.meterBefore = meterBefore;
  };
  /** Whether the clock of the meter and the day line say the same; the day line counts. */
  const agree = (line: DayNumber, clock: DayNumber, place: Place): void => {
    if (line !== clock) teller.tell('obis/two-days', place, { day: dayText(line), clock: dayText(clock) });
  };
  return {
    readout: () => block.readout,
    dayLine: (typed, minute, text, place) => {
      askWhichDay(typed, text, place, teller);
      if (hasRegisters()) next({ day: false, minute: false });
      if (block.day?.source === 'clock') agree(typed.day, block.day.value, place);
      block.day = { value: typed.day, source: 'line' };
      if (minute !== null) block.minute = { value: minute, source: 'line' };
      else if (block.minute?.source === 'line') block.minute = null;
    },
    clockDay: (typed, text, place) => {
      if (block.day?.source === 'line') {
        agree(block.day.value, typed.day, place);
        return;
      }
      askWhichDay(typed, text, place, teller);
      if (hasRegisters() && block.day?.source === 'clock') next({ day: false, minute: false });
      block.day = { value: typed.day, source: 'clock' };
    },
    clockMinute: (minute) => {
      if (hasRegisters() && block.minute?.source === 'clock') next({ day: true, minute: false });
      if (block.minute?.source !== 'line') block.minute = { value: minute, source: 'clock' };
    },
    meter: (name, rank) => {
      const known = block.serials.get(rank);
      if (hasRegisters() && known !== undefined && known !== name) next({ day: true, minute: true });
      block.serials.set(rank, name);
    },
    close,
  };
}
