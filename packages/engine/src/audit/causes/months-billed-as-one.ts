import { periodDays } from '../../quantity/index.ts';
import type { Cause } from '../cause.ts';
import { unscaledVariants } from '../day-scaling.ts';

const ID = 'months-billed-as-one';

/** A bill of more days than this holds more than one month. */
export const ABOUT_ONE_MONTH = 45;

/** C28: several months are billed as one, so that more units reach the upper slabs. */
export const MONTHS_BILLED_AS_ONE: Cause = {
  id: ID,
  name: 'Several months billed as one',
  stage: 'slabs',
  evidence: [
    'both days of reading on the bill',
    'that no bill came for the month before, or that it was estimated',
    'the clause that scales limits and amounts to days',
  ],
  source: 'C28, Why a net-metered bill is wrong, or right but surprising, project reference, 2025',
  variants: (facts) => (periodDays(facts.period) > ABOUT_ONE_MONTH ? unscaledVariants(facts, ID) : []),
};
