import {
  decimalToWhole,
  exactText,
  type CheckedBill,
  type PrintedBillDocument,
  type Quotient,
} from '@unitbook/engine';

/** A line of a printed bill, changed a little. */
export interface Coin {
  /** The line, counted from the first one on and again. */
  readonly line: number;
  readonly sign: 1 | -1;
  /** Decimals of the amount that it is changed by; null: as many as are printed. */
  readonly places: number | null;
}

const placesOf = (text: string): number => text.split('.')[1]?.length ?? 0;

/** A decimal with so many decimals: one that is left out would be a bill printed to fewer of them. */
function written(whole: number, places: number): string {
  if (places === 0) return String(whole);
  const [units = '', decimals = ''] = exactText(whole, 10 ** places).split('.');
  return `${units}.${decimals.padEnd(places, '0')}`;
}

function isExactly(text: string, { numerator, denominator }: Quotient): boolean {
  const places = placesOf(text);
  return (
    BigInt(decimalToWhole(text, places)) * BigInt(denominator) === BigInt(numerator) * 10n ** BigInt(places)
  );
}

/**
 * An amount changed by its least: by one of some decimal where it is printed exactly. Of one that is rounded to what
 * is printed, one more may be rounded the other way: two more cannot.
 */
function changedAmount(text: string, right: Quotient, { sign, places }: Coin): string {
  const own = placesOf(text);
  if (!isExactly(text, right)) return written(decimalToWhole(text, own) + 2 * sign, own);
  const of = places ?? own;
  const most = Math.max(own, of);
  return written(decimalToWhole(text, most) + sign * 10 ** (most - of), most);
}

/** A printed bill with one coin changed, and the figure that was changed; null: it prints no line. */
export function withCoin(
  document: PrintedBillDocument,
  { right }: CheckedBill,
  coin: Coin,
): { readonly document: PrintedBillDocument; readonly name: string } | null {
  const { lines = [] } = document;
  const at = coin.line % Math.max(1, lines.length);
  const line = lines[at];
  const figure = right?.figures.get(`line.${line?.charge ?? ''}`);
  if (line === undefined || figure === undefined) return null;
  const changed = { ...line, amount: changedAmount(line.amount, figure, coin) };
  return { document: { ...document, lines: lines.with(at, changed) }, name: `line.${line.charge}` };
}
