import type { ReadingRow } from '@unitbook/engine';
import type { Household } from './household.ts';
import { laterAt, laterOf, METERS, withLater, type LaterMeter, type Meter } from './later-meters.ts';

/** What was taken out of a household, and where it stood: enough to put it back. */
export interface TakenOut {
  readonly rows: readonly (readonly [number, ReadingRow])[];
  readonly later: readonly (readonly [Meter, number, LaterMeter])[];
}

/**
 * Take rows out, and with a first reading the meter that it is of.
 *
 * @param places  of the rows, in order
 */
export function takeOut(
  household: Household,
  places: readonly number[],
): { readonly household: Household; readonly taken: TakenOut } {
  const rows = places.flatMap((place) => {
    const row = household.readings[place];
    return row === undefined ? [] : [[place, row] as const];
  });
  const later = METERS.flatMap((meter) =>
    places.flatMap((index) => {
      const at = laterAt(household, meter, index);
      const one = at === null ? undefined : laterOf(household, meter)[at];
      return at === null || one === undefined ? [] : [[meter, at, one] as const];
    }),
  );
  const readings = household.readings.filter((_, index) => !places.includes(index));
  const left = METERS.reduce<Household>(
    (held, meter) => {
      const gone = later.filter(([of]) => of === meter).map(([, at]) => at);
      if (gone.length === 0) return held;
      return withLater(
        held,
        meter,
        laterOf(held, meter).filter((_, at) => !gone.includes(at)),
      );
    },
    { ...household, readings },
  );
  return { household: left, taken: { rows, later } };
}

/** A list with items in their old places. */
function filled<Item>(list: readonly Item[], items: readonly (readonly [number, Item])[]): Item[] {
  const held = [...list];
  for (const [place, item] of items) held.splice(place, 0, item);
  return held;
}

/** Put back what was taken out, where it stood. */
export function putIn(household: Household, { rows, later }: TakenOut): Household {
  const whole = { ...household, readings: filled(household.readings, rows) };
  return METERS.reduce<Household>((held, meter) => {
    const own = later.flatMap(([of, at, one]) => (of === meter ? [[at, one] as const] : []));
    return own.length === 0 ? held : withLater(held, meter, filled(laterOf(held, meter), own));
  }, whole);
}
