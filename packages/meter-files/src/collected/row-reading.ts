import type { DayNumber } from '@unitbook/engine';
import type { RegisterValue } from '../stream.ts';
import type { RegisterSeries } from './register-list.ts';
import type { ChosenRegister } from './register-selection.ts';

/** A register, and what it showed. */
export interface RowReading {
  readonly register: ChosenRegister;
  readonly reading: RegisterValue;
}

/** A reading of a day alone stands before those of a minute. */
const place = (minute: number | null): number => minute ?? -1;

/** The readings of a register on a day, in order of time. */
function readingsOn({ readings }: RegisterSeries, day: DayNumber): readonly RegisterValue[] {
  let [low, high] = [0, readings.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((readings[middle] as RegisterValue).day < day) low = middle + 1;
    else high = middle;
  }
  let end = low;
  while (readings[end]?.day === day) end += 1;
  return readings.slice(low, end);
}

/**
 * The minute of a day at which most registers were read, the earliest of several.
 *
 * @returns null for the day alone
 */
export function rowMinute(registers: readonly RegisterSeries[], day: DayNumber): number | null {
  const counts = new Map<number | null, number>();
  for (const register of registers)
    for (const { minute } of readingsOn(register, day)) counts.set(minute, (counts.get(minute) ?? 0) + 1);
  const best = [...counts].sort(([a, countA], [b, countB]) => countB - countA || place(a) - place(b))[0];
  return best?.[0] ?? null;
}

/** What a register showed on a day: at a minute, or else at the one nearest to it; null for none. */
export function rowReading(
  register: ChosenRegister,
  day: DayNumber,
  minute: number | null,
): RowReading | null {
  const all = readingsOn(register, day);
  const far = (reading: RegisterValue): number => Math.abs(place(reading.minute) - place(minute));
  const [first, ...others] = all;
  if (first === undefined) return null;
  return { register, reading: others.reduce((best, one) => (far(one) < far(best) ? one : best), first) };
}
