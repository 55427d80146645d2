import type { Path, QuoteDocument } from '@unitbook/engine';

type Branch = Readonly<Record<string | number, unknown>>;

const isList = (branch: unknown): branch is readonly unknown[] => Array.isArray(branch);

function put(branch: unknown, path: Path, value: unknown): unknown {
  const [key = '', ...rest] = path;
  const next = (held: unknown): unknown => (rest.length > 0 ? put(held, rest, value) : value);
  if (isList(branch)) return branch.map((item, at) => (at === key ? next(item) : item));
  const fields = (branch ?? {}) as Branch;
  const set = next(fields[key]);
  if (set !== undefined) return { ...fields, [key]: set };
  return Object.fromEntries(Object.entries(fields).filter(([known]) => known !== String(key)));
}

/**
 * A quote with one value replaced; nothing is changed in place.
 *
 * @param path   the way to it; an item of a list by its place
 * @param value  undefined takes a field out
 * @example
 * putAt(blankQuote('en-IN', ''), ['plant', 'kWp'], '4').plant.kWp //=> "4"
 */
export function putAt(document: QuoteDocument, path: Path, value: unknown): QuoteDocument {
  return put(document, path, value) as QuoteDocument;
}

/** What stands at a place of a quote; undefined where nothing does. */
export function valueAt(document: QuoteDocument, path: Path): unknown {
  return path.reduce<unknown>(
    (branch, key) => (branch === undefined || branch === null ? undefined : (branch as Branch)[key]),
    document,
  );
}

/** The text at a place of a quote; '' where nothing is said. */
export function textAt(document: QuoteDocument, path: Path): string {
  const value = valueAt(document, path);
  return typeof value === 'string' ? value : '';
}

/** A quote with one more item in a list, before the one that stands at its place. */
function withItem(document: QuoteDocument, path: Path, item: unknown): QuoteDocument {
  const parent = path.slice(0, -1);
  const at = path.at(-1) as number;
  const list = (valueAt(document, parent) ?? []) as readonly unknown[];
  return putAt(document, parent, [...list.slice(0, at), item, ...list.slice(at)]);
}

/** A quote with one more item at the end of a list. */
export function addItem(document: QuoteDocument, list: Path, item: unknown): QuoteDocument {
  const held = (valueAt(document, list) ?? []) as readonly unknown[];
  return withItem(document, [...list, held.length], item);
}

/** What was taken out of a quote, with the way back. */
export interface Taken {
  readonly quote: QuoteDocument;
  readonly putBack: (quote: QuoteDocument) => QuoteDocument;
}

/** Take a part or an item of a list out. @returns null where there is none */
export function takeAt(document: QuoteDocument, path: Path): Taken | null {
  const value = valueAt(document, path);
  if (value === undefined) return null;
  const key = path.at(-1);
  if (typeof key !== 'number')
    return { quote: putAt(document, path, undefined), putBack: (held) => putAt(held, path, value) };
  const parent = path.slice(0, -1);
  const list = valueAt(document, parent) as readonly unknown[];
  return {
    quote: putAt(
      document,
      parent,
      list.filter((_, at) => at !== key),
    ),
    putBack: (held) => withItem(held, path, value),
  };
}

/** The id of the input of a text. */
export const fieldIdOf = (path: Path): string => `quote-${path.join('-')}`;
