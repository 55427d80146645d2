import type { RegisterId } from '../../readings/index.ts';
import type { Cause, Variant } from '../cause.ts';
import type { BillFacts } from '../facts.ts';
import { withChannel } from '../readings-changed.ts';

const doubled = (facts: BillFacts, channels: readonly RegisterId[]): BillFacts =>
  channels.reduce((own, channel) => withChannel(own, channel, 2 * (own.units[channel] ?? 0)), facts);

/** C18: the register of all units and those of its rates are added up: everything counts twice. */
export const TOTAL_AND_RATES_ADDED: Cause = {
  id: 'total-and-rates-added',
  name: 'Total and rates both added',
  stage: 'readings',
  evidence: ['photos of the register of all units and of each rate at both ends'],
  variants: (facts): readonly Variant[] => {
    const { import: taken = 0, export: given = 0 } = facts.units;
    const what = 'counts by the register of all units and by those of its rates: twice';
    return [
      ...(taken > 0 ? [{ id: 'import', what: `Import ${what}`, facts: doubled(facts, ['import']) }] : []),
      ...(given > 0 ? [{ id: 'export', what: `Export ${what}`, facts: doubled(facts, ['export']) }] : []),
      ...(taken > 0 && given > 0
        ? [
            {
              id: 'both',
              what: `All that is taken and given ${what}`,
              facts: doubled(facts, ['import', 'export']),
            },
          ]
        : []),
    ];
  },
};
