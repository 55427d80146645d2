import type { Path, PrintedBillDocument } from '@unitbook/engine';

/** What a line is called that was typed without its name. */
const UNNAMED = 'a line without a name';

/** The texts without which an item of a list is left out. */
const NEEDED = { lines: 'amount', slabs: 'units' } as const;

const isBlank = (text: string | undefined): boolean => (text ?? '').trim() === '';

/** An object without blank texts, and without objects that hold nothing else. */
function trimmed(value: unknown): unknown {
  if (typeof value === 'string') return isBlank(value) ? undefined : value;
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  const held = Object.entries(value)
    .map(([key, one]) => [key, trimmed(one)] as const)
    .filter(([, one]) => one !== undefined);
  return held.length === 0 ? undefined : Object.fromEntries(held);
}

/** Items without their blank texts, those without the text that they cannot do without left out. */
function items(list: readonly object[] | undefined, needed: string): readonly object[] | undefined {
  const held = (list ?? [])
    .map((item) => (trimmed(item) ?? {}) as Readonly<Record<string, unknown>>)
    .filter((item) => typeof item[needed] === 'string');
  return held.length === 0 ? undefined : held;
}

/** When it was paid is told only whole: a day without an amount says nothing yet. */
function paidOf({ paid }: PrintedBillDocument): PrintedBillDocument['paid'] {
  return paid === undefined || isBlank(paid.on) || isBlank(paid.amount) ? undefined : paid;
}

/**
 * A printed bill without what is blank: documents leave out what is not printed. Its two days always stay.
 *
 * @example
 * withoutBlanks({ from: "2025-05-01", to: "", number: " " }) //=> { from: "2025-05-01", to: "" }
 */
export function withoutBlanks(bill: PrintedBillDocument): PrintedBillDocument {
  const { from, to, lines, slabs, ...rest } = bill;
  const held = trimmed({ ...rest, paid: paidOf(bill) }) ?? {};
  const named = lines?.map((line) => (isBlank(line.charge) ? { ...line, charge: UNNAMED } : line));
  const more = { lines: items(named, NEEDED.lines), slabs: items(slabs, NEEDED.slabs) };
  return { from, to, ...held, ...(trimmed(more) ?? {}) };
}

/**
 * The way into a bill as typed, of a way into it without its blanks: items that are left out are counted again.
 *
 * @example
 * typedPath(["lines", 0, "amount"], { from: "", to: "", lines: [{ charge: "a", amount: "" }, { charge: "b", amount: "5" }] }) //=> ["lines", 1, "amount"]
 */
export function typedPath(path: Path, bill: PrintedBillDocument): Path {
  const [list, at, ...rest] = path;
  if ((list !== 'lines' && list !== 'slabs') || typeof at !== 'number') return path;
  const all: readonly object[] = bill[list] ?? [];
  const places = all.flatMap((item, place) => {
    const text: unknown = (item as Readonly<Record<string, unknown>>)[NEEDED[list]];
    return typeof text === 'string' && !isBlank(text) ? [place] : [];
  });
  return [list, places[at] ?? at, ...rest];
}
