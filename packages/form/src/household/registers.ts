import type { ReadingRow, Register, RegisterId } from '@unitbook/engine';
import { without } from './without.ts';

type Rates = Readonly<Record<string, string>>;

/** Where a register stands in its row: "import", or "rates", "import", "1" for rate 1. */
export function registerPath({ id, rate }: Pick<Register, 'id' | 'rate'>): readonly string[] {
  return rate === null ? [id] : ['rates', id, rate];
}

/** The key of the register that a path such as ['readings', 3, 'rates', 'import', '1'] leads to. */
export function keyOfPath(path: readonly (string | number)[]): string {
  const [, , field = 'import', ...rest] = path;
  return field === 'rates' ? rest.join('-') : String(field);
}

function partsOf(key: string): { readonly id: RegisterId; readonly rate: string | null } {
  const [id = '', rate = null] = key.split('-');
  return { id: id as RegisterId, rate };
}

/** The rates of a row with those of one register changed; none left are left out. */
function withRates(row: ReadingRow, id: 'import' | 'export', change: (rates: Rates) => Rates): ReadingRow {
  const { rates, ...rest } = row;
  const own = change(rates?.[id] ?? {});
  const others = Object.entries(rates ?? {}).filter(([known]) => known !== id);
  const kept = Object.entries(own).length === 0 ? others : [...others, [id, own] as const];
  return kept.length === 0 ? rest : { ...rest, rates: Object.fromEntries(kept) };
}

/** A row with the text of one register changed, by its key. */
export function setRegister(row: ReadingRow, key: string, text: string): ReadingRow {
  const { id, rate } = partsOf(key);
  if (rate === null || id === 'generation') return { ...row, [id]: text };
  return withRates(row, id, (rates) => ({ ...rates, [rate]: text }));
}

/** What a row keeps beside a rate, its edits and answers, under another name or not at all. */
function renameBeside(
  { edits, confirmed, ...row }: ReadingRow,
  key: string,
  name: string | null,
): ReadingRow {
  const kept = edits?.flatMap((edit) => {
    if (edit.register !== key) return edit;
    return name === null ? [] : { ...edit, register: name };
  });
  const answers = confirmed?.flatMap((answer) => {
    if (!answer.endsWith(`:${key}`)) return answer;
    return name === null ? [] : answer.slice(0, -key.length) + name;
  });
  return {
    ...row,
    ...(kept === undefined || kept.length === 0 ? {} : { edits: kept }),
    ...(answers === undefined ? {} : { confirmed: answers }),
  };
}

/** A row with a rate called by another name, or without it. */
export function renameRate(
  row: ReadingRow,
  id: 'import' | 'export',
  rate: string,
  name: string | null,
): ReadingRow {
  if (row.rates?.[id]?.[rate] === undefined) return row;
  const renamed = withRates(row, id, (rates) =>
    Object.fromEntries(
      Object.entries(rates).flatMap(([known, text]) =>
        known !== rate ? [[known, text]] : name === null ? [] : [[name, text]],
      ),
    ),
  );
  return renameBeside(renamed, `${id}-${rate}`, name === null ? null : `${id}-${name}`);
}

/** How a reading came about: read whole, estimated whole, or some registers estimated. */
export type HowRead = 'actual' | 'estimated' | 'some';

/** How a row says that it was read. */
export function howRead({ status, estimated }: ReadingRow): HowRead {
  if (status === 'estimated') return 'estimated';
  return estimated === undefined ? 'actual' : 'some';
}

/** The registers of a row that were estimated, of those it has. */
export function estimatedOf(row: ReadingRow, ids: readonly RegisterId[]): readonly RegisterId[] {
  return row.status === 'estimated' ? ids : (row.estimated ?? []);
}

/** A row that says how it was read; from whole to some, all that were estimated stay so. */
export function setHowRead(row: ReadingRow, how: HowRead, ids: readonly RegisterId[]): ReadingRow {
  const rest = without(row, 'status', 'estimated');
  if (how === 'actual') return rest;
  return how === 'estimated' ? { ...rest, status: how } : { ...rest, estimated: estimatedOf(row, ids) };
}
