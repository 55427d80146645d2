import { decimalToWhole, type Quotient } from '../quantity/index.ts';
import type { AccuracyClass } from '../readings/index.ts';
import { rootText } from './whole-root.ts';

/**
 * The largest error a meter of a class may have, in hundredths of a percent: at low and at usual current,
 * power factor 1. `isFromMemory`: the standard's text was not at hand.
 */
export interface MeterLimit {
  readonly low: number;
  readonly usual: number;
  readonly source: string;
  readonly isFromMemory: boolean;
}

const IEC_21 = 'IEC 62053-21:2003, direct connection';
const IEC_22 = 'IEC 62053-22:2003';
const EU = 'Directive 2014/32/EU, Annex V, Table 2, +5 to +30 °C';

/**
 * The limits of the known classes.
 *
 * IEC 62053-21 changes from the low to the usual limit at a tenth of the basic current, IEC 62053-22 at a
 * twentieth of the rated current, the directive at the transitional current.
 *
 * @source  Directive 2014/32/EU, Annex V, 2014. IEC 62053-21 and IEC 62053-22, 2003: from memory
 */
export const METER_LIMITS = {
  '0.2S': { low: 40, usual: 20, source: IEC_22, isFromMemory: true },
  '0.5S': { low: 100, usual: 50, source: IEC_22, isFromMemory: true },
  '1': { low: 150, usual: 100, source: IEC_21, isFromMemory: true },
  '2': { low: 250, usual: 200, source: IEC_21, isFromMemory: true },
  A: { low: 350, usual: 350, source: EU, isFromMemory: false },
  B: { low: 200, usual: 200, source: EU, isFromMemory: false },
  C: { low: 100, usual: 70, source: EU, isFromMemory: false },
} as const satisfies Readonly<Record<AccuracyClass, MeterLimit>>;

/**
 * The limits of a class as it stands on a meter's plate.
 *
 * @returns null for a class that is not known
 * @example
 * meterLimit('0.5S').usual //=> 50
 * meterLimit('3') //=> null
 */
export function meterLimit(classText: string): MeterLimit | null {
  return Object.hasOwn(METER_LIMITS, classText) ? METER_LIMITS[classText as AccuracyClass] : null;
}

/** What one meter counted, and the class on its plate. */
export interface MeteredPart {
  /** Whole watt-hours; below 0 where the part is taken off. */
  readonly wattHours: number;
  readonly classText: string;
}

/** How far a sum of what meters counted can be off. */
export interface MeterBand {
  /** The sum itself, in whole watt-hours. */
  readonly wattHours: number;
  /** Every limit reached at once and in the same sense: in watt-hours, exact. */
  readonly worst: Quotient;
  /** The square of the root of the sum of squares of the limits: in watt-hours squared, exact. */
  readonly rootSumSquared: Quotient;
}

/** Hundredths of a percent in one. */
const HUNDREDTHS = 10_000;

/**
 * How far a sum or a difference of metered energy can be off, by the limits of the meters' classes.
 *
 * The root of the sum of squares takes the meters for independent. It is kept as its square, which is exact;
 * `meterBandText` rounds the root for reading. Temperature, power factor and wear are left out.
 *
 * @param parts    energies with their class; what is taken off has a minus sign
 * @param current  which limit holds: of usual current, where most energy passes, or of low
 * @returns        null when a class is not known
 * @source JCGM 100:2008 (GUM) for the root of the sum of squares
 * @example
 * meterBand([{ wattHours: 400000, classText: '1' }, { wattHours: -280000, classText: '1' }]).worst //=> {"numerator":68000000,"denominator":10000}
 */
export function meterBand(
  parts: readonly MeteredPart[],
  current: 'low' | 'usual' = 'usual',
): MeterBand | null {
  let sum = 0;
  let worst = 0n;
  let squares = 0n;
  for (const { wattHours, classText } of parts) {
    const limit = meterLimit(classText);
    if (limit === null) return null;
    const most = BigInt(Math.abs(wattHours)) * BigInt(limit[current]);
    sum += wattHours;
    worst += most;
    squares += most * most;
  }
  return {
    wattHours: sum,
    worst: { numerator: plain(worst), denominator: HUNDREDTHS },
    rootSumSquared: { numerator: plain(squares), denominator: HUNDREDTHS * HUNDREDTHS },
  };
}

/** A large whole number as a plain one where it fits. */
function plain(value: bigint): number | bigint {
  const most = BigInt(Number.MAX_SAFE_INTEGER);
  return value > most ? value : decimalToWhole(value.toString(), 0);
}

/** A band in words: kWh with two decimals, and of the root of squares the percentage of the sum. */
export interface MeterBandText {
  readonly worst: string;
  readonly rootSum: string;
  /** Percent of the sum with two decimals; null where the sum is 0. */
  readonly rootSumPercent: string | null;
  readonly worstPercent: string | null;
}

/**
 * A band rounded half-up for reading.
 *
 * @example
 * meterBandText(meterBand([{ wattHours: 400000, classText: '1' }, { wattHours: -280000, classText: '1' }])).rootSum //=> "4.88"
 */
export function meterBandText({ wattHours, worst, rootSumSquared }: MeterBand): MeterBandText {
  const [worstTop, worstBottom] = [BigInt(worst.numerator), BigInt(worst.denominator)];
  const [squareTop, squareBottom] = [BigInt(rootSumSquared.numerator), BigInt(rootSumSquared.denominator)];
  const sum = BigInt(wattHours);
  const kiloSquared = 1_000_000n;
  const percent = (top: bigint, bottom: bigint): string | null =>
    sum === 0n ? null : rootText(top * 10_000n, bottom * sum * sum, 2);
  return {
    worst: rootText(worstTop * worstTop, worstBottom * worstBottom * kiloSquared, 2),
    rootSum: rootText(squareTop, squareBottom * kiloSquared, 2),
    rootSumPercent: percent(squareTop, squareBottom),
    worstPercent: percent(worstTop * worstTop, worstBottom * worstBottom),
  };
}
