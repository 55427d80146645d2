import { parseDay, readTypedDay, type AccountDocument, type ReadingRow } from '@unitbook/engine';
import { changeAccount } from './edit-household.ts';
import type { Household } from './household.ts';
import { renameRate } from './registers.ts';

/** What the registers of the two-way meter count. */
export type Channel = 'import' | 'export';
const CHANNELS: readonly Channel[] = ['import', 'export'];

/** A rate of a register: its name on the display, and the time block it stands for. */
export type Rate = NonNullable<AccountDocument['meters']['grid']['import']['rates']>[number];

/** The registers of a two-way meter whose rates are set together. */
export interface RateRegisters {
  /** The place of the meter among the later ones; −1: the first meter. */
  readonly place: number;
  readonly channels: readonly Channel[];
}

/** The way to the two-way meter in the account. */
export function gridPath(place: number): readonly string[] {
  return place < 0 ? ['meters', 'grid'] : ['meters', 'grid', 'later', String(place)];
}

/** The two-way meter itself. */
function gridAt({ account }: Household, place: number): Pick<AccountDocument['meters']['grid'], Channel> {
  const { grid } = account.meters;
  return grid.later?.[place] ?? grid;
}

/** The registers of a meter: together where both have the same rates, else one by one. */
export function rateRegisters(household: Household, place: number): readonly RateRegisters[] {
  const meter = gridAt(household, place);
  const [taken, given] = CHANNELS.map((channel) => JSON.stringify(meter[channel].rates ?? []));
  if (taken === given) return [{ place, channels: CHANNELS }];
  return CHANNELS.map((channel) => ({ place, channels: [channel] }));
}

/** The rates of registers that are set together. */
export function ratesOf(
  household: Household,
  { place, channels: [channel = 'import'] }: RateRegisters,
): readonly Rate[] {
  return gridAt(household, place)[channel].rates ?? [];
}

/** Whether a row is read from a meter, by its day: rows without one go by the row they follow. */
function rowsOf({ account, readings }: Household, place: number): readonly boolean[] {
  const later = account.meters.grid.later ?? [];
  const placeOn = (day: number, isFinal: boolean): number =>
    later.findLastIndex(({ from }) => {
      const begins = parseDay(from) ?? Infinity;
      return isFinal ? begins < day : begins <= day;
    });
  let last = -Infinity;
  return readings.map((row) => {
    last = readTypedDay(row.date)?.day ?? last;
    return placeOn(last, row.event === 'final') === place;
  });
}

function mapOwnRows(
  household: Household,
  { place, channels }: RateRegisters,
  change: (row: ReadingRow, channel: Channel) => ReadingRow,
): Household {
  const isOwn = rowsOf(household, place);
  const readings = household.readings.map((row, index) =>
    isOwn[index] === true ? channels.reduce(change, row) : row,
  );
  return { ...household, readings };
}

function setRates(household: Household, registers: RateRegisters, rates: readonly Rate[]): Household {
  const path = gridPath(registers.place);
  const value = rates.length === 0 ? undefined : rates;
  return registers.channels.reduce(
    (held, channel) => changeAccount(held, [...path, channel, 'rates'], value),
    household,
  );
}

/** The first number that no rate has yet. */
function freeId(rates: readonly Rate[]): string {
  let number = 1;
  while (rates.some(({ id }) => id === String(number))) number += 1;
  return String(number);
}

/**
 * Set how many rates registers have. Rates that go take what was typed for them along.
 *
 * @param count  0: one register for all units
 */
export function setRateCount(household: Household, registers: RateRegisters, count: number): Household {
  const before = ratesOf(household, registers);
  const rates = before.slice(0, count);
  while (rates.length < count) rates.push({ id: freeId(rates) });
  const gone = before.slice(count);
  const cleared = mapOwnRows(household, registers, (row, channel) =>
    gone.reduce((held, { id }) => renameRate(held, channel, id, null), row),
  );
  return setRates(cleared, registers, rates);
}

/** Whether a text can name a rate that has none of the names of the others. */
export function canName(household: Household, registers: RateRegisters, at: number, text: string): boolean {
  const others = ratesOf(household, registers).filter((_, index) => index !== at);
  return /^[A-Za-z0-9]{1,12}$/.test(text) && others.every(({ id }) => id !== text);
}

/** Call a rate by another name, in the account and in what was typed for it. */
export function nameRate(household: Household, registers: RateRegisters, at: number, id: string): Household {
  const rates = ratesOf(household, registers);
  const before = rates[at];
  if (before === undefined) return household;
  const renamed = mapOwnRows(household, registers, (row, channel) => renameRate(row, channel, before.id, id));
  return setRates(
    renamed,
    registers,
    rates.map((rate, index) => (index === at ? { ...rate, id } : rate)),
  );
}

/** Say which time block a rate stands for; '' where it is not known. */
export function setBlock(
  household: Household,
  registers: RateRegisters,
  at: number,
  block: string,
): Household {
  const rates = ratesOf(household, registers).map((rate, index) => {
    if (index !== at) return rate;
    return block === '' ? { id: rate.id } : { id: rate.id, block };
  });
  return setRates(household, registers, rates);
}
