import { calendarDay } from '../quantity/index.ts';
import { timesRounded } from './factors.ts';
import type { LifeUnits } from './life-columns.ts';
import type { OwnUse } from './own-use/own-use.ts';
import { ownUseOf } from './own-use/own-use-of.ts';
import type { QuoteInput, Share } from './quote-input.ts';

/** What the units of a life are made from; other cases replace single parts. */
export type UnitsBasis = Pick<
  QuoteInput,
  | 'document'
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

/** The column of the plant's capacity. */
const CAPACITY = 3;

/**
 * The units of every month of a life: use and generation by their factors, rounded half-up to whole steps, then
 * what is used at home, taken and given.
 *
 * @param own   the rule of own use; a share: of the generation, with the battery of the document, if it has one
 * @param into  receives them, with room for the columns of the rule
 */
export function fillUnits(basis: UnitsBasis, own: OwnUse | Share, into: LifeUnits): void {
  fillYears(basis, into);
  const isRule = 'take' in own;
  const rule = isRule ? own : ownUseOf({ input: basis, share: own, profile: null, hasBattery: true });
  takeUnits(into, rule, basis.watts);
}

/** What is made and used in every month. */
function fillYears(basis: UnitsBasis, into: LifeUnits): void {
  const { years, use, generation, useFactors, generationFactors, unitStep: step } = basis;
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
    }
  }
}

/** What is used at home, taken and given in months whose use and generation are known. */
export function takeUnits(into: LifeUnits, own: OwnUse, watts: number): void {
  const { withPlant, width } = into;
  own.take(into);
  for (let at = CAPACITY; at < withPlant.length; at += width) withPlant[at] = watts;
}
