import type { Cause } from '../cause.ts';
import { chargeVariant } from '../changed-tariff.ts';

const ID = 'minimum-on-top';

/** C35: the minimum charge is added on top although the lines reach it, or in full where only a part is missing. */
export const MINIMUM_ON_TOP: Cause = {
  id: ID,
  name: 'Minimum charge added on top',
  stage: 'charges',
  evidence: ['the clause of the minimum charge', 'the fixed and energy lines of the bill'],
  source: 'C35, Why a net-metered bill is wrong, or right but surprising, project reference, 2025',
  variants: (facts) =>
    chargeVariant(
      facts,
      {
        cause: ID,
        id: 'added',
        what: 'The whole minimum charge is added to the lines that it is the least of',
      },
      (charge) => {
        if (charge.kind !== 'minimum') return charge;
        const { id, label, clause, amount, rounding, season, inTotal, scaledBy } = charge;
        return { kind: 'fixed', id, label, clause, amount, rounding, season, inTotal, scaledBy };
      },
    ),
};
