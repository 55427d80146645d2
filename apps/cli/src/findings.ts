import { findingMaker, inFileOrder, type Finding, type FindingPlace } from '@unitbook/engine';

type Values = Readonly<Record<string, string>>;

const of = (values: Values, key: string): string => values[key] ?? '';

/** Everything that can keep a command from running, by code. */
export const COMMAND_FINDINGS = {
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
  'command/input-twice': {
    severity: 'error',
    text: (v) => ({
      found: `"-" for ${of(v, 'names')}`,
      expected: '"-" for one of them: standard input can be read once',
      remedy: 'Name a file for the others.',
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
  'command/no-such-day': {
    severity: 'error',
    text: (v) => ({
      found: `--today ${of(v, 'value')}`,
      expected: 'a day of the calendar, such as 2026-04-01',
      remedy: 'Correct the date, or leave the option out to use the clock.',
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

/** A code of a finding about a command. */
export type CommandFindingCode = keyof typeof COMMAND_FINDINGS;

/** Make a finding about a command. */
export const commandFinding: (code: CommandFindingCode, place: FindingPlace, values?: Values) => Finding =
  findingMaker<CommandFindingCode>(COMMAND_FINDINGS);

/** A finding and what it is about: a file, or the command as it was typed. */
export interface PlacedFinding {
  readonly subject: string;
  readonly finding: Finding;
}

/**
 * Findings in the order in which a reader meets them: file by file, as the files came, and in each from
 * its beginning to its end.
 */
export function inReadingOrder(placed: readonly PlacedFinding[]): readonly PlacedFinding[] {
  const subjects = [...new Set(placed.map(({ subject }) => subject))];
  return subjects.flatMap((subject) =>
    about(
      subject,
      inFileOrder(placed.filter((one) => one.subject === subject).map(({ finding }) => finding)),
    ),
  );
}

/** Findings about one file or command. */
export function about(subject: string, findings: readonly Finding[]): readonly PlacedFinding[] {
  return findings.map((finding) => ({ subject, finding }));
}
