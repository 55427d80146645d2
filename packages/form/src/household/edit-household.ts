import { readTypedDay, type ReadingRow } from '@unitbook/engine';
import { BLANK_ROW, type Household } from './household.ts';
import { setRegister } from './registers.ts';

/** A field of a reading that somebody types in or chooses. */
type RowField = 'date' | 'import' | 'export' | 'generation' | 'status' | 'printedDays';

/** New texts for some fields of a reading. */
export type RowChange = Partial<Pick<ReadingRow, RowField>>;

function padded(rows: readonly ReadingRow[], length: number): ReadingRow[] {
  return [...rows, ...Array.from({ length: Math.max(0, length - rows.length) }, () => BLANK_ROW)];
}

/** An answer holds for the text it was given about: typing anew takes it back. */
function stillConfirmed(
  answers: readonly string[] | undefined,
  changed: readonly string[],
): { confirmed?: readonly string[] } {
  if (answers === undefined) return {};
  return { confirmed: answers.filter((key) => !changed.some((field) => key.endsWith(`:${field}`))) };
}

/** The household with one reading changed; rows that are not there yet are added blank. */
export function mapRow(
  household: Household,
  index: number,
  change: (row: ReadingRow) => ReadingRow,
): Household {
  const readings = padded(household.readings, index + 1);
  readings[index] = change(readings[index] ?? BLANK_ROW);
  return { ...household, readings };
}

/**
 * Change what is typed in one reading; rows that are not there yet are added blank.
 *
 * @param index  of the row, from 0
 */
export function changeRow(household: Household, index: number, change: RowChange): Household {
  return mapRow(household, index, (row) => ({
    ...row,
    ...change,
    ...stillConfirmed(row.confirmed, Object.keys(change)),
  }));
}

/**
 * Change what is typed for registers of one reading.
 *
 * @param texts  by the key of the register, such as "import" or "import-1"
 */
export function changeRegisters(
  household: Household,
  index: number,
  texts: Readonly<Record<string, string>>,
): Household {
  const changed = Object.entries(texts);
  return mapRow(household, index, (row) => ({
    ...changed.reduce((held, [key, text]) => setRegister(held, key, text), row),
    ...stillConfirmed(row.confirmed, Object.keys(texts)),
  }));
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
  return mapRow(household, index, (row) => ({ ...row, confirmed: toggled(row.confirmed, key) }));
}

/** Put a blank row in, for a new month. */
export function insertRow(household: Household, index: number): Household {
  const readings = padded(household.readings, index);
  readings.splice(index, 0, BLANK_ROW);
  return { ...household, readings };
}

/** On one day a meter ends before another begins, and only then the month is closed. */
const RANKS = { final: 0, first: 1 } as const;
const USUAL = 2;
/** A row whose date cannot be read stays behind the row it follows. */
const UNDATED = 3;

function rankOf(row: ReadingRow, isDated: boolean): number {
  if (!isDated) return UNDATED;
  return row.event === undefined ? USUAL : RANKS[row.event];
}

/** Put the rows in order of time; rows whose date cannot be read stay behind the row they follow. */
export function sortRows(household: Household): Household {
  let last = -Infinity;
  const dated = household.readings.map((row) => {
    const day = readTypedDay(row.date)?.day ?? null;
    last = day ?? last;
    return { row, day: last, rank: rankOf(row, day !== null) };
  });
  dated.sort((a, b) => (a.day === b.day ? a.rank - b.rank : a.day - b.day));
  return { ...household, readings: dated.map(({ row }) => row) };
}

type Branch = Readonly<Record<string, unknown>>;

function setAt(branch: unknown, path: readonly string[], value: unknown): unknown {
  const [key = '', ...rest] = path;
  if (Array.isArray(branch))
    return branch.map((item: unknown, index) =>
      String(index) !== key ? item : rest.length > 0 ? setAt(item, rest, value) : value,
    );
  const fields = (branch ?? {}) as Branch;
  if (rest.length > 0) return { ...fields, [key]: setAt(fields[key], rest, value) };
  if (value !== undefined) return { ...fields, [key]: value };
  return Object.fromEntries(Object.entries(fields).filter(([known]) => known !== key));
}

/**
 * Change one field of the account.
 *
 * @param path   the way to it, such as ['meters', 'grid', 'serial']; an item of a list by its place
 * @param value  as typed; undefined takes the field out
 */
export function changeAccount(household: Household, path: readonly string[], value: unknown): Household {
  const answers = stillConfirmed(household.account.confirmed, path.slice(-1));
  const account = setAt({ ...household.account, ...answers }, path, value);
  return { ...household, account: account as Household['account'] };
}
