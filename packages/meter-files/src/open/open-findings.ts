import type { findingMaker } from '@unitbook/engine';
import { of } from '../collected/finding-words.ts';

/** What can be said of a meter file before a reader reads it. */
export const OPEN_FINDINGS = {
  'meter-file/empty': {
    severity: 'error',
    text: () => ({
      found: 'an empty file',
      expected: 'a file with meter data',
      remedy: 'Choose the file that holds the data, or download it again.',
    }),
  },
  'meter-file/too-many-bytes': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'size')} MB`,
      expected: `at most ${of(v, 'most')} MB in one piece`,
      remedy: 'Split the file by years, or read it with the command, which reads files of any size.',
    }),
  },
  'meter-file/not-text': {
    severity: 'error',
    text: (v) => ({
      found: of(v, 'what'),
      expected: 'text: the formats of meter data that are read are all text',
      remedy: 'Unpack the file, or save the sheet as CSV (text), and choose that file.',
    }),
  },
  'meter-file/bytes-replaced': {
    severity: 'question',
    grouped: ['count'],
    text: (v) => ({
      found:
        of(v, 'count') === '1'
          ? `1 place with bytes that are no ${of(v, 'encoding')}, on ${of(v, 'lines')}`
          : `${of(v, 'count')} places with bytes that are no ${of(v, 'encoding')}, on ${of(v, 'lines')}`,
      expected: `text in ${of(v, 'encoding')}`,
      remedy:
        'They are read as the mark \ufffd. Nothing to do if they stand in names; numbers with them are not read.',
    }),
  },
  'meter-file/kind-not-known': {
    severity: 'error',
    text: (v) => ({
      found: of(v, 'why'),
      expected:
        'NEM12 or NEM13, ESPI in XML, a telegram or a list of OBIS codes, a register list, or a table with columns',
      remedy: 'Choose a file of one of these kinds: whoever reads the meter can often offer several.',
    }),
  },
  'meter-file/needs-layout': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'why')}, and nothing that says what its columns are`,
      expected: 'what each column holds, and how dates and numbers are written',
      remedy: 'Say what the columns are. The same is then used for all files with the same columns.',
    }),
  },
  'meter-file/own-register-list': {
    severity: 'error',
    text: (v) => ({
      found: of(v, 'why'),
      expected: 'a file as a meter or a supplier makes it',
      remedy: 'Read it as a register list instead.',
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];
