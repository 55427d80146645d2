import { readTypedDay, type ReadingRow } from '@unitbook/engine';
import { BLANK_ROW, type Household } from './household.ts';

/** A field of a reading that somebody types in or chooses. */
export type RowField = 'date' | 'import' | 'export' | 'generation' | 'status' | 'printedDays';

/** New texts for some fields of a reading. */
export type RowChange = Partial<Pick<ReadingRow, RowField>>;

function padded(rows: readonly ReadingRow[], length: number): ReadingRow[] {
  return [...rows, ...Array.from({ length: Math.max(0, length - rows.length) }, () => BLANK_ROW)];
}

/** An answer holds for the text it was given about: typing anew takes it back. */
function stillConfirmed(row: ReadingRow, change: RowChange): Pick<ReadingRow, 'confirmed'> {
  if (row.confirmed === undefined) return {};
  const changed = Object.keys(change);
  return { confirmed: row.confirmed.filter((key) => !changed.some((field) => key.endsWith(`:${field}`))) };
}

/**
 * Change what is typed in one reading; rows that are not there yet are added blank.
 *
 * @param index  of the row, from 0
 */
export function changeRow(household: Household, index: number, change: RowChange): Household {
  const readings = padded(household.readings, index + 1);
  const row = readings[index] ?? BLANK_ROW;
  readings[index] = { ...row, ...change, ...stillConfirmed(row, change) };
  return { ...household, readings };
}

/** Answer a question about a reading with "it is right", or take the answer back. */
export function answerRow(household: Household, index: number, key: string): Household {
  const readings = padded(household.readings, index + 1);
  const row = readings[index] ?? BLANK_ROW;
  const confirmed = row.confirmed ?? [];
  const next = confirmed.includes(key) ? confirmed.filter((known) => known !== key) : [...confirmed, key];
  readings[index] = { ...row, confirmed: next };
  return { ...household, readings };
}

/** Answer a question about the account with "it is right", or take the answer back. */
export function answerAccount(household: Household, key: string): Household {
  const confirmed = household.confirmed ?? [];
  const next = confirmed.includes(key) ? confirmed.filter((known) => known !== key) : [...confirmed, key];
  return { ...household, confirmed: next };
}

/** Put a row in: a blank one for a new month, or one that had been taken out. */
export function insertRow(household: Household, index: number, row: ReadingRow = BLANK_ROW): Household {
  const readings = padded(household.readings, index);
  readings.splice(index, 0, row);
  return { ...household, readings };
}

/** Take a row out. */
export function removeRow(household: Household, index: number): Household {
  return { ...household, readings: household.readings.filter((_, at) => at !== index) };
}

/** Put the rows in order of time; rows whose date cannot be read stay behind the row they follow. */
export function sortRows(household: Household): Household {
  let last = -Infinity;
  const dated = household.readings.map((row) => {
    last = readTypedDay(row.date)?.day ?? last;
    return { row, day: last };
  });
  dated.sort((a, b) => (a.day === b.day ? 0 : a.day - b.day));
  return { ...household, readings: dated.map(({ row }) => row) };
}

type Branch = Readonly<Record<string, unknown>>;

function setAt(branch: Branch, path: readonly string[], value: unknown): Branch {
  const [key = '', ...rest] = path;
  if (rest.length > 0) return { ...branch, [key]: setAt((branch[key] ?? {}) as Branch, rest, value) };
  if (value !== undefined) return { ...branch, [key]: value };
  return Object.fromEntries(Object.entries(branch).filter(([known]) => known !== key));
}

/**
 * Change one field of the account.
 *
 * @param path   the way to it, such as ['meters', 'grid', 'serial']
 * @param value  as typed; undefined takes the field out
 */
export function changeAccount(household: Household, path: readonly string[], value: unknown): Household {
  const account = setAt(household.account, path, value) as unknown as Household['account'];
  const confirmed = household.confirmed?.filter((key) => !key.endsWith(`:${path.join('.')}`));
  return { ...household, account, ...(confirmed === undefined ? {} : { confirmed }) };
}
