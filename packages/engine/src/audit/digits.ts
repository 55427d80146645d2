import type { Register } from '../readings/index.ts';

/** Thousandths in one unit of a register. */
const UNIT = 1000;

/** A wrong way to take a display, and what it makes of the number in thousandths. */
export interface MisreadNumber {
  /** Such as "12982" for 12892. */
  readonly id: string;
  readonly value: number;
}

/** The digits that a register shows, those after the point at the end. */
function digitsOf(value: number, { digits, decimals, step }: Register): string {
  return Math.trunc(value / step)
    .toString()
    .padStart(digits + decimals, '0');
}

function valueOf(shown: string, { step }: Register): number {
  return Number.parseInt(shown, 10) * step;
}

const misread = (shown: string, register: Register): MisreadNumber => ({
  id: shown,
  value: valueOf(shown, register),
});

/**
 * A display with two neighbouring digits in each other's place, in every way that changes it.
 *
 * @param value  thousandths
 * @example
 * transposed(12892000, makeRegister({ id: 'import', digits: '5', decimals: '0', multiplyingFactor: '1' })).map(({ id }) => id) //=> ["21892","18292","12982","12829"]
 */
export function transposed(value: number, register: Register): readonly MisreadNumber[] {
  const shown = digitsOf(value, register);
  return Array.from({ length: shown.length - 1 }, (_, at) => at).flatMap((at) => {
    const [own, next] = [shown.charAt(at), shown.charAt(at + 1)];
    if (own === next) return [];
    return [misread(`${shown.slice(0, at)}${next}${own}${shown.slice(at + 2)}`, register)];
  });
}

/** A display whose digits after the point are read as if they stood before it; null where it has none. */
export function withoutPoint(value: number, { decimals }: Register): number | null {
  return decimals === 0 ? null : value * 10 ** decimals;
}

/** A display with a 0 too many at its end, whatever stands after the point left out. */
export const withZero = (value: number): number => Math.trunc(value / UNIT) * UNIT * 10;

/**
 * Whether one number is the other with one digit more somewhere, both without what stands after the point.
 */
export function isOneDigitLonger(longer: number, shorter: number): boolean {
  const [long, short] = [wholeText(longer), wholeText(shorter)];
  if (long.length !== short.length + 1) return false;
  return Array.from({ length: long.length }, (_, at) => long.slice(0, at) + long.slice(at + 1)).includes(
    short,
  );
}

const wholeText = (value: number): string => Math.trunc(value / UNIT).toString();

/**
 * A display with another digit in one of the places before the point, in every way.
 *
 * @param value  thousandths
 */
export function oneDigitWrong(value: number, register: Register): readonly number[] {
  const whole = Math.trunc(value / UNIT);
  return Array.from({ length: register.digits }, (_, place) => 10 ** place).flatMap((weight) => {
    const own = Math.trunc(whole / weight) % 10;
    return Array.from({ length: 10 }, (_, digit) => value + (digit - own) * weight * UNIT).filter(
      (other) => other !== value,
    );
  });
}
