import type { Cause, CauseContext, KnownSerials, Sign } from '../cause.ts';
import { sameSerial } from '../consistency/serials.ts';
import { withShownReadings } from '../printed-readings.ts';
import { withChannel } from '../readings-changed.ts';

/** What the printed number of the two-way meter says. */
function signsOf({ serials }: CauseContext): readonly Sign[] {
  const { grid, generation } = serials;
  const printed = grid?.printed ?? '';
  if (printed === '') return [];
  const isOf = (known: KnownSerials | undefined): boolean =>
    (known?.own ?? []).some((serial) => sameSerial(serial, printed));
  if (isOf(generation))
    return [{ speaks: 'for', why: `The bill prints the number of the generation meter, ${printed}.` }];
  return isOf(grid)
    ? [{ speaks: 'against', why: `The bill prints the number of the two-way meter, ${printed}.` }]
    : [];
}

/** C12: the generation meter is billed as import, or on top of it. */
export const GENERATION_BILLED_AS_IMPORT: Cause = {
  id: 'generation-billed-as-import',
  name: 'Generation meter billed as import',
  stage: 'readings',
  evidence: ['photos of both meters with their numbers', 'the single-line diagram of the plant'],
  variants: (facts, context) => {
    const { generation: made = 0, import: taken } = facts.units;
    if (made === 0 || taken === undefined || made === taken) return [];
    const signs = signsOf(context);
    const register = facts.registers['generation'];
    const instead = withChannel(facts, 'import', made);
    return [
      {
        id: 'instead',
        what: 'What the plant made counts as taken from the grid',
        facts: register === undefined ? instead : withShownReadings(instead, context, { import: register }),
        signs,
      },
      {
        id: 'added',
        what: 'What the plant made counts as taken from the grid, on top of what was taken',
        facts: withChannel(facts, 'import', taken + made),
      },
    ];
  },
};
