import { WIDTH, type LifeUnits } from '../life-columns.ts';
import type { ProfileMonth } from './profile.ts';
import { shareSteps } from './largest-remainder.ts';

/**
 * Writes the units of a month by time block, in whole steps of the quote by largest remainder: what was used and
 * made by the shape of the profile, then what was taken and given. No block takes more than it used, or gives more
 * than it made, and the blocks of each sum to the month.
 */
export class BlockUnits {
  /** What is taken and given in each block, in any unit: as large as one another is all that counts. */
  readonly taken: Float64Array;
  readonly given: Float64Array;
  private readonly used: Float64Array;
  private readonly made: Float64Array;
  private readonly step: number;

  constructor(blocks: number, step: number) {
    [this.taken, this.given] = [new Float64Array(blocks), new Float64Array(blocks)];
    [this.used, this.made] = [new Float64Array(blocks), new Float64Array(blocks)];
    this.step = step;
  }

  /** @param month  whose shape is taken; the plain columns are there */
  write(
    { use, generation, withPlant, withoutPlant, width }: LifeUnits,
    at: number,
    month: ProfileMonth,
  ): void {
    const { taken, given, used, made, step } = this;
    const { length: blocks } = taken;
    const row = at * width;
    const from = row + WIDTH;
    const whole = { weights: month.blockUse, into: used, from: 0, most: null };
    shareSteps(use[at] as number, step, whole);
    shareSteps(generation[at] as number, step, { ...whole, weights: month.blockGeneration, into: made });
    const into = withPlant;
    shareSteps(withPlant[row] as number, step, { into, from, weights: taken, most: used });
    shareSteps(withPlant[row + 1] as number, step, { into, from: from + blocks, weights: given, most: made });
    for (let block = 0; block < blocks; block += 1) {
      withPlant[from + 2 * blocks + block] = made[block] as number;
      withoutPlant[from + block] = used[block] as number;
    }
  }
}
