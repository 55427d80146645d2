import { atBill, unitsOf, unitsPath, type ConsistencyCheck } from './check.ts';
import { compare, minus, NONE, sumOf, textOf } from './exact.ts';

/** (3) What the home used, import and generation less export, is not below 0. */
export const USE_NOT_BELOW_ZERO: ConsistencyCheck = {
  id: 'use-not-below-zero',
  holds: 'the home used no less than nothing',
  find: (terms) => {
    const [taken, given] = [unitsOf(terms, 'import'), unitsOf(terms, 'export')];
    const made = unitsOf(terms, 'generation');
    if (taken === undefined || given === undefined || made === undefined) return [];
    const use = minus(sumOf([taken, made]), given);
    if (compare(use, NONE) >= 0) return [];
    const values = {
      import: textOf(taken),
      export: textOf(given),
      generation: textOf(made),
      use: textOf(use),
    };
    return [atBill(terms.bill, unitsPath(terms.bill, 'import'), 'check/use-below-zero', values)];
  },
};
