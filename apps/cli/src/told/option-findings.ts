import type { findingMaker } from '@unitbook/engine';
import { of } from './values.ts';

/** What can be wrong with a command as it was typed, by code. */
export const OPTION_FINDINGS = {
  'command/unknown-command': {
    severity: 'error',
    text: (v) => ({
      found: of(v, 'name') === '' ? 'no command' : `the command "${of(v, 'name')}"`,
      expected: `one of ${of(v, 'allowed')}`,
      remedy: 'Type unitbook --help to see what each of them does.',
    }),
  },
  'command/unknown-option': {
    severity: 'error',
    text: (v) => ({
      found: `the option ${of(v, 'name')}`,
      expected: `one of ${of(v, 'allowed')}`,
      remedy: 'Correct the spelling or leave it out.',
    }),
  },
  'command/option-without-value': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'name')} with nothing after it`,
      expected: `${of(v, 'name')} ${of(v, 'value')}`,
      remedy: 'Add what is missing.',
    }),
  },
  'command/option-with-value': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'name')}=${of(v, 'value')}`,
      expected: `${of(v, 'name')} alone`,
      remedy: 'Leave the value out.',
    }),
  },
  'command/option-twice': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'name')} a second time`,
      expected: 'each option once',
      remedy: 'Keep one of the two.',
    }),
  },
  'command/missing-option': {
    severity: 'error',
    text: (v) => ({
      found: `no ${of(v, 'name')}`,
      expected: of(v, 'expected'),
      remedy: `Add ${of(v, 'name')} FILE.`,
    }),
  },
  'command/options-exclude': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'name')} together with ${of(v, 'other')}`,
      expected: 'one or the other',
      remedy: of(v, 'remedy'),
    }),
  },
  'command/extra-argument': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}"`,
      expected: 'an option that says what it is',
      remedy: of(v, 'remedy'),
    }),
  },
  'command/no-file': {
    severity: 'error',
    text: (v) => ({
      found: 'no file',
      expected: of(v, 'expected'),
      remedy: 'Name at least one file.',
    }),
  },
  'command/input-twice': {
    severity: 'error',
    text: (v) => ({
      found: `"-" for ${of(v, 'names')}`,
      expected: '"-" for one of them: standard input can be read once',
      remedy: 'Name a file for the others.',
    }),
  },
  'command/no-such-day': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'name')} ${of(v, 'value')}`,
      expected: `a day of the calendar, such as 2026-04-01${of(v, 'or')}`,
      remedy: of(v, 'remedy'),
    }),
  },
  'command/unknown-zone': {
    severity: 'error',
    text: (v) => ({
      found: `--zone ${of(v, 'value')}`,
      expected: 'a time zone of the IANA list, such as Europe/Amsterdam or Asia/Kolkata',
      remedy: 'Correct the name. An offset such as +05:30 is none: it does not tell when clocks change.',
    }),
  },
  'command/unknown-locale': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}" as the locale`,
      expected: 'a language tag such as en-IN, en or de-CH',
      remedy: `Correct it${of(v, 'where') === '' ? '' : ` in ${of(v, 'where')}`}, or leave it out to group digits as in English.`,
    }),
  },
  'command/no-such-bill': {
    severity: 'error',
    text: (v) => ({
      found: `--month ${of(v, 'value')}`,
      expected: `a bill of the book: ${of(v, 'known')}`,
      remedy: 'Give the number of the bill, or a month such as 2025-05.',
    }),
  },
  'command/option-alone': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'name')} without ${of(v, 'other')}`,
      expected: `${of(v, 'name')} together with ${of(v, 'other')}`,
      remedy: `Add ${of(v, 'other')}, or leave ${of(v, 'name')} out.`,
    }),
  },
  'command/option-idle': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'name')}, which says nothing about a file of this kind`,
      expected: `${of(v, 'name')} with ${of(v, 'wanted')}`,
      remedy: 'Leave it out.',
    }),
  },
  'command/one-file': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'count')} files`,
      expected: 'one meter file',
      remedy: 'Read them one after the other.',
    }),
  },
  'command/one-tariff': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'count')} files`,
      expected: `one tariff file with ${of(v, 'name')}`,
      remedy: 'Name the file of one tariff.',
    }),
  },
  'command/not-a-number': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'name')} ${of(v, 'value')}`,
      expected: of(v, 'expected'),
      remedy: 'Correct the number, or leave the option out.',
    }),
  },
  'command/not-one-of': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'name')} ${of(v, 'value')}`,
      expected: `${of(v, 'name')} with one of ${of(v, 'allowed')}`,
      remedy: 'Correct the spelling.',
    }),
  },
  'command/not-a-quantity': {
    severity: 'error',
    text: (v) => ({
      found: `--quantity ${of(v, 'value')}`,
      expected: 'the name of a quantity, "=" and a number of 0 or more, each name once',
      remedy: 'Write it like --quantity maximum-demand=12.5.',
    }),
  },
  'command/quantity-set': {
    severity: 'error',
    text: (v) => ({
      found: `--quantity ${of(v, 'value')}`,
      expected: 'a power or a measure: the units of a household without a plant follow from --units',
      remedy:
        'Leave it out; give units by --units, and the sanctioned load by --load or --quantity, not by both.',
    }),
  },
  'command/quantity-missing': {
    severity: 'error',
    text: (v) => ({
      found: `no value for "${of(v, 'name')}" (${of(v, 'label')}), which the tariff needs`,
      expected: `${of(v, 'option')}, in ${of(v, 'unit')}`,
      remedy: 'Add it: a year cannot be billed without.',
    }),
  },
  'command/no-such-case': {
    severity: 'error',
    text: (v) => ({
      found: `--case ${of(v, 'value')}`,
      expected: `a case of the file: ${of(v, 'known')}`,
      remedy: 'Give the id of the case.',
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];
