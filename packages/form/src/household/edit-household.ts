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
function stillConfirmed(
  answers: readonly string[] | undefined,
  changed: readonly string[],
): { confirmed?: string[] } {
  if (answers === undefined) return {};
  return { confirmed: answers.filter((key) => !changed.some((field) => key.endsWith(`:${field}`))) };
}

/**
 * Change what is typed in one reading; rows that are not there yet are added blank.
 *
 * @param index  of the row, from 0
 */
export function changeRow(household: Household, index: number, change: RowChange): Household {
  const readings = padded(household.readings, index + 1);
  const row = readings[index] ?? BLANK_ROW;
  readings[index] = { ...row, ...change, ...stillConfirmed(row.confirmed, Object.keys(change)) };
  return { ...household, readings };
}

/** A list of answers with one more, or without it if it was there. */
function toggled(answers: readonly string[] = [], key: string): string[] {
  return answers.includes(key) ? answers.filter((known) => known !== key) : [...answers, key];
}

/**
 * Answer a question with "it is right", or take the answer back.
 *
 * @param index  of the reading it is about; null: it is about the account
 * @param key    of the answer, `code:field`
 */
export function answer(household: Household, index: number | null, key: string): Household {
  if (index === null) {
    const { account } = household;
    return { ...household, account: { ...account, confirmed: toggled(account.confirmed, key) } };
  }
  const readings = padded(household.readings, index + 1);
  const row = readings[index] ?? BLANK_ROW;
  readings[index] = { ...row, confirmed: toggled(row.confirmed, key) };
  return { ...household, readings };
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
  const answers = stillConfirmed(household.account.confirmed, path.slice(-1));
  const account = setAt({ ...household.account, ...answers }, path, value);
  return { ...household, account: account as unknown as Household['account'] };
}
