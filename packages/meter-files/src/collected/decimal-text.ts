/** A decimal number: a whole number of 10^-places. */
export interface Decimal {
  readonly whole: bigint;
  readonly places: number;
}

/**
 * Read decimal text, as readers of meter files hand it on: zeros in front are allowed.
 *
 * @throws RangeError  for any other text
 * @example
 * decimalOf('001581.120').places //=> 3
 */
export function decimalOf(text: string): Decimal {
  if (!/^-?\d+(?:\.\d+)?$/.test(text)) throw new RangeError(`"${text}" is no decimal number`);
  const point = text.indexOf('.');
  return {
    whole: BigInt(text.replace('.', '')),
    places: point < 0 ? 0 : text.length - point - 1,
  };
}

/** A decimal in at least as many places, without loss. */
function scaled({ whole, places }: Decimal, to: number): bigint {
  return whole * 10n ** BigInt(to - places);
}

/**
 * One decimal less another, exactly.
 *
 * @example
 * lessDecimal(decimalOf('10'), decimalOf('0.25')).whole //=> 975n
 */
export function lessDecimal(one: Decimal, other: Decimal): Decimal {
  const places = Math.max(one.places, other.places);
  return { whole: scaled(one, places) - scaled(other, places), places };
}

/** Decimals added up, exactly. */
export function addDecimals(one: Decimal, other: Decimal): Decimal {
  const places = Math.max(one.places, other.places);
  return { whole: scaled(one, places) + scaled(other, places), places };
}

/**
 * A decimal as text, without zeros at the end.
 *
 * @example
 * decimalText({ whole: 1250n, places: 2 }) //=> "12.5"
 */
export function decimalText({ whole, places }: Decimal): string {
  const isNegative = whole < 0n;
  const digits = (isNegative ? -whole : whole).toString().padStart(places + 1, '0');
  const end = digits.length - places;
  const decimals = digits.slice(end).replace(/0+$/, '');
  return `${isNegative ? '-' : ''}${digits.slice(0, end)}${decimals === '' ? '' : `.${decimals}`}`;
}
