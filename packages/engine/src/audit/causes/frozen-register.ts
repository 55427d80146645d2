import type { Cause } from '../cause.ts';
import type { BillFacts } from '../facts.ts';
import { registersOfChannels, withReadings } from '../readings-changed.ts';

const GROUPS = [
  { id: 'import', channels: ['import'], what: 'The import register was read where the last bill left it' },
  {
    id: 'grid',
    channels: ['import', 'export'],
    what: 'Import and export were read where the last bill left them',
  },
  {
    id: 'all',
    channels: ['import', 'export', 'generation'],
    what: 'Every register was read where the last bill left it',
  },
] as const;

/** Every register of a group that moved, as if it had not. */
function frozen(facts: BillFacts, channels: (typeof GROUPS)[number]['channels']): BillFacts | null {
  const moved = registersOfChannels(facts, channels).filter(({ previous, present }) => previous !== present);
  const [first] = moved;
  // What froze of one group alone is the same bill as that of a smaller one.
  if (first === undefined || !channels.every((id) => moved.some(({ register }) => register.id === id)))
    return null;
  const changes = moved.map(
    ({ register, previous }) => [register.key, { present: previous, passed: false }] as const,
  );
  return withReadings(facts, Object.fromEntries(changes));
}

/** C19: the screen of the last bill was read in place of the live register: nothing counts, next month doubles. */
export const FROZEN_REGISTER: Cause = {
  id: 'frozen-register',
  name: 'Screen of the last bill read',
  stage: 'readings',
  evidence: [
    'a photo of the display with the code of the screen',
    'the list of screens in the meter guide',
    'the next bill, which carries both months',
  ],
  variants: (facts) =>
    GROUPS.flatMap(({ id, channels, what }) => {
      const changed = frozen(facts, channels);
      return changed === null ? [] : [{ id, what, facts: changed }];
    }),
};
