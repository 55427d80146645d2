import type { findingMaker } from '@unitbook/engine';
import { of } from './values.ts';

/** What can be wrong with a file that a command reads, whatever it holds, by code. */
export const COMMAND_FILE_FINDINGS = {
  'command/missing-file': {
    severity: 'error',
    text: () => ({
      found: 'no file of this name',
      expected: 'a file that is there',
      remedy: 'Check the name and the folder it is in.',
    }),
  },
  'command/folder': {
    severity: 'error',
    text: () => ({
      found: 'a folder',
      expected: 'a file',
      remedy: 'Name the file in it.',
    }),
  },
  'command/unreadable-file': {
    severity: 'error',
    text: (v) => ({
      found: `a file that cannot be read: ${of(v, 'reason')}`,
      expected: 'a file that may be read',
      remedy: 'Change its permissions, or copy it to where you can read it.',
    }),
  },
  'command/file-too-large': {
    severity: 'error',
    text: (v) => ({
      found: of(v, 'size'),
      expected: `at most ${of(v, 'most')} MB for a JSON document`,
      remedy: 'Check that it is the right file.',
    }),
  },
  'command/not-text': {
    severity: 'error',
    text: () => ({
      found: 'bytes that are no UTF-8 text',
      expected: 'a JSON document in UTF-8',
      remedy: 'Check that it is the right file, or save it as UTF-8.',
    }),
  },
  'command/other-document': {
    severity: 'error',
    text: (v) => ({
      found: `a document that holds ${of(v, 'name')}`,
      expected: `one that holds ${of(v, 'wanted')}`,
      remedy: `Name another file here; this one goes with unitbook ${of(v, 'option')}.`,
    }),
  },
  'command/unknown-tariff': {
    severity: 'error',
    text: (v) => ({
      found: `the tariff id "${of(v, 'id')}"`,
      expected: `an id that comes with unitbook, such as ${of(v, 'known')}`,
      remedy: 'Add --tariff FILE, or put the whole tariff into the household file.',
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];
