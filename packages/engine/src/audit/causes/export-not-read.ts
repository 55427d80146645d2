import type { Cause } from '../cause.ts';
import { FIGURE } from '../figure-names.ts';
import { thousandths, withShown, withUnits } from '../facts.ts';

/** C01: the export register was not read, so that nothing given to the grid counts. */
export const EXPORT_NOT_READ: Cause = {
  id: 'export-not-read',
  name: 'Export register not read',
  stage: 'readings',
  evidence: [
    'dated photos of the export register at both ends of the period',
    'readings of the generation meter',
    'the closing export reading of the bill before',
  ],
  variants: (facts) => {
    const { units, registers } = facts;
    if ((units['export'] ?? 0) === 0) return [];
    const none = Object.fromEntries(
      Object.keys(units)
        .filter((name) => name === 'export' || name.startsWith('export@'))
        .map((name) => [name, 0]),
    );
    const register = registers['export'];
    const stuck =
      register === undefined ? {} : { [FIGURE.reading('export', 'present')]: thousandths(register.previous) };
    return [
      { id: 'all', what: 'Nothing of the export counts', facts: withShown(withUnits(facts, none), stuck) },
    ];
  },
};
