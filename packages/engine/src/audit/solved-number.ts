import {
  decimalPlaces,
  decimalToWhole,
  exactText,
  isSameQuotient,
  roundLargeQuotient,
  wholeSteps,
  type Quotient,
} from '../quantity/index.ts';
import type { Charge, TariffDocument } from '../tariff/index.ts';

/** The finest number that a tariff is taken to hold. */
const MOST_PLACES = 4;

/** Lines as a charge rounds them; null: not at all. */
type LineRounding = Exclude<TariffDocument['rounding']['line'], 'none'> | null;

/** How the line of a charge is rounded. */
export function lineRounding({ rounding }: TariffDocument, charge: Pick<Charge, 'rounding'>): LineRounding {
  const own = charge.rounding ?? rounding.line;
  return own === 'none' ? null : own;
}

/** An exact amount as a line shows it. */
export function roundedLine(amount: Quotient, rounding: LineRounding): Quotient {
  if (rounding === null) return amount;
  const places = decimalPlaces(rounding.step);
  const step = { numerator: decimalToWhole(rounding.step, places), denominator: 10 ** places };
  return {
    numerator: wholeSteps(amount, step, rounding.mode) * step.numerator,
    denominator: step.denominator,
  };
}

/** A number written as text times an exact value. */
export function times(text: string, value: Quotient): Quotient {
  const places = decimalPlaces(text);
  const numerator = BigInt(decimalToWhole(text, places)) * BigInt(value.numerator);
  return { numerator, denominator: value.denominator * 10 ** places };
}

/**
 * The number with the fewest decimals that, times a value, shows an amount once it is rounded: the rate of a line.
 *
 * @param most  decimals at most
 * @returns     null where there is none
 * @example
 * rateFor({ numerator: 1216, denominator: 1 }, { numerator: 640, denominator: 1 }, { rounding: null }) //=> "1.9"
 */
export function rateFor(
  amount: Quotient,
  value: Quotient,
  { rounding, most = MOST_PLACES }: { readonly rounding: LineRounding; readonly most?: number },
): string | null {
  const bottom = BigInt(amount.denominator) * BigInt(value.numerator);
  if (bottom === 0n) return null;
  const top = BigInt(amount.numerator) * BigInt(value.denominator);
  const [over, under] = bottom < 0n ? [-top, -bottom] : [top, bottom];
  for (let places = 0; places <= most; places += 1) {
    const whole = roundLargeQuotient(over * 10n ** BigInt(places), under, 'half-up');
    const text = exactText(whole, 10 ** places);
    if (isSameQuotient(roundedLine(times(text, value), rounding), amount)) return text;
  }
  return null;
}

/** An exact value with its sign turned. */
export const negated = ({ numerator, denominator }: Quotient): Quotient => ({
  numerator: -numerator,
  denominator,
});
