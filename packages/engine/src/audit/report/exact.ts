import {
  largeDivisor,
  LARGEST_WHOLE,
  NumberTooLarge,
  signOf,
  subtractQuotients,
  type Quotient,
} from '../../quantity/index.ts';

/**
 * The larger of two exact values.
 *
 * @example
 * largerOf({ numerator: 1, denominator: 3 }, { numerator: 1, denominator: 2 }).denominator //=> 2
 */
export function largerOf(one: Quotient, other: Quotient): Quotient {
  return signOf(subtractQuotients(one, other)) < 0 ? other : one;
}

/**
 * The smaller of two exact values.
 *
 * @example
 * smallerOf({ numerator: 1, denominator: 3 }, { numerator: 1, denominator: 2 }).denominator //=> 3
 */
export function smallerOf(one: Quotient, other: Quotient): Quotient {
  return signOf(subtractQuotients(one, other)) > 0 ? other : one;
}

/**
 * An exact value times `top` ÷ `bottom`, in lowest terms.
 *
 * @param bottom  above 0
 * @throws        NumberTooLarge when its denominator cannot be held
 * @example
 * timesPart({ numerator: 316, denominator: 1 }, 9, 100) //=> {"numerator":711,"denominator":25}
 */
export function timesPart({ numerator, denominator }: Quotient, top: number, bottom: number): Quotient {
  const over = BigInt(numerator) * BigInt(top);
  const under = BigInt(denominator) * BigInt(bottom);
  const divisor = largeDivisor(over, under);
  return { numerator: ordinary(over / divisor) ?? over / divisor, denominator: held(under / divisor) };
}

/** A large whole number as an ordinary one; null where a double cannot hold it. */
function ordinary(value: bigint): number | null {
  const most = BigInt(LARGEST_WHOLE);
  return value > most || value < -most ? null : Number.parseInt(value.toString(), 10);
}

function held(value: bigint): number {
  const own = ordinary(value);
  if (own === null) throw new NumberTooLarge();
  return own;
}

/** Below 0 where the first value is the smaller one, 0 where they are the same. */
export const subtractSign = (one: Quotient, other: Quotient): number => signOf(subtractQuotients(one, other));
