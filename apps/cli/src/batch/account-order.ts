import type { RowScanner } from './scan-rows.ts';

/**
 * In which order the accounts of some rows stand. Where none stands below one that comes after it, either by its text
 * or, as numbers do, by its length and then its text, none can stand in two places.
 */
export interface AccountOrder {
  readonly first: string;
  readonly last: string;
  /** How often an account stands below one that comes after it by its text; by its length first. */
  readonly textBreaks: number;
  readonly lengthBreaks: number;
}

const isTextBreak = (before: string, after: string): boolean => after < before;

const isLengthBreak = (before: string, after: string): boolean =>
  after.length === before.length ? after < before : after.length < before.length;

const lengthOf = ({ accountFrom, accountTo }: RowScanner['table'], row: number): number =>
  (accountTo[row] as number) - (accountFrom[row] as number);

/** Below 0 where an account comes before that of the row above by its text, 0 where they are the same. */
function comparedAbove(
  bytes: Uint8Array,
  { accountFrom, accountTo }: RowScanner['table'],
  row: number,
): number {
  const [from, to] = [accountFrom[row] as number, accountTo[row] as number];
  const [above, end] = [accountFrom[row - 1] as number, accountTo[row - 1] as number];
  const length = Math.min(to - from, end - above);
  for (let at = 0; at < length; at += 1) {
    const apart = (bytes[from + at] as number) - (bytes[above + at] as number);
    if (apart !== 0) return apart;
  }
  return to - from - (end - above);
}

/**
 * The order of the accounts of a block that was scanned.
 *
 * @returns null where it has no row that can be used
 */
export function orderOfBlock(scanner: RowScanner, bytes: Uint8Array): AccountOrder | null {
  const { count, begins } = scanner.table;
  if (count === 0) return null;
  let [textBreaks, lengthBreaks] = [0, 0];
  for (let row = 1; row < count; row += 1) {
    if (begins[row] !== 1) continue;
    const apart = comparedAbove(bytes, scanner.table, row);
    // An account that begins anew behind a row that cannot be used stands below itself.
    if (apart === 0) continue;
    const longer = lengthOf(scanner.table, row) - lengthOf(scanner.table, row - 1);
    if (apart < 0) textBreaks += 1;
    if (longer < 0 || (longer === 0 && apart < 0)) lengthBreaks += 1;
  }
  return { first: scanner.accountText(0), last: scanner.accountText(count - 1), textBreaks, lengthBreaks };
}

/**
 * The order of rows above and of those below them.
 *
 * @example
 * joinedOrder({ first: '9', last: '9', textBreaks: 0, lengthBreaks: 0 }, { first: '10', last: '10', textBreaks: 0, lengthBreaks: 0 }).textBreaks //=> 1
 */
export function joinedOrder(above: AccountOrder | null, below: AccountOrder | null): AccountOrder | null {
  if (above === null || below === null) return above ?? below;
  const text = isTextBreak(above.last, below.first) ? 1 : 0;
  const length = isLengthBreak(above.last, below.first) ? 1 : 0;
  return {
    first: above.first,
    last: below.last,
    textBreaks: above.textBreaks + below.textBreaks + text,
    lengthBreaks: above.lengthBreaks + below.lengthBreaks + length,
  };
}

/**
 * How often an account stands below one that comes after it, in the order that the table goes by.
 *
 * @example
 * orderBreaks({ first: '9', last: '10', textBreaks: 1, lengthBreaks: 0 }) //=> 0
 */
export const orderBreaks = (order: AccountOrder | null): number =>
  order === null ? 0 : Math.min(order.textBreaks, order.lengthBreaks);

/**
 * Whether something that was read of a file is an order to its end.
 *
 * @example
 * isAccountOrder({ first: '9' }) //=> false
 */
export function isAccountOrder(value: unknown): value is AccountOrder | null {
  if (value === null) return true;
  const { first, last, textBreaks, lengthBreaks } = (value ?? {}) as Partial<
    Record<keyof AccountOrder, unknown>
  >;
  return (
    typeof first === 'string' &&
    typeof last === 'string' &&
    Number.isSafeInteger(textBreaks) &&
    Number.isSafeInteger(lengthBreaks)
  );
}
