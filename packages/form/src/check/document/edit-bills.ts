import { readTypedDay, type Path, type PrintedBillDocument } from '@unitbook/engine';
import { BLANK_BILL, isBlankBill, type TypedBill, type TypedCheck } from './typed-check.ts';

type Branch = Readonly<Record<string | number, unknown>>;

/** A list long enough to have an item at a place. */
function filled(list: readonly unknown[], at: number): readonly unknown[] {
  return at < list.length ? list : [...list, ...Array<unknown>(at + 1 - list.length).fill({})];
}

function put(branch: unknown, path: Path, value: unknown): unknown {
  const [key = '', ...rest] = path;
  const next = (held: unknown): unknown => (rest.length > 0 ? put(held, rest, value) : value);
  if (typeof key === 'number')
    return filled((branch ?? []) as readonly unknown[], key).map((item, at) =>
      at === key ? next(item) : item,
    );
  const fields = (branch ?? {}) as Branch;
  const set = next(fields[key]);
  if (set !== undefined) return { ...fields, [key]: set };
  return Object.fromEntries(Object.entries(fields).filter(([known]) => known !== key));
}

/**
 * A bill with one value replaced; lists and objects on the way are made where they are missing.
 *
 * @param path   the way to it; an item of a list by its place
 * @param value  undefined takes a field out
 * @example
 * putInBill({ from: '', to: '' }, ['opening', 'credit'], '58').opening.credit //=> "58"
 */
export function putInBill(bill: PrintedBillDocument, path: Path, value: unknown): PrintedBillDocument {
  return put(bill, path, value) as PrintedBillDocument;
}

/** What stands at a place of a bill; undefined where nothing does. */
function valueInBill(bill: PrintedBillDocument, path: Path): unknown {
  return path.reduce<unknown>(
    (branch, key) => (branch === undefined || branch === null ? undefined : (branch as Branch)[key]),
    bill,
  );
}

/** The text at a place of a bill; '' where nothing is typed. */
export function textInBill(bill: PrintedBillDocument, path: Path): string {
  const value = valueInBill(bill, path);
  return typeof value === 'string' ? value : '';
}

/** A bill without an item of a list. */
export function withoutItem(
  bill: PrintedBillDocument,
  list: 'lines' | 'slabs',
  at: number,
): PrintedBillDocument {
  const held: readonly unknown[] = bill[list] ?? [];
  return putInBill(
    bill,
    [list],
    held.filter((_, place) => place !== at),
  );
}

/** The day that a bill begins with; those of which it cannot be read stand last. */
const beginOf = ({ bill }: TypedBill): number => readTypedDay(bill.from)?.day ?? Number.MAX_SAFE_INTEGER;

/** Bills in order of time; those that begin on the same day stay as they were. */
export function inOrder(bills: readonly TypedBill[]): readonly TypedBill[] {
  return [...bills].sort((one, other) => beginOf(one) - beginOf(other));
}

/** A check with one bill replaced. */
export function putBill(check: TypedCheck, key: string, bill: PrintedBillDocument): TypedCheck {
  const bills = check.bills.map((one) => (one.key === key ? { key, bill } : one));
  return { ...check, bills: inOrder(bills) };
}

/** The key of the next bill: no other has it, nor one that was taken out and can be put back. */
function nextKey(bills: readonly TypedBill[], takenOut: readonly string[]): string {
  const keys = [...bills.map(({ key }) => key), ...takenOut];
  return String(Math.max(0, ...keys.map((key) => Number.parseInt(key, 10))) + 1);
}

/**
 * A check with one more bill, which goes on from the last one: its last day is the first of the new one, and what is
 * printed of the account is the same. All of it can be typed over.
 *
 * @param takenOut  keys of bills that can be put back
 */
export function addBill(
  check: TypedCheck,
  takenOut: readonly string[] = [],
): { readonly check: TypedCheck; readonly key: string } {
  const key = nextKey(check.bills, takenOut);
  const bill = goneOnFrom(check.bills.at(-1)?.bill ?? BLANK_BILL);
  return { key, check: { ...check, bills: [...check.bills, { key, bill }] } };
}

function goneOnFrom({
  to,
  account,
  category,
  load,
  factor,
  serials,
}: PrintedBillDocument): PrintedBillDocument {
  const same = Object.entries({ account, category, load, factor, serials }).filter(
    ([, value]) => value !== undefined,
  );
  // Readings and credit are not carried: that they do not go on is what a check has to find.
  return { ...BLANK_BILL, ...Object.fromEntries(same), from: to };
}

/**
 * A check without a bill, and the way back; the last one leaves a blank one behind. Put back, it has its old key: what
 * was taken out of it before finds it again.
 *
 * @param takenOut  keys of bills that can be put back
 */
export function takeBill(
  check: TypedCheck,
  key: string,
  takenOut: readonly string[] = [],
): { readonly check: TypedCheck; readonly putBack: (held: TypedCheck) => TypedCheck } | null {
  const taken = check.bills.find((one) => one.key === key);
  if (taken === undefined) return null;
  const left = check.bills.filter((one) => one.key !== key);
  const stead = { key: nextKey(check.bills, takenOut), bill: BLANK_BILL };
  return {
    check: { ...check, bills: left.length > 0 ? left : [stead] },
    putBack: (held) => {
      const others = left.length > 0 ? held.bills : withoutStead(held.bills, stead.key);
      const isTaken = others.some((one) => one.key === key);
      const back = isTaken ? { ...taken, key: nextKey(others, takenOut) } : taken;
      return { ...held, bills: inOrder([...others, back]) };
    },
  };
}

/** Bills without the blank one that stood in the place of the last, unless something was typed in it. */
function withoutStead(bills: readonly TypedBill[], stead: string): readonly TypedBill[] {
  return bills.filter(({ key, bill }) => key !== stead || !isBlankBill(bill));
}
