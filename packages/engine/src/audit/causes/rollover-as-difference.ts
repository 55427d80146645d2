import type { Cause } from '../cause.ts';
import { countedBy, isPossible, withCounts } from '../readings-changed.ts';

/** C09: a counter that passed its full scale is taken for a huge number of units, or for a negative one. */
export const ROLLOVER_AS_DIFFERENCE: Cause = {
  id: 'rollover-as-difference',
  name: 'Rollover taken for a difference',
  stage: 'readings',
  evidence: [
    'a photo that shows how many digits the display has',
    'the day on which the meter was commissioned: whether it can have counted so much',
  ],
  variants: (facts) =>
    Object.values(facts.registers)
      .filter(({ previous, present, passed }) => passed && present < previous)
      .flatMap((own) => {
        const { register, previous, present } = own;
        const back = countedBy({ ...own, previous: present, present: previous, passed: false }, facts);
        const changed = withCounts(facts, { [register.key]: back });
        const what = `The ${register.id} register passed its full scale; the smaller number is taken off the larger one`;
        return isPossible(changed) ? [{ id: register.key, what, facts: changed }] : [];
      }),
};
