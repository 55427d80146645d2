import type { PrintedBillDocument } from '@unitbook/engine';

/** What a line is called that was typed without its name. */
const UNNAMED = 'a line without a name';

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
  const more = { lines: items(named, 'amount'), slabs: items(slabs, 'units') };
  return { from, to, ...held, ...(trimmed(more) ?? {}) };
}
