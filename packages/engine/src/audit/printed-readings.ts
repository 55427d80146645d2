import type { RegisterId } from '../readings/index.ts';
import type { CauseContext } from './cause.ts';
import { thousandths, thousandthsOf, withShown, type BillFacts, type RegisterFacts } from './facts.ts';
import { FIGURE } from './figure-names.ts';

type Printed = Pick<CauseContext, 'printed'>;

/** A printed figure in thousandths; null where it is not printed, or is finer. */
export const printedThousandths = ({ printed }: Printed, name: string): number | null =>
  thousandthsOf(printed.get(name));

/** What a bill prints of a register, in thousandths as displayed. */
export interface PrintedEnds {
  readonly previous: number | null;
  readonly present: number | null;
}

/** Both printed ends of a register. */
export const printedEnds = (context: Printed, key: string): PrintedEnds => ({
  previous: printedThousandths(context, FIGURE.reading(key, 'previous')),
  present: printedThousandths(context, FIGURE.reading(key, 'present')),
});

/** Units that a bill prints of a channel, in thousandths. */
export const printedUnitsOf = (context: Printed, channel: RegisterId): number | null =>
  printedThousandths(context, FIGURE.units(channel));

/**
 * Facts that show readings otherwise than the registers do, unless the bill prints the readings as they are: then the
 * mistake was made behind them, in the units.
 *
 * @param readings  both ends by register, in thousandths
 */
export function withShownReadings(
  facts: BillFacts,
  context: Printed,
  readings: Readonly<Record<string, Pick<RegisterFacts, 'previous' | 'present'>>>,
): BillFacts {
  const ends = Object.entries(readings).flatMap(([key, shown]) =>
    (['previous', 'present'] as const).map((end) => ({
      name: FIGURE.reading(key, end),
      own: facts.registers[key]?.[end] ?? null,
      shown: shown[end],
    })),
  );
  const printed = ends.filter(({ name }) => context.printed.has(name));
  const isAsRead =
    printed.length > 0 && printed.every(({ name, own }) => printedThousandths(context, name) === own);
  if (isAsRead) return facts;
  return withShown(facts, Object.fromEntries(ends.map(({ name, shown }) => [name, thousandths(shown)])));
}

/**
 * Whether what a bill prints of some registers and their units is what facts come to; whatever it does not print is no
 * contradiction. Of a mistake that can be made in dozens of ways, only those that could be meant are tried.
 */
export function fitsPrinted(facts: BillFacts, context: Printed, keys: readonly string[]): boolean {
  return keys.every((key) => {
    const own = facts.registers[key];
    if (own === undefined) return true;
    const { previous, present } = printedEnds(context, key);
    const units = printedUnitsOf(context, own.register.id);
    return (
      (previous === null || previous === own.previous) &&
      (present === null || present === own.present) &&
      (units === null || units === facts.units[own.register.id])
    );
  });
}
