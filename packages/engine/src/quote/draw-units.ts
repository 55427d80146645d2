import { calendarDay } from '../quantity/index.ts';
import type { Draw, DrawTerms } from './draw-terms.ts';
import type { LifeUnits } from './life-columns.ts';
import { takeUnits } from './life-units.ts';
import type { OwnUse } from './own-use/own-use.ts';
import type { QuoteInput } from './quote-input.ts';

/** A quote as draws vary it: percentages as parts of one. */
export interface DrawBasis {
  readonly input: QuoteInput;
  /** The rule of own use, quick enough for draws. */
  readonly own: OwnUse;
  readonly terms: DrawTerms;
  /** Wear of the first year and of each later one. */
  readonly wear: readonly [number, number];
}

/** A random number below this would turn a plant or a household around: it counts as this. */
const LEAST = 0;

/**
 * The units of every month of a life in one draw, rounded half-up to whole steps. The factors of a draw are
 * random doubles, and nothing of them is exact; bills of the units are.
 */
export function fillDrawnUnits({ input, own, terms, wear }: DrawBasis, draw: Draw, into: LifeUnits): void {
  const { start, years, use, generation, useFactors, unitStep: step, watts } = input;
  const offset = calendarDay(start).month - 1;
  const level = Math.max(LEAST, 1 + terms.generation * draw.generation);
  const used = Math.max(LEAST, 1 + terms.use * draw.use);
  const more = terms.degradation * draw.degradation;
  const [first, later] = [Math.max(0, wear[0] + more), Math.max(0, wear[1] + more)];
  let left = 1;
  for (let year = 0; year < years; year += 1) {
    const yearly = Math.max(LEAST, 1 + terms.yearToYear * (draw.yearly[year] as number));
    const made = level * yearly * left;
    const uses = used * (useFactors.doubles[year] as number);
    for (let month = 0; month < 12; month += 1) {
      const calendar = (offset + month) % 12;
      const at = year * 12 + month;
      into.generation[at] = Math.floor(((generation[calendar] as number) * made) / step + 0.5) * step;
      into.use[at] = Math.floor(((use[calendar] as number) * uses) / step + 0.5) * step;
    }
    left *= 1 - (year === 0 ? first : later);
  }
  takeUnits(into, own, watts);
}
