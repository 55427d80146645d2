import { readReadings } from '@unitbook/engine';
import { accountOf } from '../support/demo.ts';
import type { MessageCase } from './message-case.ts';
import { june, rows } from './rows.ts';

/** Everything that can be said of what was typed for a register. */
export const TYPED_CASES: readonly MessageCase[] = [
  {
    code: 'reading/missing-register',
    when: 'import is empty',
    make: june(' '),
    at: 'readings.1.import',
    found: 'no import reading',
    expected: 'a number for every register of the account',
    remedy: 'Add what the two-way meter shows for import.',
  },
  {
    code: 'reading/missing-register',
    when: 'generation is left out',
    make: () =>
      readReadings(
        [
          { date: '2025-05-01', import: '1', export: '1', generation: '1' },
          { date: '2025-06-01', import: '2', export: '2' },
        ],
        accountOf(),
      ).findings,
    at: 'readings.1.generation',
    found: 'no generation reading',
    expected: 'a number for every register of the account',
    remedy: 'Add what the generation meter shows for generation.',
  },
  {
    code: 'reading/extra-register',
    when: 'there is no generation meter',
    make: june('4640.3', { generation: '7689.7' }),
    at: 'readings.1.generation',
    found: 'a generation reading',
    expected: 'none, since the account has no generation meter',
    remedy: 'Add the generation meter to the account, or take the reading out.',
  },
  {
    code: 'reading/formula',
    when: 'a sheet was saved with formulas',
    make: june('=B2+1'),
    at: 'readings.1.import',
    found: '"=B2+1", which looks like a spreadsheet formula',
    expected: 'a number',
    remedy: 'Save the sheet with values instead of formulas.',
  },
  {
    code: 'reading/mixed-separators',
    when: 'commas fit no grouping',
    make: june('4,6,40'),
    at: 'readings.1.import',
    found: '"4,6,40", with points and commas that fit no way of writing numbers',
    expected: 'one decimal point or comma, and groups of two or three digits',
    remedy: 'Write it without grouping, such as 12892.4.',
  },
  {
    code: 'reading/comma-unclear',
    when: 'the first reading has one comma',
    make: () =>
      readReadings(
        [
          { date: '2025-05-01', import: '12,892', export: '1' },
          { date: '2025-06-01', import: '12900', export: '2' },
        ],
        accountOf({ generationMeter: false, decimals: '3' }),
      ).findings,
    at: 'readings.0.import',
    found: '"12,892", where the comma can group thousands or mark decimals',
    expected: 'a number that can be read in one way',
    remedy: 'Write 12892 or 12.892.',
  },
  {
    code: 'reading/too-many-decimals',
    when: 'a point groups thousands on a register without decimals',
    make: () =>
      readReadings(
        [
          { date: '2025-05-01', import: '12.480', export: '1' },
          { date: '2025-06-01', import: '12900', export: '2' },
        ],
        accountOf({ generationMeter: false, decimals: '0' }),
      ).findings,
    at: 'readings.0.import',
    found: '12.480, with 3 decimals',
    expected: 'at most 0 on this register',
    remedy: 'Does the point group thousands? Use 12480.',
    offer: '12480',
  },
  {
    code: 'reading/letter',
    when: 'a one is a letter',
    make: june('464O.3'),
    at: 'readings.1.import',
    found: '"464O.3", with a letter',
    expected: 'digits only',
    remedy: 'Did you mean 4640.3?',
    offer: '4640.3',
  },
  {
    code: 'reading/not-a-number',
    when: 'it is a word',
    make: june('kWh'),
    at: 'readings.1.import',
    found: '"kWh"',
    expected: 'the number on the meter, such as 12892.4',
    remedy: 'Type the digits of the display only.',
  },
  {
    code: 'reading/negative',
    when: 'it is below 0',
    make: june('-58'),
    at: 'readings.1.import',
    found: '-58, below 0',
    expected: 'a register, which only counts up from 0',
    remedy: 'Take the minus sign off if the display shows none.',
  },
  {
    code: 'reading/too-many-digits',
    when: 'the red digit was typed without its point',
    make: june('146403'),
    at: 'readings.1.import',
    found: '146403, with 6 digits before the point',
    expected: 'at most 5 on this register',
    remedy: 'Is the last digit red or after a dot? Use 14640.3.',
    offer: '14640.3',
  },
  {
    code: 'reading/too-many-digits',
    when: 'there are two digits too many',
    make: june('1464031'),
    at: 'readings.1.import',
    found: '1464031, with 7 digits before the point',
    expected: 'at most 5 on this register',
    remedy: 'Check the digits, or the number of digits in the account.',
  },
  {
    code: 'reading/too-many-decimals',
    when: 'the register has one decimal',
    make: june('4640.35'),
    at: 'readings.1.import',
    found: '4640.35, with 2 decimals',
    expected: 'at most 1 on this register',
    remedy: 'Check the point, or the number of decimals in the account.',
  },
  {
    code: 'reading/screen-test',
    when: 'all segments are lit',
    make: rows(['2025-05-01', '88700', '1'], ['2025-06-01', '88888.8', '2']),
    severity: 'question',
    at: 'readings.1.import',
    found: '88888.8, eights only',
    expected: 'a reading',
    remedy: 'That is the screen test; wait for the next number. Keep it if the register really shows it.',
  },
];
