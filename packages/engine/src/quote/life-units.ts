import { calendarDay, dayNumber, type Period } from '../quantity/index.ts';
import { timesRounded } from './factors.ts';
import type { QuoteInput, Share } from './quote-input.ts';

/** What the units of a life are made from; other cases replace single parts. */
export type UnitsBasis = Pick<
  QuoteInput,
  | 'start'
  | 'years'
  | 'use'
  | 'generation'
  | 'share'
  | 'useFactors'
  | 'generationFactors'
  | 'unitStep'
  | 'watts'
>;

/** Units of every month of a life, in whole thousandths, in columns. */
export interface LifeUnits {
  readonly use: Float64Array;
  readonly generation: Float64Array;
  readonly selfUse: Float64Array;
  /** import, export, generation, plant-capacity: a row for each month. */
  readonly withPlant: Float64Array;
  /** The same without the plant: everything is taken from the grid. */
  readonly withoutPlant: Float64Array;
}

/** The columns of a row of units. */
export const UNIT_COLUMNS = ['import', 'export', 'generation', 'plant-capacity'] as const;
/** Columns of a row. */
export const WIDTH: number = UNIT_COLUMNS.length;

/** Room for the units of so many months. */
export function makeLifeUnits(months: number): LifeUnits {
  return {
    use: new Float64Array(months),
    generation: new Float64Array(months),
    selfUse: new Float64Array(months),
    withPlant: new Float64Array(months * WIDTH),
    withoutPlant: new Float64Array(months * WIDTH),
  };
}

/** The billing periods of a life: calendar months from its first day on. */
export function lifePeriods({ start, years }: Pick<QuoteInput, 'start' | 'years'>): readonly Period[] {
  const { year, month } = calendarDay(start);
  const first = (at: number) =>
    dayNumber({ year: year + Math.floor((month - 1 + at) / 12), month: ((month - 1 + at) % 12) + 1, day: 1 });
  return Array.from({ length: years * 12 }, (_, at) => ({ from: first(at), to: first(at + 1) }));
}

/** Units used at home: the share, rounded half-up to whole steps, never more than was used or made. */
export function selfUsed(
  made: number,
  used: number,
  { share, step }: { readonly share: Share; readonly step: number },
): number {
  const bottom = share.denominator * step;
  const own = Math.floor((2 * made * share.numerator + bottom) / (2 * bottom)) * step;
  return Math.min(own, used, made);
}

/**
 * The units of every month of a life: use and generation by their factors, rounded half-up to whole steps, then
 * what is used at home, taken and given.
 *
 * @param share   of the generation used at home
 * @param into    receives them
 */
export function fillUnits(basis: UnitsBasis, share: Share, into: LifeUnits): void {
  const { years, use, generation, useFactors, generationFactors, unitStep: step, watts } = basis;
  const offset = calendarDay(basis.start).month - 1;
  for (let year = 0; year < years; year += 1) {
    const made = {
      double: generationFactors.doubles[year] as number,
      exact: generationFactors.exact[year] as (typeof generationFactors.exact)[number],
      step,
    };
    const used = {
      double: useFactors.doubles[year] as number,
      exact: useFactors.exact[year] as (typeof useFactors.exact)[number],
      step,
    };
    for (let month = 0; month < 12; month += 1) {
      const calendar = (offset + month) % 12;
      const at = year * 12 + month;
      into.generation[at] = timesRounded(generation[calendar] as number, made);
      into.use[at] = timesRounded(use[calendar] as number, used);
      takeMonth(into, at, { share, step, watts });
    }
  }
}

/** What is used at home, taken and given in a month whose use and generation are known. */
export function takeMonth(
  { use, generation, selfUse, withPlant, withoutPlant }: LifeUnits,
  at: number,
  terms: { readonly share: Share; readonly step: number; readonly watts: number },
): void {
  const made = generation[at] as number;
  const used = use[at] as number;
  const own = selfUsed(made, used, terms);
  selfUse[at] = own;
  withPlant[at * WIDTH] = used - own;
  withPlant[at * WIDTH + 1] = made - own;
  withPlant[at * WIDTH + 2] = made;
  withPlant[at * WIDTH + 3] = terms.watts;
  withoutPlant[at * WIDTH] = used;
}
