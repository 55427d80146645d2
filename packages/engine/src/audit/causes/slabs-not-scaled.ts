import { periodDays } from '../../quantity/index.ts';
import type { TariffDocument } from '../../tariff/index.ts';
import type { Cause, Variant } from '../cause.ts';
import { tariffVariant } from '../changed-tariff.ts';
import { isScaledByDays, unscaledVariants } from '../day-scaling.ts';
import type { BillFacts } from '../facts.ts';
import { ABOUT_ONE_MONTH } from './months-billed-as-one.ts';

const ID = 'slabs-not-scaled';

/** Every day rule without the days for which it scales nothing. */
function alwaysScaled(document: TariffDocument): TariffDocument | null {
  const rules = Object.entries(document.dayRules ?? {});
  if (!rules.some(([, { unscaledFrom }]) => unscaledFrom !== undefined)) return null;
  const dayRules = Object.fromEntries(
    rules.map(([name, rule]) => [name, { ...rule, unscaledFrom: undefined, unscaledThrough: undefined }]),
  );
  return { ...document, dayRules };
}

/** Days near a month that nothing is to be scaled to, scaled all the same. */
function scaledNearMonth(facts: BillFacts): readonly Variant[] {
  if (isScaledByDays(facts)) return [];
  const what = `Scaled to ${periodDays(facts.period)} days, for which nothing is scaled`;
  return tariffVariant(facts, { cause: ID, id: 'near-month', what }, alwaysScaled);
}

/** C27: limits of slabs, fixed charges or subsidies are not scaled to the days of the bill, or scaled without need. */
export const SLABS_NOT_SCALED: Cause = {
  id: ID,
  name: 'Not scaled to billing days',
  stage: 'slabs',
  evidence: ['both days of reading on the bill', 'the clause that scales limits and amounts to days'],
  source: 'C27, Why a net-metered bill is wrong, or right but surprising, project reference, 2025',
  variants: (facts) => [
    ...(periodDays(facts.period) > ABOUT_ONE_MONTH ? [] : unscaledVariants(facts, ID)),
    ...scaledNearMonth(facts),
  ],
};
