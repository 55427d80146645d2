/** Something that only the long way works out, or has a finding about. */
export class LongWay extends Error {}

/**
 * A value that is there.
 *
 * @throws LongWay where it is null or undefined
 * @example
 * orLongWay(3) //=> 3
 */
export function orLongWay<Value>(value: Value | null | undefined): Value {
  if (value === null || value === undefined) throw new LongWay();
  return value;
}
