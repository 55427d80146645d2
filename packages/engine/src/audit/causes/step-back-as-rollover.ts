import type { Cause } from '../cause.ts';
import { withReadings } from '../readings-changed.ts';

/** C10: a reading a little below the one before, often after an estimate, is taken for a passed full scale. */
export const STEP_BACK_AS_ROLLOVER: Cause = {
  id: 'step-back-as-rollover',
  name: 'Small step back taken for a rollover',
  stage: 'readings',
  evidence: [
    'the bill before, whether its reading was estimated',
    'a photo that shows the reading and how many digits the display has',
  ],
  variants: (facts) =>
    Object.values(facts.registers)
      .filter(({ previous, present, passed }) => !passed && present < previous)
      .map(({ register: { key, id } }) => ({
        id: key,
        what: `The ${id} register fell back a little; it counts as if it had passed its full scale`,
        facts: withReadings(facts, { [key]: { passed: true } }),
      })),
};
