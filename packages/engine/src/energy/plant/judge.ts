import type { Figure, Quotient } from '../../quantity/index.ts';
import { meterLimit } from '../meter-accuracy.ts';
import { rootText } from '../whole-root.ts';
import type { Plant } from './plant.ts';

/** How a period is judged. */
export type Judgement = 'fine' | 'watch' | 'look-at-it' | 'cannot-be-told';

/** A judgement and what it rests on. */
export interface Judged {
  readonly judgement: Judgement;
  /** Which side of the expectation it lies on; null where nothing is to be told. */
  readonly side: 'below' | 'above' | null;
  /** The square of one sigma as a part of the expectation, exact. */
  readonly sigmaSquared: Quotient;
  /** One sigma in percent, rounded for reading. */
  readonly sigmaPercent: string;
  /** How many sigma from the expectation, rounded for reading; below it with a minus sign. */
  readonly sigmas: string;
}

/** One sigma of a month without local data, in hundredths of a percent: at least 10 %. Our own rule. */
const WITHOUT_LOCAL_DATA = 1000;
/** Sigma is a month's; of fewer days in service its square grows as they shrink. Our own rule. */
const MONTH_DAYS = 28;

/** What makes one sigma. */
export interface Doubt {
  readonly plant: Pick<Plant, 'yearToYear' | 'meterClass'>;
  /** Days in service. */
  readonly days: number;
  /** Earlier years that the expectation is the mean of; 0: a table. */
  readonly years: number;
}

/**
 * The square of one sigma, in parts of the expectation: weather from year to year (over the mean of k
 * earlier years, 1 + 1/k times), and the limit of the meter's class.
 */
function sigmaSquared({ plant, days, years }: Doubt): readonly [bigint, bigint] {
  const weather = BigInt(plant.yearToYear ?? WITHOUT_LOCAL_DATA);
  const limit = plant.meterClass === null ? 0 : (meterLimit(plant.meterClass)?.usual ?? 0);
  const meter = BigInt(limit);
  const [k, spread] = years === 0 ? [1n, 1n] : [BigInt(years), BigInt(years) + 1n];
  const [whole, part] = days < MONTH_DAYS ? [BigInt(MONTH_DAYS), BigInt(days)] : [1n, 1n];
  // Hundredths of a percent squared: 10^8 in one.
  return [weather * weather * spread * whole + meter * meter * k * part, 100_000_000n * k * part];
}

function judgementOf(isBelow: boolean, isBeyond: (sigmas: bigint) => boolean): Judgement {
  if (isBeyond(2n)) return 'look-at-it';
  return isBelow && isBeyond(1n) ? 'watch' : 'fine';
}

/**
 * Judge what a plant made by what was expected. With z = (made − expected) ÷ (sigma × expected): watch below
 * z = −1, look at it below z = −2 and above z = 2. Our own rule. Compared are the squares, exactly.
 *
 * @param made      in kWh
 * @param expected  in kWh, above 0
 */
export function judge(made: Figure, expected: Figure, doubt: Doubt): Judged {
  const bottom = BigInt(expected.numerator) * BigInt(made.denominator);
  const difference = BigInt(made.numerator) * BigInt(expected.denominator) - bottom;
  const [top, under] = sigmaSquared(doubt);
  const isBelow = difference < 0n;
  const square = difference * difference * under;
  const one = bottom * bottom * top;
  const judgement = judgementOf(isBelow, (sigmas) => square > sigmas * sigmas * one);
  return {
    judgement,
    side: judgement === 'fine' ? null : isBelow ? 'below' : 'above',
    sigmaSquared: { numerator: top, denominator: Number.parseInt(under.toString(), 10) },
    sigmaPercent: rootText(top * 10_000n, under, 1),
    sigmas: `${isBelow ? '-' : ''}${rootText(square, one, 2)}`,
  };
}
