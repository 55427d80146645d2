import type { Cause } from '../cause.ts';
import type { BillFacts } from '../facts.ts';
import { withShownReadings } from '../printed-readings.ts';

/** Import with what was given to the grid on top, in all and in every block; nothing given. */
function addedUnits({ units }: BillFacts): Record<string, number> {
  const added: Record<string, number> = {};
  for (const [name, given] of Object.entries(units)) {
    if (!/^export(?:@|$)/.test(name)) continue;
    const taken = name.replace('export', 'import');
    added[taken] = (units[taken] ?? 0) + given;
    added[name] = 0;
  }
  return added;
}

/** C13: a meter set to one direction, or to magnitudes, counts what is given as taken. */
export const EXPORT_ADDED_TO_IMPORT: Cause = {
  id: 'export-added-to-import',
  name: 'Export counted as import',
  stage: 'readings',
  evidence: [
    'a video by noon with the main loads off: import climbs',
    'the log of what the plant made',
    'the setting sheet of the meter',
  ],
  variants: (facts, context) => {
    const { units, registers } = facts;
    if ((units['export'] ?? 0) === 0 || units['import'] === undefined) return [];
    const changed = { ...facts, units: { ...units, ...addedUnits(facts) } };
    const what = 'What was given to the grid counts as taken from it, and nothing as given';
    const [taken, given] = [registers['import'], registers['export']];
    if (taken === undefined || given === undefined) return [{ id: 'added', what, facts: changed }];
    const shown = {
      import: { previous: taken.previous, present: taken.present + given.present - given.previous },
      export: { previous: given.previous, present: given.previous },
    };
    return [{ id: 'added', what, facts: withShownReadings(changed, context, shown) }];
  },
};
