/** The most significant digits of a number: all of them are exact as a whole number in a double. */
export const MOST_DIGITS = 15;

/** The least whole number of more than {@link MOST_DIGITS} digits. */
export const TOO_LARGE = 1e15;

/** What {@link readDigits} returns for a text that is no number of 0 or more. */
export const NO_DIGITS = { empty: -1, notANumber: -2, negative: -3, tooMany: -4 } as const;

/** A text that is no run of digits with one point at the most. */
function readOther(text: string, decimals: Uint8Array, at: number): number {
  const trimmed = text.trim();
  if (trimmed === '') return NO_DIGITS.empty;
  if (trimmed !== text) return readDigits(trimmed, decimals, at);
  return /^-(?:\d+(?:\.\d*)?|\.\d+)$/.test(text) ? NO_DIGITS.negative : NO_DIGITS.notANumber;
}

/**
 * Read a decimal number of 0 or more by its digits, exactly: ".005" and "1." are numbers, "1e3" is none.
 *
 * @param decimals  takes the decimal places of the number, as many as are written
 * @param at        where in `decimals`
 * @returns         the number without its point, a whole number of at most 15 digits; or what it is instead
 *   (see {@link NO_DIGITS})
 * @example
 * readDigits('12.30', new Uint8Array(1), 0) //=> 1230
 * readDigits('-5', new Uint8Array(1), 0) //=> -3
 */
export function readDigits(text: string, decimals: Uint8Array, at: number): number {
  const { length } = text;
  let whole = 0;
  let point = -1;
  for (let index = 0; index < length; index += 1) {
    const digit = text.charCodeAt(index) - 48;
    // Past 15 digits this is not exact, but it only grows: such a number is refused below.
    if (digit >= 0 && digit <= 9) whole = whole * 10 + digit;
    else if (digit === -2 && point < 0) point = index;
    else return readOther(text, decimals, at);
  }
  const places = point < 0 ? 0 : length - point - 1;
  if (length === (point < 0 ? 0 : 1)) return length === 0 ? NO_DIGITS.empty : NO_DIGITS.notANumber;
  if (whole >= TOO_LARGE || places > MOST_DIGITS) return NO_DIGITS.tooMany;
  decimals[at] = places;
  return whole;
}
