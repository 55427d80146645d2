import { wholeToDecimal } from '@unitbook/engine';
import type { MeteredQuantity } from '../stream.ts';
import { obisKey, type ObisCode } from './code.ts';
import { obisMeaning } from './meaning.ts';
import { named, type Place, type Teller } from './teller.ts';
import { compareDecimals, placesOf, scaled, shiftDecimal, type EnergyUnit } from './units.ts';

/** What a register showed, and what that register is. */
export interface Entry {
  /** One text for all ways to write the register's code. */
  readonly key: string;
  /** The code as it stands. */
  readonly register: string;
  readonly quantity: MeteredQuantity;
  readonly rate: string | null;
  /** What is counted, where that is neither import nor export nor net; else null. */
  readonly other: string | null;
  /** The registers that belong together as total and rates: medium, channel and group C; '' for none. */
  readonly group: string;
  readonly unit: string;
  /** Decimal text in kWh. */
  readonly value: string;
  /** The last digit of the display counts 10^-places kWh; below 0 where it counts tens. */
  readonly places: number;
  readonly line: number;
  readonly column: number;
}

/** The most different registers of one file. */
export const MOST_REGISTERS = 1_000;

/** The registers that were read at one moment. */
export interface Readout {
  readonly entries: Map<string, Entry>;
  /** Registers that stand there twice and differ: neither value is used. */
  readonly refused: Set<string>;
  /** Groups of which a register could not be read: their total says nothing of their rates. */
  readonly spoilt: Set<string>;
}

/** A readout with nothing in it. */
export const emptyReadout = (): Readout => ({
  entries: new Map(),
  refused: new Set(),
  spoilt: new Set(),
});

/** The registers that a code belongs to as total or rate; '' for those that are not counted from the beginning. */
export function groupOf(code: ObisCode): string {
  const key = obisKey(code);
  return code.d === 8 ? key.slice(0, key.indexOf('.')) : '';
}

/** The register that a code names, and its value in the file's own unit, as an entry in kWh. */
export function entryOf(
  code: ObisCode,
  register: string,
  { text, unit, place }: { readonly text: string; readonly unit: EnergyUnit; readonly place: Place },
): Entry {
  const { quantity, rate, other } = obisMeaning(code);
  const key = obisKey(code);
  return {
    key,
    register,
    quantity,
    rate,
    other,
    group: groupOf(code),
    unit: unit.unit,
    value: shiftDecimal(text, unit.shift),
    places: placesOf(text) - unit.shift,
    ...place,
  };
}

/** Put a register into a readout; a second value for the same register has to be the same number. */
export function addEntry(readout: Readout, entry: Entry, kind: 'telegram' | 'list', teller: Teller): void {
  const { entries, refused } = readout;
  const first = entries.get(entry.key);
  if (first === undefined) {
    if (entries.size < MOST_REGISTERS) entries.set(entry.key, entry);
    else teller.tellOnce('obis/too-many-registers', entry, { most: String(MOST_REGISTERS) });
    return;
  }
  if (compareDecimals(first.value, entry.value) === 0) return;
  refused.add(entry.key);
  readout.spoilt.add(entry.group);
  const { value, register } = entry;
  const values = { value, register, kind, line: String(first.line), first: first.value };
  teller.tell('obis/register-twice', entry, values);
}

function checkGroup(total: Entry, rates: readonly Entry[], teller: Teller): void {
  const all = [total, ...rates];
  const places = Math.max(0, ...all.map((one) => one.places));
  const sum = rates.reduce((before, { value }) => before + scaled(value, places), 0n);
  const difference = scaled(total.value, places) - sum;
  // A display leaves out the digits behind its last. Left out of n rates, these are worth less than n in
  // the last digit; rounded instead, the total can also be one below.
  const last = 10n ** BigInt(places - Math.min(...all.map((one) => one.places)));
  if (difference >= -last && difference < last * BigInt(rates.length)) return;
  teller.tell('obis/rates-and-total', total, {
    register: total.register,
    total: total.value,
    rates: named(rates.map(({ register }) => register)),
    sum: wholeToDecimal(sum, places),
    difference: wholeToDecimal(difference < 0n ? -difference : difference, places),
    side: difference < 0n ? 'less' : 'more',
  });
}

/** Every total has to be the sum of its rates, where all that stand there could be read. */
export function checkTotals({ entries, spoilt }: Readout, teller: Teller): void {
  const groups = new Map<string, Entry[]>();
  for (const entry of entries.values()) {
    const members = groups.get(entry.group) ?? [];
    members.push(entry);
    groups.set(entry.group, members);
  }
  for (const [group, members] of groups) {
    if (group === '' || spoilt.has(group)) continue;
    const total = members.find(({ rate }) => rate === null);
    const rates = members.filter(({ rate }) => rate !== null);
    if (total !== undefined && rates.length > 0) checkGroup(total, rates, teller);
  }
}
