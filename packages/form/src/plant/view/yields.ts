import {
  addDays,
  capacityOn,
  decimalToWhole,
  isOutage,
  roundLargeQuotient,
  type DayNumber,
  type Period,
  type Plant,
  type PlantMonth,
  type Quotient,
} from '@unitbook/engine';

/** Yields are drawn in ten-thousandths of a unit per kWp and day: whole numbers, rounded half-up. */
export const YIELD_PLACES = 4;
const SCALE = 10_000n;

/** A quotient of whole numbers in ten-thousandths. */
function tenThousandths(numerator: number | bigint, denominator: number | bigint): number {
  const whole = roundLargeQuotient(BigInt(numerator) * SCALE, BigInt(denominator), 'half-up');
  return Number.parseInt(whole.toString(), 10);
}

/** A figure in ten-thousandths; null without one. */
export function yieldOf(figure: Quotient | null): number | null {
  return figure === null ? null : tenThousandths(figure.numerator, figure.denominator);
}

/** What a day made, in ten-thousandths of a unit per kWp; null where there was no plant. */
export function dayYield(wattHours: number, day: DayNumber, plant: Plant): number | null {
  const watts = capacityOn(plant, day);
  return watts === 0 ? null : tenThousandths(wattHours, watts);
}

/** Watts times days in service of a period. */
function wattDays({ from, to }: Period, plant: Plant): number {
  let sum = 0;
  for (let day = from; day < to; day = addDays(day, 1))
    if (!isOutage(plant, day)) sum += capacityOn(plant, day);
  return sum;
}

/** What is expected of a period, with one sigma to either side, in ten-thousandths. */
export interface YieldBand extends Period {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/** One sigma in tenths of a percent of the expectation: 1000 is all of it. */
const WHOLE = 1000;

/** The band of a period; null where nothing is expected of it. */
export function bandOf({ period, expected, judged }: PlantMonth, plant: Plant): YieldBand | null {
  const days = wattDays(period, plant);
  if (expected === null || judged === null || days === 0) return null;
  // kWh times 1000 over watt-days: units per kWp and day.
  const top = BigInt(expected.numerator) * 1000n;
  const bottom = BigInt(expected.denominator) * BigInt(days);
  const sigma = decimalToWhole(judged.sigmaPercent, 1);
  const at = (share: number): number => tenThousandths(top * BigInt(share), bottom * BigInt(WHOLE));
  return { ...period, low: at(Math.max(0, WHOLE - sigma)), middle: at(WHOLE), high: at(WHOLE + sigma) };
}
