import type { Cause } from '../cause.ts';
import { FACTOR_ONE, withFactor } from '../factor-changed.ts';

const WAYS = [
  {
    left: 'export',
    id: 'import',
    what: 'Import counts times the multiplying factor, export as displayed',
  },
  {
    left: 'import',
    id: 'export',
    what: 'Export counts times the multiplying factor, import as displayed',
  },
] as const;

/** C05: the multiplying factor was applied to one register of the two-way meter alone. */
export const FACTOR_ON_ONE_REGISTER: Cause = {
  id: 'factor-on-one-register',
  name: 'Multiplying factor on one register only',
  stage: 'readings',
  evidence: [
    'a photo of both displays beside the printed units',
    'a photo of the nameplate with the ratio of the current transformers',
  ],
  variants: (facts, context) =>
    WAYS.flatMap(({ left, id, what }) => {
      const changed = withFactor(facts, context, [left], () => FACTOR_ONE);
      return changed === null ? [] : [{ id, what, facts: changed }];
    }),
};
