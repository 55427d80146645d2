import type { Household } from './household.ts';

/**
 * What stood in the place of each reading, of the account or of all readings before a fix. Nothing is
 * changed in place, so whatever is typed afterwards makes a new object, and the way back is gone by itself.
 */
export type Fixed = WeakMap<object, object>;

/** Remember what a fix takes the place of. */
export function noteFix(fixed: Fixed, before: Household, after: Household): void {
  const note = (now: object, held: object | undefined): void => {
    if (held !== undefined && now !== held) fixed.set(now, held);
  };
  note(after.account, before.account);
  if (after.readings.every((row) => before.readings.includes(row))) note(after.readings, before.readings);
  else
    after.readings.forEach((row, index) => {
      note(row, before.readings[index]);
    });
}

/** Put back what a fix took the place of: a reading, the order of all, or the account. */
export function putBack(household: Household, now: object, before: object): Household {
  const put = <Part extends object>(part: Part): Part => (part === now ? (before as Part) : part);
  const readings = put(household.readings);
  return {
    ...household,
    account: put(household.account),
    readings: readings === household.readings ? readings.map(put) : readings,
  };
}
