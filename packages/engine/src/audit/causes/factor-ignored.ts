import type { Cause } from '../cause.ts';
import { FACTOR_ONE, withFactor } from '../factor-changed.ts';

/** C03: the multiplying factor of the two-way meter was left out. */
export const FACTOR_IGNORED: Cause = {
  id: 'factor-ignored',
  name: 'Multiplying factor ignored',
  stage: 'readings',
  evidence: [
    'a photo of the nameplate with the ratio of the current transformers',
    'the report of the sealing or of the commissioning, which names the factor',
  ],
  variants: (facts, context) => {
    const changed = withFactor(facts, context, ['import', 'export'], () => FACTOR_ONE);
    return changed === null
      ? []
      : [
          {
            id: 'both',
            what: 'Import and export count as displayed, not times the multiplying factor',
            facts: changed,
          },
        ];
  },
};
