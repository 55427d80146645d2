import { decimalPlaces, decimalToWhole, roundLargeQuotient } from '../quantity/index.ts';
import type { ExactFactor } from '../bill/index.ts';

const ONE: ExactFactor = { numerator: 1n, denominator: 1n };

/**
 * 1 plus a percentage, exact.
 *
 * @param percent  decimal text, above −100
 * @example
 * percentFactor('2').numerator //=> 102n
 */
export function percentFactor(percent: string): ExactFactor {
  const places = decimalPlaces(percent);
  const hundred = 100 * 10 ** places;
  return { numerator: BigInt(hundred + decimalToWhole(percent, places)), denominator: BigInt(hundred) };
}

/** 1 less a percentage, exact. */
export function lossFactor(percent: string): ExactFactor {
  const places = decimalPlaces(percent);
  const hundred = 100 * 10 ** places;
  return { numerator: BigInt(hundred - decimalToWhole(percent, places)), denominator: BigInt(hundred) };
}

/** A product of factors. */
export function timesFactor(one: ExactFactor, other: ExactFactor): ExactFactor {
  return {
    numerator: one.numerator * other.numerator,
    denominator: one.denominator * other.denominator,
  };
}

/** Hexadecimal digits that are looked at: more bits than a double holds, so that it is the nearest. */
const DIGITS = 16;

/** The double nearest to the first digits of a large number, and how many bits were left out. */
function leading(value: bigint): { readonly top: number; readonly shift: number } {
  const digits = value.toString(16);
  const top = Number.parseInt(digits.slice(0, DIGITS), 16);
  return { top, shift: 4 * Math.max(0, digits.length - DIGITS) };
}

/**
 * The double near a factor: off by less than three parts in 2^53.
 *
 * @example
 * nearestDouble({ numerator: 102n, denominator: 100n }) //=> 1.02
 */
export function nearestDouble({ numerator, denominator }: ExactFactor): number {
  const [top, bottom] = [leading(numerator), leading(denominator)];
  return (top.top / bottom.top) * 2 ** (top.shift - bottom.shift);
}

/** A factor for each year of the life, the first one 1 unless said. */
export interface YearFactors {
  readonly doubles: Float64Array;
  readonly exact: readonly ExactFactor[];
}

/**
 * Factors that multiply from year to year.
 *
 * @param years  how many
 * @param steps  what the second year is of the first, the third of the second …; the last goes on
 * @example
 * yearFactors(3, [percentFactor('10')]).exact[2].numerator //=> 12100n
 */
export function yearFactors(years: number, steps: readonly ExactFactor[]): YearFactors {
  const exact: ExactFactor[] = [];
  let factor = ONE;
  for (let year = 0; year < years; year += 1) {
    exact.push(factor);
    factor = timesFactor(factor, steps[Math.min(year, steps.length - 1)] ?? ONE);
  }
  return { doubles: Float64Array.from(exact, nearestDouble), exact };
}

/** As for bills: many times what the product and the quotient can be off. */
const DOUBT = 2 ** -48;

/**
 * A whole number times a factor, rounded half-up to whole steps: exact, by the double where that leaves no doubt.
 *
 * @param value   0 or more
 * @param double  near the factor
 * @param exact   the factor itself, asked for where the double leaves doubt
 * @param step    whole; the result is a multiple of it
 */
export function timesRounded(
  value: number,
  { double, exact, step }: { readonly double: number; readonly exact: ExactFactor; readonly step: number },
): number {
  const top = (value * double) / step + 0.5;
  const whole = Math.floor(top);
  const rest = top - whole;
  const doubt = top * DOUBT;
  if (rest > doubt && 1 - rest > doubt) return whole * step;
  const numerator = BigInt(value) * exact.numerator;
  const rounded = roundLargeQuotient(numerator, exact.denominator * BigInt(step), 'half-up');
  return Number.parseInt(rounded.toString(), 10) * step;
}
