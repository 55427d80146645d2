import { readTypedDay, type ReadingRow } from '@unitbook/engine';
import type { Household } from './household.ts';
import { changeRow } from './edit-household.ts';
import {
  accountDay,
  inForceBefore,
  inOrder,
  laterAt,
  laterOf,
  METERS,
  metersOf,
  withLater,
  type LaterMeter,
  type Meter,
} from './later-meters.ts';
import { without } from './without.ts';

/** A meter that took the place of another, or a counter that began anew: the rows that tell it. */
export interface MeterChange {
  readonly meter: Meter;
  /** The row with the last reading of the old meter; null where it is missing. */
  readonly final: number | null;
  /** The row with the first reading of the new one. */
  readonly first: number | null;
  /** The new meter among the later ones of the account; null where it names none. */
  readonly later: number | null;
}

/** The changes that rows tell, from one place up to another. */
export function changesIn(household: Household, from: number, to: number): readonly MeterChange[] {
  return METERS.flatMap((meter) => {
    const found: { final: number | null; first: number | null }[] = [];
    for (let index = from; index < to; index += 1) {
      const row = household.readings[index];
      if (row?.event === undefined || !metersOf(row).includes(meter)) continue;
      const open = found.at(-1);
      if (row.event === 'final') found.push({ final: index, first: null });
      else if (open?.first === null) open.first = index;
      else found.push({ final: null, first: index });
    }
    return found.map(({ final, first }) => ({
      meter,
      final,
      first,
      later: first === null ? null : laterAt(household, meter, first),
    }));
  });
}

/** The change that an event row is a part of. */
export function changeOf(household: Household, index: number): MeterChange | undefined {
  return changesIn(household, 0, household.readings.length).find(
    ({ final, first }) => final === index || first === index,
  );
}

const NUMBERS = { grid: { import: '', export: '' }, generation: { generation: '' } } as const;

/** A last or first reading with nothing typed. */
export function blankEvent(meter: Meter, event: 'final' | 'first', date = ''): ReadingRow {
  return { date, event, ...NUMBERS[meter] };
}

/** Put rows in before a row. */
export function insertRows(household: Household, index: number, rows: readonly ReadingRow[]): Household {
  const readings = [...household.readings];
  readings.splice(index, 0, ...rows);
  return { ...household, readings };
}

/** A new meter as the one before it, but for its serial number and class: what is on its own nameplate. */
function likeBefore(household: Household, meter: Meter, index: number, from: string): LaterMeter | null {
  const place = inForceBefore(household, meter, index);
  const before = laterOf(household, meter)[place] ?? household.account.meters[meter];
  if (before === undefined) return null;
  const copied = without<Record<string, unknown>, string>({ ...before }, 'accuracyClass', 'later');
  return { ...copied, from, serial: '' } as unknown as LaterMeter;
}

/** Name the meter of a first reading in the account, as a copy of the one before it. */
export function nameNewMeter(household: Household, meter: Meter, index: number): Household {
  const from = accountDay(household.readings[index]?.date ?? '');
  const added = likeBefore(household, meter, index, from);
  if (added === null) return household;
  const later = [...laterOf(household, meter)];
  later.splice(inForceBefore(household, meter, index) + 1, 0, added);
  return withLater(household, meter, inOrder(later));
}

/**
 * The last or first reading of a meter whose date has still to be typed; null where there is none. Only one
 * at a time can be told apart from others: by its date it belongs to its meter.
 */
export function undatedEvent({ readings }: Household, meter: Meter): number | null {
  const at = readings.findIndex(
    (row) => row.event !== undefined && readTypedDay(row.date) === null && metersOf(row).includes(meter),
  );
  return at < 0 ? null : at;
}

/**
 * Add the change of a meter to the month that a row closes: the last reading of the old meter, the first of
 * the new one, and the new one in the account, for its own numbers to be typed over.
 *
 * @param index  of the row that closes the month
 */
export function addChange(household: Household, meter: Meter, index: number): Household {
  const rows = [blankEvent(meter, 'final'), blankEvent(meter, 'first')];
  return nameNewMeter(insertRows(household, index, rows), meter, index + 1);
}

/** Add that the generation counter began anew at 0: two readings, and no other meter. */
export function addReset(household: Household, index: number): Household {
  const rows = [blankEvent('generation', 'final'), { ...blankEvent('generation', 'first'), generation: '0' }];
  return insertRows(household, index, rows);
}

/** The rows of a change that have the date of one of them. */
function datedAlike(household: Household, index: number): readonly number[] {
  const date = household.readings[index]?.date;
  const { final = null, first = null } = changeOf(household, index) ?? {};
  return [final, first].filter(
    (place): place is number => place !== null && household.readings[place]?.date === date,
  );
}

/** Date a last or first reading: the other one of its change and the new meter go with it. */
export function dateEvent(household: Household, index: number, date: string): Household {
  const places = datedAlike(household, index);
  const from = accountDay(date);
  const dated = places.reduce((held, place) => changeRow(held, place, { date }), household);
  return METERS.reduce((held, meter) => {
    const renewed = places.flatMap((place) => laterAt(household, meter, place) ?? []);
    if (renewed.length === 0) return held;
    const later = laterOf(held, meter).map((one, at) => (renewed.includes(at) ? { ...one, from } : one));
    return withLater(held, meter, inOrder(later));
  }, dated);
}
