import type { findingMaker } from '@unitbook/engine';
import { LONGEST_LINE } from './lines.ts';

type Values = Readonly<Record<string, string>>;

/** A value by name; '' where there is none. */
export const of = (values: Values, key: string): string => values[key] ?? '';

const fileOf = (version: string): string =>
  version === 'NEM12' ? 'a file of interval values' : 'a file of register reads';

/** What can be said of a file of either format as a whole, and of its lines. */
export const NEM_FILE_FINDINGS = {
  'nem/empty': {
    severity: 'error',
    text: (v) => ({
      found: 'no record at all',
      expected: `${fileOf(of(v, 'version'))} that begins with 100,${of(v, 'version')},…`,
      remedy: 'Choose the file that holds the data, or ask for it again.',
    }),
  },
  'nem/no-header': {
    severity: 'question',
    text: (v) => ({
      found: `"${of(v, 'indicator')}" at the beginning of the first record`,
      expected: `the header first: 100,${of(v, 'version')},…`,
      remedy: 'Was the beginning of the file cut off? Ask for the whole file. What is here was read.',
    }),
  },
  'nem/version': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'found')}" as the version in the header`,
      expected: of(v, 'version'),
      remedy: `Read this file as what it says it is. Records that ${of(v, 'version')} knows were read all the same.`,
    }),
  },
  'nem/second-header': {
    severity: 'question',
    text: () => ({
      found: 'a second header, record 100',
      expected: 'one header in a file',
      remedy: 'Were two files joined? Both were read. Take one out if its data are in the other, too.',
    }),
  },
  'nem/after-end': {
    severity: 'question',
    text: (v) => ({
      found: `a record "${of(v, 'indicator')}" after the end, record 900`,
      expected: 'nothing after it',
      remedy: 'Were two files joined? All was read. Take out what does not belong here.',
    }),
  },
  'nem/no-end': {
    severity: 'question',
    text: () => ({
      found: 'the last record, which is not 900',
      expected: 'a record 900 at the end',
      remedy: 'Was the end of the file cut off? Ask for the whole file. What is here was read.',
    }),
  },
  'nem/unknown-record': {
    severity: 'error',
    text: (v) => ({
      found: `a record "${of(v, 'indicator')}"`,
      expected: `a record of ${of(v, 'version')}: ${of(v, 'known')}`,
      remedy: 'Correct the number at the beginning of the line. The line was left out.',
    }),
  },
  'nem/line-too-long': {
    severity: 'error',
    text: () => ({
      found: `a line of more than ${String(LONGEST_LINE)} characters`,
      expected: 'one record on a line; a day at 5 minutes has about 2000 characters',
      remedy: 'Ask for the file again; line ends may be lost. The line was left out.',
    }),
  },
  'nem/quotation-mark': {
    severity: 'error',
    text: () => ({
      found: 'a quotation mark that is not closed at the end of its cell',
      expected: 'quotation marks in pairs around a whole cell',
      remedy: 'Close the quotation mark or take it out. The line was left out.',
    }),
  },
  'nem/too-many-streams': {
    severity: 'error',
    text: (v) => ({
      found: `more than ${of(v, 'most')} registers in one file`,
      expected: 'the registers of one household, or of a few',
      remedy: 'Split the file by metering point. The records of this register were left out.',
    }),
  },
  'nem/unit': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'unit')}" as the unit`,
      expected: 'kWh, Wh or MWh for energy, or a unit such as kVArh that is none',
      remedy: 'Correct the unit. Until then the values count as another quantity, neither import nor export.',
    }),
  },
  'nem/quality': {
    severity: 'question',
    text: (v) => ({
      found: `"${of(v, 'quality')}" as the quality`,
      expected: `${of(v, 'flags')}, and two digits for the method where one was used`,
      remedy: 'Ask what it means. What it stands for is kept as estimated.',
    }),
  },
  'nem/too-many-digits': {
    severity: 'error',
    text: (v) => ({
      found: of(v, 'what'),
      expected: 'at most 15 digits, and 15 decimals of a kWh',
      remedy: 'Correct the number. It was left out: it would not be exact.',
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];
