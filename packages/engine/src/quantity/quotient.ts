import { commonMultiple, largeDivisor, LARGEST_WHOLE } from './decimal.ts';
import { roundLargeQuotient, roundQuotient, type RoundingMode } from './rounding.ts';

/** An exact value as a quotient of whole numbers; the denominator is above 0. */
export interface Quotient {
  readonly numerator: number | bigint;
  readonly denominator: number;
}

/** Nothing. */
export const ZERO: Quotient = { numerator: 0, denominator: 1 };

/** Below 0 where a value is below 0, above 0 where it is above. */
export const signOf = ({ numerator }: Quotient): number => (numerator < 0 ? -1 : numerator > 0 ? 1 : 0);

/** A value that no quotient of whole numbers below 2^53 can hold. */
export class NumberTooLarge extends RangeError {
  constructor() {
    super(`a number beyond ${String(LARGEST_WHOLE)}`);
  }
}

const isSafe = (value: number): boolean => Math.abs(value) <= LARGEST_WHOLE;

/** A large whole number as an ordinary one. */
function ordinary(value: bigint): number {
  if (value > BigInt(LARGEST_WHOLE) || value < -BigInt(LARGEST_WHOLE)) throw new NumberTooLarge();
  return Number.parseInt(value.toString(), 10);
}

/** The sum in large whole numbers, in lowest terms. */
function largeSum(terms: readonly Quotient[]): Quotient {
  let top = 0n;
  let bottom = 1n;
  for (const { numerator, denominator } of terms) {
    top = top * BigInt(denominator) + BigInt(numerator) * bottom;
    bottom *= BigInt(denominator);
    const divisor = largeDivisor(top, bottom);
    top /= divisor;
    bottom /= divisor;
  }
  return { numerator: ordinary(top), denominator: ordinary(bottom) };
}

/**
 * Add exact values on their common denominator.
 *
 * @throws NumberTooLarge when the sum cannot be held
 * @example
 * addQuotients([{ numerator: 1, denominator: 2 }, { numerator: 1, denominator: 3 }]) //=> {"numerator":5,"denominator":6}
 */
export function addQuotients(terms: readonly Quotient[]): Quotient {
  let denominator = 1;
  for (const term of terms) {
    if (term.denominator !== denominator) denominator = commonMultiple(denominator, term.denominator);
  }
  let numerator = 0;
  let size = denominator;
  for (const term of terms) {
    if (typeof term.numerator === 'bigint') return largeSum(terms);
    const part = term.numerator * (denominator / term.denominator);
    numerator += part;
    size += Math.abs(part);
  }
  return isSafe(size) ? { numerator, denominator } : largeSum(terms);
}

/**
 * One exact value less another.
 *
 * @throws NumberTooLarge when the difference cannot be held
 * @example
 * subtractQuotients({ numerator: 1, denominator: 2 }, { numerator: 1, denominator: 3 }) //=> {"numerator":1,"denominator":6}
 */
export function subtractQuotients(a: Quotient, b: Quotient): Quotient {
  return addQuotients([a, { numerator: -b.numerator, denominator: b.denominator }]);
}

/**
 * Round an exact value to whole steps.
 *
 * @param step  a step as a quotient: 1/100 for a coin
 * @returns     how many steps
 * @throws      NumberTooLarge when there are more than 2^53
 * @example
 * wholeSteps({ numerator: 12345, denominator: 1000 }, { numerator: 1, denominator: 100 }, 'half-up') //=> 1235
 */
export function wholeSteps(
  value: Quotient,
  step: { readonly numerator: number; readonly denominator: number },
  mode: RoundingMode,
): number {
  const { numerator, denominator } = value;
  const bottom = denominator * step.numerator;
  if (typeof numerator === 'number' && isSafe(numerator * step.denominator * 2) && isSafe(bottom * 2)) {
    return roundQuotient(numerator * step.denominator, bottom, mode);
  }
  const top = BigInt(numerator) * BigInt(step.denominator);
  return ordinary(roundLargeQuotient(top, BigInt(denominator) * BigInt(step.numerator), mode));
}

/** Whether two exact values are the same. */
export function isSameQuotient(a: Quotient, b: Quotient): boolean {
  if (typeof a.numerator === 'number' && typeof b.numerator === 'number') {
    const left = a.numerator * b.denominator;
    const right = b.numerator * a.denominator;
    if (isSafe(left) && isSafe(right)) return left === right;
  }
  return BigInt(a.numerator) * BigInt(b.denominator) === BigInt(b.numerator) * BigInt(a.denominator);
}
