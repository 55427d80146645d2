import type { Cause } from '../cause.ts';
import { squaredFactor, withFactor } from '../factor-changed.ts';

/** C04: the multiplying factor of the two-way meter was applied twice. */
export const FACTOR_SQUARED: Cause = {
  id: 'factor-squared',
  name: 'Multiplying factor applied twice',
  stage: 'readings',
  evidence: [
    'a photo of the display beside the printed units',
    'a photo of the nameplate with the ratio of the current transformers',
    'the report of the sealing or of the commissioning, which names the factor',
  ],
  variants: (facts, context) => {
    const changed = withFactor(facts, context, ['import', 'export'], squaredFactor);
    return changed === null
      ? []
      : [
          {
            id: 'both',
            what: 'Import and export count times the multiplying factor, and times it once more',
            facts: changed,
          },
        ];
  },
};
