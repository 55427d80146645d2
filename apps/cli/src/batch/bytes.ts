/** Bytes that tables of bills are made of. */
export const COMMA = 44;
export const QUOTE = 34;
export const NEWLINE = 10;
export const RETURN = 13;
export const MINUS = 45;
export const POINT = 46;
export const ZERO = 48;

/**
 * Where the row after the one at a place begins, by RFC 4180: a line break between quotes ends no row, and only a quote
 * at the beginning of a cell opens one.
 *
 * @param at   where a row begins
 * @param end  where the bytes end
 * @returns    −1: the row does not end here
 * @example
 * rowAfter(new TextEncoder().encode('"a\nb",1\nc'), 0, 9) //=> 8
 */
export function rowAfter(bytes: Uint8Array, at: number, end: number): number {
  let isBegun = true;
  let place = at;
  while (place < end) {
    const byte = bytes[place] as number;
    place += 1;
    if (byte === NEWLINE) return place;
    if (byte === QUOTE && isBegun) {
      place = afterQuoted(bytes, place, end);
      if (place < 0) return -1;
    }
    isBegun = byte === COMMA;
  }
  return -1;
}

/**
 * Where a quoted cell ends: behind its closing quote.
 *
 * @param at  behind the opening quote
 * @returns   −1: it is not closed
 */
export function afterQuoted(bytes: Uint8Array, at: number, end: number): number {
  let place = at;
  for (;;) {
    const quote = bytes.indexOf(QUOTE, place);
    if (quote < 0 || quote >= end) return -1;
    if (quote + 1 >= end || bytes[quote + 1] !== QUOTE) return quote + 1;
    place = quote + 2;
  }
}

/** Whether two stretches of bytes are the same. */
export function areSame(
  bytes: Uint8Array,
  one: readonly [number, number],
  other: readonly [number, number],
): boolean {
  const [from, to] = one;
  const [start, end] = other;
  if (to - from !== end - start) return false;
  for (let at = 0; at < to - from; at += 1) if (bytes[from + at] !== bytes[start + at]) return false;
  return true;
}

/** How many lines end in some bytes. */
export function countLines(bytes: Uint8Array, from: number, to: number): number {
  let lines = 0;
  for (let at = from; at < to; at += 1) if (bytes[at] === NEWLINE) lines += 1;
  return lines;
}
