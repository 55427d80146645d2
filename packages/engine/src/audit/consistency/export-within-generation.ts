import { atBill, unitsOf, unitsPath, type ConsistencyCheck } from './check.ts';
import { compare, textOf, times } from './exact.ts';

/** Two meters may differ by so much: three parts in a hundred. Project reference "causes", 2.7, check 2 (2026). */
const MOST = { whole: 103n, places: 2 };

/** (2) No more is given than made; a battery may give what it took before. */
export const EXPORT_WITHIN_GENERATION: ConsistencyCheck = {
  id: 'export-within-generation',
  holds: 'no more is given to the grid than made',
  find: (terms) => {
    const [given, made] = [unitsOf(terms, 'export'), unitsOf(terms, 'generation')];
    if (given === undefined || made === undefined || terms.account?.hasBattery === true) return [];
    if (compare(given, times(made, MOST)) <= 0) return [];
    const values = { export: textOf(given), generation: textOf(made) };
    return [atBill(terms.bill, unitsPath(terms.bill, 'export'), 'check/export-above-generation', values)];
  },
};
