import { readTypedDay, type ReadingRow } from '@unitbook/engine';
import { changeAccount, changeRegisters } from '../household/edit-household.ts';
import { isBlankRow, type Household } from '../household/household.ts';
import { registerTexts, type Offer, type OfferFit } from './fit-book.ts';

/** Something of the account that is to be set with the readings. */
export interface Setting {
  readonly path: readonly string[];
  readonly value: string;
}

/** Readings that were taken over, and the way back. */
export interface TakenOver {
  readonly before: Household;
  readonly after: Household;
  /** What stood in the place of each reading that was put in or changed; null for nothing. */
  readonly changes: ReadonlyMap<ReadingRow, ReadingRow | null>;
  /** The place of the last of them. */
  readonly last: number;
}

/** Registers of a reading that were estimated, with those of another. */
function withEstimates(row: ReadingRow, { estimated }: ReadingRow): ReadingRow {
  if (estimated === undefined || row.status === 'estimated') return row;
  return { ...row, estimated: [...new Set([...(row.estimated ?? []), ...estimated])] };
}

/** Put the numbers of a reading into the one that the book has of the day. */
function changed(household: Household, { offer, at, blank, differences }: OfferFit): Household {
  if (at === null) return household;
  const offered = registerTexts(offer.row);
  const keys = [...blank, ...differences.map(({ key }) => key)];
  const texts = Object.fromEntries(keys.map((key) => [key, offered.get(key) ?? '']));
  const typed = changeRegisters(household, at, texts);
  return {
    ...typed,
    readings: typed.readings.map((row, index) => (index === at ? withEstimates(row, offer.row) : row)),
  };
}

/** Put a reading behind the last one that is not later; without a day rows stay where they are. */
function inserted(readings: readonly ReadingRow[], { day, row }: Offer): readonly ReadingRow[] {
  const at =
    readings.findLastIndex(({ date }) => {
      const own = readTypedDay(date)?.day;
      return own !== undefined && own <= day;
    }) + 1;
  return [...readings.slice(0, at), row, ...readings.slice(at)];
}

/**
 * Take readings over into a book: those that are not there yet in order of time, and numbers into readings
 * that are there. Rows in which nothing was typed make room.
 *
 * @param fits      how the readings go with the book; one that differs takes the place of what was typed
 * @param settings  of the account, set at the same time
 */
export function takeOver(
  household: Household,
  fits: readonly OfferFit[],
  settings: readonly Setting[],
): TakenOver {
  const filled = fits.reduce(changed, household);
  const added = fits.filter(({ at }) => at === null);
  const typed = filled.readings.filter((row) => !isBlankRow(row));
  const readings = added.reduce<readonly ReadingRow[]>((rows, { offer }) => inserted(rows, offer), typed);
  const after = settings.reduce((held, { path, value }) => changeAccount(held, path, value), {
    ...filled,
    readings,
  });
  const changes = new Map(
    fits
      .filter(({ fit }) => fit !== 'same')
      .map(({ offer, at }) => {
        if (at === null) return [offer.row, null] as const;
        return [filled.readings[at] ?? offer.row, household.readings[at] ?? null] as const;
      }),
  );
  return { before: household, after, changes, last: readings.findLastIndex((row) => changes.has(row)) };
}

/**
 * Put back what a take-over changed. What was typed since then stays: a reading that was changed after it was
 * taken over is the reader's own by now.
 */
export function putBackTaken(household: Household, { before, after, changes }: TakenOver): Household {
  if (household.readings === after.readings && household.account === after.account) return before;
  const readings = household.readings.flatMap((row) => {
    const old = changes.get(row);
    return old === undefined ? row : (old ?? []);
  });
  const account = household.account === after.account ? before.account : household.account;
  return { ...household, account, readings };
}

/** Whether anything of a take-over can still be put back. */
export function canPutBack({ readings }: Household, { changes }: TakenOver): boolean {
  return readings.some((row) => changes.has(row));
}
