import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { decimalPlaces, decimalToWhole } from '../quantity/index.ts';
import type { QuoteDocument } from './document/quote-document.ts';
import { normalQuantile } from './finance/index.ts';

/** How uncertain each input is: parts of one, but for rises and wear, which are added. */
export interface DrawTerms {
  readonly generation: number;
  readonly yearToYear: number;
  readonly use: number;
  readonly escalation: number;
  readonly degradation: number;
  /** Correlation of use and rises. */
  readonly correlation: number;
  /** Chance that the policy comes within the life. */
  readonly policy: number;
  readonly seed: number;
}

/** What is drawn once: each a number of standard deviations, but for the policy. */
export interface Draw {
  generation: number;
  use: number;
  escalation: number;
  degradation: number;
  /** Years before the policy; the whole life or more: it does not come. */
  policyAfter: number;
  /** Of each year against the mean of all. */
  readonly yearly: Float64Array;
}

const parsed = (text: string | undefined, divide: number): number => {
  if (text === undefined) return 0;
  const places = decimalPlaces(text);
  return decimalToWhole(text, places) / (divide * 10 ** places);
};

/** The uncertainties of a quote; all 0 where it gives none. */
export function drawTerms({ uncertainty }: QuoteDocument): DrawTerms {
  const part = (text: string | undefined): number => parsed(text, 100);
  return {
    generation: part(uncertainty?.generation),
    yearToYear: part(uncertainty?.yearToYear),
    use: part(uncertainty?.use),
    escalation: part(uncertainty?.escalation),
    degradation: part(uncertainty?.degradation),
    correlation: parsed(uncertainty?.useWithEscalation, 1),
    policy: part(uncertainty?.policy?.percent),
    seed: parsed(uncertainty?.seed ?? '1', 1),
  };
}

/** Room for a draw of a life. */
export function makeDraw(years: number): Draw {
  return {
    generation: 0,
    use: 0,
    escalation: 0,
    degradation: 0,
    policyAfter: years,
    yearly: new Float64Array(years),
  };
}

/** Draws of one block: the same seed and block give the same draws, whoever works them out. */
export interface DrawSource {
  readonly next: (into: Draw) => void;
}

const TWO_32 = 2 ** 32;

/**
 * Random draws of a block, from the generator xoroshiro128+ (D. Blackman and S. Vigna, Scrambled linear
 * pseudorandom number generators, 2018), jumped ahead by 2^64 numbers for each block.
 *
 * @param block  from 0 on
 * @param years  of the life
 */
export function drawSource(
  { seed, correlation, policy }: DrawTerms,
  block: number,
  years: number,
): DrawSource {
  const generator = xoroshiro128plus(seed);
  for (let at = 0; at < block; at += 1) generator.jump();
  const uniform = (): number => ((generator.next() >>> 0) + 0.5) / TWO_32;
  const normal = (): number => normalQuantile(uniform());
  const rest = Math.sqrt(Math.max(0, 1 - correlation * correlation));
  return {
    next: (into) => {
      into.generation = normal();
      into.use = normal();
      into.escalation = correlation * into.use + rest * normal();
      into.degradation = normal();
      const comes = uniform();
      const when = uniform();
      into.policyAfter = comes < policy ? Math.floor(when * years) : years;
      for (let year = 0; year < years; year += 1) into.yearly[year] = normal();
    },
  };
}
