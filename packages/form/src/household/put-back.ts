import type { Household } from './household.ts';

/**
 * What stood in the place of each reading, of the account, of all readings or of the whole household before a
 * fix. Nothing is changed in place, so whatever is typed afterwards makes a new object, and the way back is
 * gone by itself.
 */
export type Fixed = WeakMap<object, object>;

/** Remember what a fix takes the place of. */
export function noteFix(fixed: Fixed, before: Household, after: Household): void {
  const note = (now: object, held: object | undefined): void => {
    if (held !== undefined && now !== held) fixed.set(now, held);
  };
  const isLonger = after.readings.length !== before.readings.length;
  const isBoth = after.account !== before.account && after.readings !== before.readings;
  if (isLonger || isBoth) {
    note(after, before);
    return;
  }
  note(after.account, before.account);
  if (after.readings.every((row) => before.readings.includes(row))) note(after.readings, before.readings);
  else
    after.readings.forEach((row, index) => {
      note(row, before.readings[index]);
    });
}

/** Put back what a fix took the place of: a reading, the order of all, the account, or the whole. */
export function putBack(household: Household, now: object, before: object): Household {
  if (now === household) return before as Household;
  const put = <Part extends object>(part: Part): Part => (part === now ? (before as Part) : part);
  const readings = put(household.readings);
  return {
    ...household,
    account: put(household.account),
    readings: readings === household.readings ? readings.map(put) : readings,
  };
}
