import { registersOf } from '../../readings/index.ts';
import { FIGURE } from '../figure-names.ts';
import { advanceOf, atBill, figureOf, type ConsistencyCheck, type ConsistencyTerms } from './check.ts';
import { compare, NONE, textOf, times, wholeNumber, type Exact } from './exact.ts';

/** A register wraps only near its full scale: nine tenths of it. */
function mayHavePassed({ account }: ConsistencyTerms, register: string, previous: Exact): boolean {
  const own = account === null ? undefined : registersOf(account).find(({ key }) => key === register);
  if (own === undefined) return false;
  return compare(times(previous, wholeNumber(10_000)), times(wholeNumber(own.fullScale), wholeNumber(9))) > 0;
}

/** (1) No register stands lower than before, but where it passed its full scale. */
export const READINGS_GO_FORWARD: ConsistencyCheck = {
  id: 'readings-go-forward',
  holds: 'no register stands lower than before',
  find: (terms) =>
    Object.keys(terms.bill.document.readings ?? {}).flatMap((register) => {
      const previous = figureOf(terms.bill, FIGURE.reading(register, 'previous'));
      const present = figureOf(terms.bill, FIGURE.reading(register, 'present'));
      const advance = advanceOf(terms, register);
      if (previous === undefined || present === undefined || advance === undefined) return [];
      if (compare(advance, NONE) >= 0 || mayHavePassed(terms, register, previous)) return [];
      const values = { register, previous: textOf(previous), present: textOf(present) };
      return [atBill(terms.bill, ['readings', register, 'present'], 'check/reading-back', values)];
    }),
};
