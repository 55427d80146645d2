import { FIGURE } from '../figure-names.ts';
import { atBill, figureOf, type ConsistencyCheck } from './check.ts';
import { compare, exactOf, sumOf, textOf } from './exact.ts';

/** (9) The parts of the energy charge come to the units billed. */
export const SLABS_SUM_TO_BILLED: ConsistencyCheck = {
  id: 'slabs-sum-to-billed',
  holds: 'the parts of the energy charge come to the units billed',
  find: ({ bill }) => {
    const { slabs = [] } = bill.document;
    const billed = figureOf(bill, FIGURE.units('billed'));
    if (slabs.length === 0 || billed === undefined) return [];
    const parts = sumOf(slabs.map(({ units }) => exactOf(units)));
    if (compare(parts, billed) === 0) return [];
    const values = { parts: textOf(parts), billed: textOf(billed) };
    return [atBill(bill, ['slabs'], 'check/slabs-off-billed', values)];
  },
};
