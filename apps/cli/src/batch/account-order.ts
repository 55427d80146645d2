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

/** Below 0 where bytes come before others, 0 where they are the same; by their text. */
function comparedBytes(
  bytes: Uint8Array,
  one: readonly [number, number],
  other: readonly [number, number],
): number {
  const length = Math.min(one[1] - one[0], other[1] - other[0]);
  for (let at = 0; at < length; at += 1) {
    const apart = (bytes[one[0] + at] as number) - (bytes[other[0] + at] as number);
    if (apart !== 0) return apart;
  }
  return one[1] - one[0] - (other[1] - other[0]);
}

/**
 * The order of the accounts of a block that was scanned.
 *
 * @returns null where it has no row that can be used
 */
export function orderOfBlock(scanner: RowScanner, bytes: Uint8Array): AccountOrder | null {
  const { count, begins, accountFrom, accountTo } = scanner.table;
  if (count === 0) return null;
  let [textBreaks, lengthBreaks] = [0, 0];
  for (let row = 1; row < count; row += 1) {
    if (begins[row] !== 1) continue;
    const own = [accountFrom[row] as number, accountTo[row] as number] as const;
    const before = [accountFrom[row - 1] as number, accountTo[row - 1] as number] as const;
    const apart = comparedBytes(bytes, own, before);
    // An account that begins anew behind a row that cannot be used stands below itself.
    if (apart === 0) continue;
    const longer = own[1] - own[0] - (before[1] - before[0]);
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
