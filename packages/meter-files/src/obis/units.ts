/** A unit of active energy: as the file has it, and by how many digits it is moved to become kWh. */
export interface EnergyUnit {
  readonly unit: string;
  readonly shift: -3 | 0 | 3;
}

/**
 * The unit of active energy that a text names.
 *
 * @returns null for any other unit; small m would be thousandths, so "mWh" is none
 * @example
 * energyUnit('MWh').shift //=> 3
 * energyUnit('kvarh') //=> null
 */
export function energyUnit(text: string): EnergyUnit | null {
  const lower = text.toLowerCase();
  if (lower === 'kwh') return { unit: text, shift: 0 };
  if (lower === 'wh') return { unit: text, shift: -3 };
  return lower === 'mwh' && text.startsWith('M') ? { unit: text, shift: 3 } : null;
}

/**
 * Move the point of a decimal text; its digits, also zeros before them, stay as they are.
 *
 * @param text   digits with or without a point, and a sign
 * @param shift  places to the right; below 0 to the left
 * @example
 * shiftDecimal('0004342100', -3) //=> "0004342.100"
 * shiftDecimal('4.34', 3) //=> "4340"
 * shiftDecimal('7', -3) //=> "0.007"
 */
export function shiftDecimal(text: string, shift: number): string {
  if (shift === 0) return text;
  const sign = text.startsWith('-') ? '-' : '';
  const [whole = '', decimals = ''] = text.slice(sign.length).split('.');
  const places = decimals.length - shift;
  const digits = `${whole}${decimals}`;
  if (places <= 0) return sign + digits + '0'.repeat(-places);
  const padded = digits.padStart(places + 1, '0');
  return `${sign}${padded.slice(0, -places)}.${padded.slice(-places)}`;
}

/** The places behind the point of a decimal text. */
export function placesOf(text: string): number {
  const at = text.indexOf('.');
  return at < 0 ? 0 : text.length - at - 1;
}

/**
 * A decimal text as a whole number of 10^-places.
 *
 * @param places  at least as many as the text has
 * @example
 * scaled('0012.5', 2).toString() //=> "1250"
 */
export function scaled(text: string, places: number): bigint {
  return BigInt(text.replace('.', '') + '0'.repeat(places - placesOf(text)));
}

/** Below 0 where the first is less, above 0 where it is more, 0 where both are the same number. */
export function compareDecimals(first: string, second: string): number {
  const places = Math.max(placesOf(first), placesOf(second));
  const [a, b] = [scaled(first, places), scaled(second, places)];
  return a < b ? -1 : a > b ? 1 : 0;
}
