import type { Charge } from '../../tariff/index.ts';
import type { Cause } from '../cause.ts';
import { chargeIds, chargeVariant } from '../changed-tariff.ts';
import { isNegative } from '../charge-basis.ts';

const ID = 'subsidy-dropped';
const NONE = '0';

/** A charge that comes to nothing: what other lines are worked out from it stays in its place. */
function ofNothing(charge: Charge): Charge {
  switch (charge.kind) {
    case 'per-unit':
      return { ...charge, rate: NONE };
    case 'fixed':
      return charge.steps === undefined
        ? { ...charge, amount: NONE }
        : { ...charge, steps: charge.steps.map((step) => ({ ...step, amount: NONE })) };
    case 'percentage':
      return charge.steps === undefined
        ? { ...charge, percent: NONE }
        : { ...charge, steps: charge.steps.map((step) => ({ ...step, percent: NONE })) };
    default:
      return charge;
  }
}

/** C39: a subsidy, a rebate or a payment for units made is left out. */
export const SUBSIDY_DROPPED: Cause = {
  id: ID,
  name: 'Subsidy or rebate dropped',
  stage: 'charges',
  evidence: ['an earlier bill with the line', 'the clause that grants it, and the category'],
  source: 'C39, Why a net-metered bill is wrong, or right but surprising, project reference, 2025',
  variants: (facts) => {
    const ids = chargeIds(facts.tariff, isNegative);
    const choices = ids.length > 1 ? [...ids.map((id) => [id]), ids] : ids.map((id) => [id]);
    return choices.flatMap((dropped) =>
      chargeVariant(
        facts,
        { cause: ID, id: dropped.join('+'), what: `Left out of the bill: ${dropped.join(', ')}` },
        (charge) => (dropped.includes(charge.id) && isNegative(charge) ? ofNothing(charge) : charge),
      ),
    );
  },
};
