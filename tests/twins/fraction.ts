import { Decimal } from 'decimal.js';
import type { Rounding } from '@unitbook/engine';

/** decimal.js with room for every product met here: results are exact, not rounded to a precision. */
const Exact = Decimal.clone({ precision: 400, toExpNeg: -400, toExpPos: 400 });

/** An exact quotient of two whole or decimal numbers, in decimal.js: slow, plain, and nobody's grid. */
export interface Fraction {
  readonly top: Decimal;
  readonly bottom: Decimal;
}

const ONE = new Exact(1);

/** A fraction from decimal texts or whole numbers. */
export function fraction(top: string | number | bigint, bottom: string | number = 1): Fraction {
  return { top: new Exact(top.toString()), bottom: new Exact(bottom) };
}

export const ZERO: Fraction = { top: new Exact(0), bottom: ONE };

export function plus(a: Fraction, b: Fraction): Fraction {
  if (a.bottom.equals(b.bottom)) return { top: a.top.plus(b.top), bottom: a.bottom };
  return { top: a.top.times(b.bottom).plus(b.top.times(a.bottom)), bottom: a.bottom.times(b.bottom) };
}

function negative(a: Fraction): Fraction {
  return { top: a.top.negated(), bottom: a.bottom };
}

export function minus(a: Fraction, b: Fraction): Fraction {
  return plus(a, negative(b));
}

export function times(a: Fraction, b: Fraction): Fraction {
  return { top: a.top.times(b.top), bottom: a.bottom.times(b.bottom) };
}

export function dividedBy(a: Fraction, b: Fraction): Fraction {
  return { top: a.top.times(b.bottom), bottom: a.bottom.times(b.top) };
}

/** Below 0, 0 or above 0 as `a` is less than, equal to or more than `b`. */
export function compare(a: Fraction, b: Fraction): number {
  const difference = minus(a, b);
  const sign = difference.top.isZero() ? 0 : difference.top.isNegative() ? -1 : 1;
  return difference.bottom.isNegative() ? 0 - sign : sign;
}

export function least(a: Fraction, b: Fraction): Fraction {
  return compare(a, b) <= 0 ? a : b;
}

export function largest(a: Fraction, b: Fraction): Fraction {
  return compare(a, b) >= 0 ? a : b;
}

const DECIMAL_MODES = {
  'half-up': Decimal.ROUND_HALF_UP,
  'half-even': Decimal.ROUND_HALF_EVEN,
  'half-down': Decimal.ROUND_HALF_DOWN,
  up: Decimal.ROUND_UP,
  down: Decimal.ROUND_DOWN,
  floor: Decimal.ROUND_FLOOR,
  ceiling: Decimal.ROUND_CEIL,
  'half-ceiling': Decimal.ROUND_HALF_CEIL,
  'half-floor': Decimal.ROUND_HALF_FLOOR,
} as const;

/**
 * Round a fraction to a step with decimal.js's own rounding. The quotient is cut to its whole part and
 * what is left decides: above, on or below one half, which a quotient that does not end cannot blur.
 */
export function roundFraction(a: Fraction, rounding: Rounding): Fraction {
  const steps = dividedBy(a, fraction(rounding.step));
  const whole = steps.top.divToInt(steps.bottom);
  const left = steps.top.minus(whole.times(steps.bottom)).abs();
  const half = left.times(2).comparedTo(steps.bottom.abs());
  const tenths = left.isZero() ? 0 : half === 0 ? 5 : half > 0 ? 7 : 3;
  const sign = a.top.isNegative() !== a.bottom.isNegative() ? -1 : 1;
  const near = whole.plus(new Exact(tenths).times(sign).div(10));
  const rounded = near.toDecimalPlaces(0, DECIMAL_MODES[rounding.mode]);
  return times({ top: rounded, bottom: ONE }, fraction(rounding.step));
}

/** Exact text of a fraction that ends, else "top/bottom"; for messages of failed comparisons. */
export function fractionText(a: Fraction): string {
  const quotient = a.top.div(a.bottom);
  return quotient.decimalPlaces() < 100 ? quotient.toFixed() : `${a.top.toFixed()}/${a.bottom.toFixed()}`;
}
