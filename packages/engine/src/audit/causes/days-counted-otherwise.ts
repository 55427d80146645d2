import { addDays, periodDays, type Quotient } from '../../quantity/index.ts';
import type { Cause, CauseContext, Variant } from '../cause.ts';
import type { BillFacts } from '../facts.ts';

/** A bill of more days than this is of another kind: see the causes of slabs. */
const MOST_DAYS = 400;

function wholeOf({ numerator, denominator }: Quotient): number | null {
  if (typeof numerator === 'bigint' || numerator % denominator !== 0) return null;
  return numerator / denominator;
}

/** The same readings over other days: the period begins earlier or later. */
function ofDays(facts: BillFacts, days: number, words: Pick<Variant, 'id' | 'what' | 'fitted'>): Variant {
  const { to } = facts.period;
  return { ...words, facts: { ...facts, period: { from: addDays(to, -days), to } } };
}

/** Days that the bill prints, where they are not those between both readings. */
function printedDays(facts: BillFacts, { printed }: CauseContext): readonly Variant[] {
  const shown = printed.get('days');
  const days = shown === undefined ? null : wholeOf(shown);
  const own = periodDays(facts.period);
  if (days === null || days < 1 || days > MOST_DAYS || Math.abs(days - own) < 2) return [];
  const what =
    days > own
      ? `Billed for ${days} days, of which ${days - own} belong to the bill before`
      : `Billed for ${days} days, ${own - days} fewer than between both readings`;
  return [ofDays(facts, days, { id: `${days} days`, what, fitted: ['days'] })];
}

/** C41: days are counted that belong to another bill, or days are missing, while the readings follow each other. */
export const DAYS_COUNTED_OTHERWISE: Cause = {
  id: 'days-counted-otherwise',
  name: 'Overlapping or missing days',
  stage: 'account',
  evidence: ['both bills: the first day of one has to be the last day of the other'],
  source: 'C41, Why a net-metered bill is wrong, or right but surprising, project reference, 2025',
  variants: (facts, context) => {
    const days = periodDays(facts.period);
    return [
      ofDays(facts, days + 1, { id: 'both-ends', what: 'Both days of reading are counted' }),
      ...(days > 1
        ? [ofDays(facts, days - 1, { id: 'neither-end', what: 'One day too few is counted' })]
        : []),
      ...printedDays(facts, context),
    ];
  },
};
