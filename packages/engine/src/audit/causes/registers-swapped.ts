import type { Cause } from '../cause.ts';
import { withUnits, type BillFacts, type RegisterFacts } from '../facts.ts';

/** Import and export in each other's place, in all and in every time block. */
function swappedUnits(units: BillFacts['units']): Record<string, number> {
  const other = (name: string): string =>
    name.startsWith('import') ? name.replace('import', 'export') : name.replace('export', 'import');
  const channels = Object.keys(units).filter((name) => /^(?:import|export)(?:@.*)?$/.test(name));
  return Object.fromEntries(channels.map((name) => [name, units[other(name)] ?? 0]));
}

function swappedRegisters({ registers }: BillFacts): BillFacts['registers'] {
  const [taken, given] = [registers['import'], registers['export']];
  if (taken === undefined || given === undefined) return registers;
  const as = (own: RegisterFacts, other: RegisterFacts): RegisterFacts => ({
    ...other,
    register: own.register,
  });
  return { ...registers, import: as(taken, given), export: as(given, taken) };
}

/** C02: import and export are in each other's place. */
export const REGISTERS_SWAPPED: Cause = {
  id: 'registers-swapped',
  name: 'Import and export swapped',
  stage: 'readings',
  evidence: [
    'photos of both registers with the code of each on the screen',
    'the page of the meter guide that says which code is which',
    'a video by day with all loads off: export has to climb',
  ],
  variants: (facts) => {
    const { units } = facts;
    if (units['import'] === undefined || units['export'] === undefined || units['import'] === units['export'])
      return [];
    const swapped = withUnits({ ...facts, registers: swappedRegisters(facts) }, swappedUnits(units));
    return [
      { id: 'both', what: 'What was taken counts as given, and what was given as taken', facts: swapped },
    ];
  },
};
