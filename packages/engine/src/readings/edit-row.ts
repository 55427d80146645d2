import type { ReadingEdit, ReadingRow } from './reading.ts';
import type { RegisterId } from './register.ts';

/** A register of a row by its key: what it counts, and the rate. */
function partsOf(key: string): { readonly id: RegisterId; readonly rate: string | null } {
  const [id = '', rate = null] = key.split('-');
  return { id: id as RegisterId, rate };
}

/** What a row holds for a register; '' where it holds nothing. */
export function rowText(row: ReadingRow, key: string): string {
  const { id, rate } = partsOf(key);
  if (rate === null) return row[id] ?? '';
  return (id === 'generation' ? undefined : row.rates?.[id]?.[rate]) ?? '';
}

function put(row: ReadingRow, key: string, text: string): ReadingRow {
  const { id, rate } = partsOf(key);
  if (rate === null || id === 'generation') return { ...row, [id]: text };
  return { ...row, rates: { ...row.rates, [id]: { ...row.rates?.[id], [rate]: text } } };
}

const isEstimatedIn = ({ status, estimated }: ReadingRow, key: string): boolean =>
  status === 'estimated' || (estimated ?? []).includes(partsOf(key).id);

function without(row: ReadingRow, keys: readonly (keyof ReadingRow)[]): ReadingRow {
  const kept = Object.entries(row).filter(([key]) => !keys.some((one) => one === key));
  return Object.fromEntries(kept) as unknown as ReadingRow;
}

/** The row with one register estimated or not. */
function withStatus(row: ReadingRow, key: string, isEstimated: boolean): ReadingRow {
  const { id } = partsOf(key);
  const all: readonly RegisterId[] =
    row.status === 'estimated' ? ['import', 'export', 'generation'] : (row.estimated ?? []);
  const others = all.filter((one) => one !== id);
  const estimated = isEstimated ? [...others, id] : others;
  const rest = without(row, ['status', 'estimated']);
  return estimated.length === 0 ? rest : { ...rest, estimated };
}

/** What takes the place of a reading. */
export interface RowEdit extends Pick<ReadingEdit, 'register' | 'method' | 'note'> {
  readonly value: string;
}

/** Methods whose result is as good as a reading of the meter. */
const READ: readonly ReadingEdit['method'][] = ['own-reading', 'typed-again'];

/**
 * Put a value in the place of what a register of a row holds. What stood there is kept beside it with the
 * method, and comes back by {@link undoEdit}.
 *
 * @example
 * editRow({ date: '2025-05-01', import: '12960', status: 'estimated' }, { register: 'import', value: '12892', method: 'own-reading' }).edits?.length //=> 1
 */
export function editRow(row: ReadingRow, edit: RowEdit): ReadingRow {
  const { register, value, method, note } = edit;
  const wasEstimated = isEstimatedIn(row, register);
  const kept: ReadingEdit = {
    register,
    raw: rowText(row, register),
    ...(wasEstimated ? { wasEstimated } : {}),
    method,
    ...(note === undefined ? {} : { note }),
  };
  const edited = { ...put(row, register, value), edits: [...(row.edits ?? []), kept] };
  return READ.includes(method) ? withStatus(edited, register, false) : withStatus(edited, register, true);
}

/**
 * Take the last edit of a register back.
 *
 * @returns the row as it was before it; the same row where there is none
 */
export function undoEdit(row: ReadingRow, register: string): ReadingRow {
  const edits = row.edits ?? [];
  const at = edits.findLastIndex((edit) => edit.register === register);
  const last = edits[at];
  if (last === undefined) return row;
  const left = edits.filter((_, index) => index !== at);
  const before = withStatus(put(row, register, last.raw), register, last.wasEstimated ?? false);
  return left.length === 0 ? without(before, ['edits']) : { ...before, edits: left };
}

/** A row as it was first typed or printed: every edit taken back. */
export function withoutEdits(row: ReadingRow): ReadingRow {
  return (row.edits ?? []).reduceRight((undone, { register }) => undoEdit(undone, register), row);
}
