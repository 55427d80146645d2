/** How a packed file begins, and text in UTF-16 where it begins with a mark. */
const BEGINNINGS: readonly (readonly [number, number])[] = [
  [0x1f, 0x8b],
  [0xff, 0xfe],
  [0xfe, 0xff],
];

/**
 * Whether a table is no text at all, by its first bytes: packed, or in UTF-16, of which every other byte is 0.
 *
 * @example
 * isOtherThanText(Uint8Array.of(0x1f, 0x8b, 8)) //=> true
 */
export const isOtherThanText = (first: Uint8Array): boolean =>
  first.includes(0) || BEGINNINGS.some(([one, other]) => first[0] === one && first[1] === other);
