import { roundLargeQuotient, ROUNDING_MODES, wholeToDecimal, type RoundingMode } from '@unitbook/engine';
import type { CaseRounding } from './case.ts';

/** An exact quotient of whole numbers, the denominator above 0. */
export interface Rational {
  readonly top: bigint;
  readonly bottom: bigint;
}

function greatestDivisor(a: bigint, b: bigint): bigint {
  return b === 0n ? (a < 0n ? -a : a) : greatestDivisor(b, a % b);
}

/** A quotient in lowest terms. */
export function rational(top: bigint, bottom: bigint): Rational {
  if (bottom === 0n) throw new RangeError('a quotient by 0');
  const divisor = greatestDivisor(top, bottom) * (bottom < 0n ? -1n : 1n);
  return { top: top / divisor, bottom: bottom / divisor };
}

/**
 * Read an exact text: a decimal, or a fraction such as "190/3".
 *
 * @throws RangeError for anything else
 * @example
 * readRational('1.50') //=> {"top":3n,"bottom":2n}
 */
export function readRational(text: string): Rational {
  const match = /^(-?\d+)(?:\.(\d+))?(?:\/(\d+))?$/.exec(text);
  if (match === null) throw new RangeError(`"${text}" is no exact number`);
  const [, whole = '', decimals = '', bottom = '1'] = match;
  return rational(BigInt(whole + decimals), BigInt(bottom) * 10n ** BigInt(decimals.length));
}

/** Print exactly: as a decimal where it ends, else as a fraction. */
export function rationalText({ top, bottom }: Rational): string {
  for (let places = 0; places <= 40; places += 1) {
    const scaled = top * 10n ** BigInt(places);
    if (scaled % bottom === 0n) return wholeToDecimal(scaled / bottom, places);
  }
  return `${top}/${bottom}`;
}

/** A mode by name. */
export function roundingMode(name: string): RoundingMode {
  const mode = ROUNDING_MODES.find((one) => one === name);
  if (mode === undefined) throw new RangeError(`no rounding mode is called "${name}"`);
  return mode;
}

/** Round to a step with the engine's division, printed with the step's decimals. */
export function roundText(value: Rational, { step, mode }: CaseRounding): string {
  const places = step.split('.')[1]?.length ?? 0;
  const size = readRational(step);
  const steps = roundLargeQuotient(value.top * size.bottom, value.bottom * size.top, roundingMode(mode));
  return wholeToDecimal((steps * size.top * 10n ** BigInt(places)) / size.bottom, places);
}
