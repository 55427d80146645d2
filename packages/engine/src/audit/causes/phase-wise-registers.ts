import type { Cause, CauseContext } from '../cause.ts';
import type { BillFacts, RegisterFacts } from '../facts.ts';
import { FIGURE } from '../figure-names.ts';
import { printedEnds, printedUnitsOf } from '../printed-readings.ts';
import { countedBy, withChannel, withReadings } from '../readings-changed.ts';

/** By how much a printed channel is above the right one, in thousandths; null where the bill does not tell. */
function printedMore(facts: BillFacts, context: CauseContext, channel: 'import' | 'export'): number | null {
  const units = printedUnitsOf(context, channel);
  if (units !== null) return units - (facts.units[channel] ?? 0);
  const own = facts.registers[channel];
  const { present } = printedEnds(context, channel);
  if (own === undefined || present === null) return null;
  return countedBy({ ...own, present }, facts) - countedBy(own, facts);
}

/** A register that shows so many thousandths of units more; null where its display cannot. */
function moved(own: RegisterFacts, more: number): RegisterFacts | null {
  const { numerator, denominator } = own.register.factor;
  const shown = (more * denominator) / numerator;
  return Number.isInteger(shown) ? { ...own, present: own.present + shown } : null;
}

/** Both channels with so many units more, and the registers too where they can show that. */
function withMore(facts: BillFacts, more: number): BillFacts {
  const [taken, given] = [facts.registers['import'], facts.registers['export']];
  const registers = [taken, given].flatMap((own) => (own === undefined ? [] : (moved(own, more) ?? [])));
  const shown =
    registers.length < 2
      ? facts
      : withReadings(facts, Object.fromEntries(registers.map((own) => [own.register.key, own])));
  return (['import', 'export'] as const).reduce(
    (own, channel) => withChannel(own, channel, (facts.units[channel] ?? 0) + more),
    shown,
  );
}

/** C14: a three-phase meter adds up its phases one by one, so that import and export are too large by the same. */
export const PHASE_WISE_REGISTERS: Cause = {
  id: 'phase-wise-registers',
  name: 'Phases counted one by one',
  stage: 'readings',
  evidence: [
    'how the meter is set: sum of the phases, or sum of their magnitudes',
    'readings of each phase',
    'the rule on how a three-phase meter has to add up',
  ],
  variants: (facts, context) => {
    const { import: taken, export: given } = facts.units;
    if (taken === undefined || given === undefined) return [];
    const more = printedMore(facts, context, 'import');
    // Solved from import; that export is too large by the same is what tells it from other mistakes.
    if (more === null || more <= 0 || printedMore(facts, context, 'export') !== more) return [];
    return [
      {
        id: 'both',
        what: 'Import and export are too large by the same: what went in on one phase and out on another counts as both',
        facts: withMore(facts, more),
        fitted: [FIGURE.units('import'), FIGURE.reading('import', 'present')],
      },
    ];
  },
};
