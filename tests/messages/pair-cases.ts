import { readReadings, type Finding } from '@unitbook/engine';
import { accountOf } from '../support/demo.ts';
import type { MessageCase } from './message-case.ts';

type Registers = readonly [taken: string, given: string, made: string];

const MAY: Registers = ['4342.1', '2935.8', '7318.0'];

/** The findings about readings of 1 June 2025, after those of 1 May, of a house of 4 kW with 5 kWp. */
const after = (before: Registers, now: Registers) => (): readonly Finding[] => {
  const row = (date: string, [taken, given, made]: Registers) => ({
    date,
    import: taken,
    export: given,
    generation: made,
  });
  return readReadings([row('2025-05-01', before), row('2025-06-01', now)], accountOf()).findings;
};

/** Everything that can be said of a reading and the one before. */
export const PAIR_CASES: readonly MessageCase[] = [
  {
    code: 'reading/below-before',
    when: 'a register went back a little',
    make: after(['4521', '10', '10'], ['4498', '20', '30']),
    at: 'readings.1.import',
    found: '4498, below the reading before, 4521',
    expected: 'a register that counts up',
    remedy:
      'Did the counter pass 99999? Then confirm it. Was the meter changed? Then add the last reading of the ' +
      'old one and the first of the new one. Was a digit mistyped? Correct it.',
  },
  {
    code: 'reading/rolled-over',
    when: 'a register passed its full scale',
    make: after(['99950', '10', '10'], ['00120', '20', '30']),
    severity: 'note',
    at: 'readings.1.import',
    found: '120 after 99950: the counter passed 99999',
    expected: '170.0 units, plausible for the days',
    remedy: 'Nothing to do if the display shows it.',
  },
  {
    code: 'reading/registers-swapped',
    when: 'import and export each go on from the other',
    make: after(['12480', '8310', '15225'], ['8588', '12892', '15805']),
    at: 'readings.1.import',
    found: 'import and export that each fit the other register better',
    expected: 'each register to go on from its own reading before',
    remedy: 'These look swapped. Swap them?',
  },
  {
    code: 'reading/net-screen',
    when: 'import is import less export',
    make: after(MAY, ['1489.3', '3151.0', '7689.7']),
    at: 'readings.1.import',
    found: '1489.3 for import, which is what import less export would show',
    expected: 'the import register, about 4640.3',
    remedy: 'This looks like the NET screen. Find the screen marked IMP or 1.8.0.',
    offer: '4640.3',
  },
  {
    code: 'reading/units-not-readings',
    when: 'the units of the month were typed',
    make: after(MAY, ['298', '216', '371']),
    at: 'readings.1',
    found: 'numbers far below the readings before',
    expected: 'the big number that only grows',
    remedy:
      'Did you type the units used this month? Then the readings are import 4640.1, export 3151.8, ' +
      'generation 7689.',
    offer: 'import 4640.1, export 3151.8, generation 7689',
  },
  {
    code: 'reading/same-as-before',
    when: 'the reading of last time was typed again',
    make: after(MAY, ['4342.1', '3151.0', '7689.7']),
    severity: 'question',
    at: 'readings.1.import',
    found: '4342.1 again, the same as last time',
    expected: 'a register that has moved',
    remedy: 'Is this the "last bill" screen? Keep it if nothing was counted.',
  },
  {
    code: 'reading/large-advance',
    when: 'the red digit was typed without its point',
    make: after(MAY, ['46403', '3151.0', '7689.7']),
    severity: 'question',
    at: 'readings.1.import',
    // 46403 − 4342.1 = 42060.9 units in 31 days; 4 kW × 50 × 31 = 6200
    found: '42061 units in 31 days',
    expected: 'at most 6200 for a load of 4 kW',
    remedy: 'Is the last digit red or after a dot? Use 4640.3, or keep it if it is right.',
    offer: '4640.3',
  },
  {
    code: 'reading/large-advance',
    when: 'the plant made more than it can',
    make: after(MAY, ['4640.3', '3151.0', '9318.0']),
    severity: 'question',
    at: 'readings.1.generation',
    // 2000 units in 31 days; 5 kWp × 7.5 × 31 = 1162.5
    found: '2000 units in 31 days',
    expected: 'at most 1163 for a plant of 5 kWp',
    remedy: 'Check the digits. Keep it if it is right.',
  },
];
