import { dayText, type DayNumber } from '../../quantity/index.ts';
import type { Cause, CauseContext, Sign, Variant } from '../cause.ts';
import type { BillFacts } from '../facts.ts';
import { FIGURE } from '../figure-names.ts';
import { printedEnds, printedUnitsOf, withShownReadings } from '../printed-readings.ts';
import { withChannel, withReadings } from '../readings-changed.ts';

/**
 * Whether export can have begun late on this bill: the plant was connected in its period, or before it while no bill
 * has counted any export yet.
 */
function canBeLate({ period }: BillFacts, { connected, printedBefore }: CauseContext): boolean {
  if (connected === null || connected >= period.to) return false;
  if (connected >= period.from) return true;
  return (printedBefore?.get(FIGURE.units('export'))?.numerator ?? 1) === 0;
}

const signsOf = (connected: DayNumber): readonly Sign[] => [
  {
    speaks: 'for',
    why: `The plant was connected on ${dayText(connected)}, and no bill before counts what it gave.`,
  },
];

/** Export that counts only from a later reading on. */
function fromReading(facts: BillFacts, previous: number): BillFacts {
  return withReadings(facts, { export: { previous } });
}

function variantOf(facts: BillFacts, context: CauseContext): Omit<Variant, 'signs'> | null {
  const right = facts.units['export'] ?? 0;
  const own = facts.registers['export'];
  const { previous } = printedEnds(context, 'export');
  if (own !== undefined && previous !== null && previous > own.previous && previous <= own.present) {
    const what = 'Export counts only from a reading that is later than the one of the connection';
    const fitted = [FIGURE.reading('export', 'previous')];
    return { id: 'reading', what, facts: fromReading(facts, previous), fitted };
  }
  const units = printedUnitsOf(context, 'export') ?? 0;
  if (units < 0 || units >= right) return null;
  const counted = withChannel(facts, 'export', units);
  const later =
    own === undefined
      ? counted
      : withShownReadings(counted, context, {
          export: { previous: units === 0 ? own.present : own.previous, present: own.present },
        });
  return units === 0
    ? { id: 'none', what: 'Export does not count yet, though the plant was connected', facts: later }
    : {
        id: 'part',
        what: 'Export counts only from a later day than that of the connection',
        facts: later,
        fitted: [FIGURE.units('export')],
      };
}

/** C25: net metering began later in the billing system than on the roof. */
export const EXPORT_COUNTED_LATE: Cause = {
  id: 'export-counted-late',
  name: 'Export counted from a later day than the connection',
  stage: 'readings',
  evidence: [
    'the commissioning report with the export reading of that day',
    'the first bill that counts export',
  ],
  variants: (facts, context) => {
    const { connected } = context;
    if (connected === null || (facts.units['export'] ?? 0) === 0 || !canBeLate(facts, context)) return [];
    const variant = variantOf(facts, context);
    return variant === null ? [] : [{ ...variant, signs: signsOf(connected as DayNumber) }];
  },
};
