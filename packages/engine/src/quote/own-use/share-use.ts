import type { LifeUnits } from '../life-columns.ts';
import type { Share } from '../quote-input.ts';
import { NO_BLOCKS, NO_SHAPE, type OwnUse } from './own-use.ts';

/** A share of the generation, and the step that units are rounded to. */
export interface ShareTerms {
  readonly share: Share;
  readonly step: number;
}

/**
 * Units used at home: the share, rounded half-up to whole steps, never more than was used or made.
 *
 * @param made  thousandths, and
 * @param used  thousandths, both whole steps
 * @example
 * selfUsed(510_000, 520_000, { share: { numerator: 38, denominator: 100 }, step: 1000 }) //=> 194000
 */
export function selfUsed(made: number, used: number, { share, step }: ShareTerms): number {
  const bottom = share.denominator * step;
  const own = Math.floor((2 * made * share.numerator + bottom) / (2 * bottom)) * step;
  return Math.min(own, used, made);
}

/** Own use as a share of the generation of each month, for want of anything that tells when units are used. */
export class ShareUse implements OwnUse {
  readonly blocks = NO_BLOCKS;
  readonly measures = NO_BLOCKS;
  readonly shape = NO_SHAPE;
  private readonly terms: ShareTerms;

  constructor(share: Share, step: number) {
    this.terms = { share, step };
  }

  take({ use, generation, selfUse, withPlant, withoutPlant, width }: LifeUnits): void {
    const { terms } = this;
    for (let at = 0; at < use.length; at += 1) {
      const made = generation[at] as number;
      const used = use[at] as number;
      const own = selfUsed(made, used, terms);
      selfUse[at] = own;
      withPlant[at * width] = used - own;
      withPlant[at * width + 1] = made - own;
      withPlant[at * width + 2] = made;
      withoutPlant[at * width] = used;
    }
  }

  kept(_period: unknown, made: number, used: number): number {
    return selfUsed(made, used, this.terms);
  }

  delivered(_period: unknown, made: number, used: number): number {
    return selfUsed(made, used, this.terms);
  }

  forDraws(): OwnUse {
    return this;
  }
}
