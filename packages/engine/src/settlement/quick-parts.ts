import {
  decimalPlaces,
  decimalToWhole,
  LARGEST_WHOLE,
  periodDays,
  roundQuotient,
  type Period,
} from '../quantity/index.ts';
import type { Definition } from '../tariff/index.ts';
import { daysOfShare } from './operations.ts';
import { ratioOf, timesRatio, type Ratio } from './quick-ratio.ts';
import type { QuickRun } from './quick-run.ts';
import type { PreparedStep } from './settle-context.ts';

/** Write a value times a ratio; false where it is none. */
function write(values: Float64Array, at: number, value: number, ratio: Ratio): boolean {
  const result = timesRatio(value, ratio);
  values[at] = result;
  return !Number.isNaN(result);
}

/** Products, exact while they stay below 2^53. */
export function quickProduct({
  definition,
  operands,
  at,
}: PreparedStep & { readonly definition: { readonly is: string } }): QuickRun {
  const numbers = operands.filter((operand) => operand.at < 0);
  const places = operands.filter((operand) => operand.at >= 0).map((operand) => operand.at);
  const top = numbers.reduce((product, { whole }) => product * whole, 1000);
  const bottom = numbers.reduce((product, { scale }) => product * scale, 1000 ** places.length);
  const rounding = 'rounding' in definition ? definition.rounding : undefined;
  const ratio = ratioOf(top, bottom, rounding);
  return (values) => {
    let product = 1;
    for (let index = 0; index < places.length; index += 1)
      product *= values[places[index] as number] as number;
    return Math.abs(product) <= LARGEST_WHOLE && write(values, at, product, ratio);
  };
}

/** One quantity divided by another that is above 0. */
export function quickQuotient(
  { rounding }: Definition & { is: 'quotient' },
  [top = 0, bottom = 0]: readonly number[],
  at: number,
): QuickRun {
  const places = decimalPlaces(rounding.step);
  const step = decimalToWhole(rounding.step, places);
  return (values) => {
    const [above, below] = [(values[top] as number) * 10 ** places, (values[bottom] as number) * step];
    if (!(below > 0 && Math.max(Math.abs(above), below) <= LARGEST_WHOLE / 2)) return false;
    values[at] = (roundQuotient(above, below, rounding.mode) * step * 1000) / 10 ** places;
    return true;
  };
}

/** A percentage of a sum. */
export function quickPercent(
  { percent, rounding }: Definition & { is: 'percent' },
  slots: readonly number[],
  at: number,
): QuickRun {
  const places = decimalPlaces(percent);
  const ratio = ratioOf(decimalToWhole(percent, places), 100 * 10 ** places, rounding);
  return (values) => {
    let sum = 0;
    for (let index = 0; index < slots.length; index += 1) sum += values[slots[index] as number] as number;
    return write(values, at, sum, ratio);
  };
}

interface ShareStep {
  readonly definition: Definition & { is: 'days-share' };
  readonly slots: readonly number[];
  readonly at: number;
}

/** A share of the days of a period. */
export function quickDaysShare({ definition, slots, at }: ShareStep, period: Period): QuickRun {
  const ratio = ratioOf(daysOfShare(definition, period), periodDays(period), definition.rounding);
  const [of = 0] = slots;
  return (values) => write(values, at, values[of] as number, ratio);
}
