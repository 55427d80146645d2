import type { Cause, CauseContext, Variant } from '../cause.ts';
import type { BillFacts, RegisterFacts } from '../facts.ts';
import { FIGURE } from '../figure-names.ts';
import { printedEnds } from '../printed-readings.ts';
import { isPossible, registersOfChannels, withReadings } from '../readings-changed.ts';

const GROUPS = [
  { id: 'import', channels: ['import'], of: 'import' },
  { id: 'export', channels: ['export'], of: 'export' },
  { id: 'grid', channels: ['import', 'export'], of: 'import and export' },
  { id: 'all', channels: ['import', 'export', 'generation'], of: 'every register' },
] as const;

/** What a register showed where the bill before began; null: not known, or the same. */
function before({ register, previous }: RegisterFacts, context: CauseContext): number | null {
  const earlier = context.before?.registers[register.key]?.previous;
  return earlier === undefined || earlier === previous ? null : earlier;
}

/** Opening readings of two bills ago, of some registers or of all. */
function staleVariants(facts: BillFacts, context: CauseContext): readonly Variant[] {
  const tried = new Set<string>();
  return GROUPS.flatMap(({ id, channels, of }) => {
    const stale = registersOfChannels(facts, channels).flatMap((own) => {
      const previous = before(own, context);
      return previous === null ? [] : [[own.register.key, { previous }] as const];
    });
    const keys = stale.map(([key]) => key).join();
    // Without a generation meter "all" is the same as both registers of the grid.
    if (stale.length === 0 || tried.has(keys)) return [];
    tried.add(keys);
    const what = `The opening reading of ${of} is the one of two bills ago`;
    return [{ id, what, facts: withReadings(facts, Object.fromEntries(stale)) }];
  });
}

interface Opening {
  readonly own: RegisterFacts;
  readonly previous: number;
}

/** What printed opening readings are, in words. */
function wordsOf(printed: readonly Opening[], { printedBefore }: CauseContext): string {
  const isHandedOn =
    printedBefore !== null &&
    printed.every(
      ({ own, previous }) => printedEnds({ printed: printedBefore }, own.register.key).present === previous,
    );
  if (isHandedOn)
    return 'The opening reading is the closing one that the bill before printed, which the meter did not show';
  return printed.every(({ own, previous }) => previous > own.previous)
    ? 'The opening reading is later than the closing one of the bill before: units in between are lost'
    : 'The opening reading is not the closing one of the bill before';
}

/** Opening readings as printed, where they are neither the right ones nor those of two bills ago. */
function printedVariant(facts: BillFacts, context: CauseContext): readonly Variant[] {
  const printed = Object.values(facts.registers).flatMap((own): readonly Opening[] => {
    const { previous } = printedEnds(context, own.register.key);
    return previous === null || previous === own.previous ? [] : [{ own, previous }];
  });
  if (printed.every(({ own, previous }) => before(own, context) === previous)) return [];
  const changes = printed.map(({ own, previous }) => [own.register.key, { previous }] as const);
  const fitted = printed.map(({ own }) => FIGURE.reading(own.register.key, 'previous'));
  const changed = withReadings(facts, Object.fromEntries(changes));
  return [{ id: 'printed', what: wordsOf(printed, context), facts: changed, fitted }];
}

/** C06: the bill begins at another reading than the one where the bill before ended by right. */
export const STALE_OPENING: Cause = {
  id: 'stale-opening',
  name: 'Wrong opening reading',
  stage: 'readings',
  evidence: ['the bill before, with its closing reading', 'a dated photo of the register at the opening'],
  variants: (facts, context) =>
    [...staleVariants(facts, context), ...printedVariant(facts, context)].filter((one) =>
      isPossible(one.facts),
    ),
};
