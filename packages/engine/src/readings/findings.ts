import { findingMaker, type Finding, type FindingPlace } from '../quantity/index.ts';

const of = (v: Readonly<Record<string, string>>, key: string): string => v[key] ?? '';

/** Everything that can be said of readings and accounts, by code. */
export const READING_FINDINGS = {
  'account/load-in-watts': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'what')} of ${of(v, 'value')} kW`,
      expected: 'at most 100 kW for a home',
      remedy: `Is that watts? Write ${of(v, 'offer')} kW, or keep it if it is right.`,
    }),
  },
  'account/not-above-zero': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'what')} is ${of(v, 'value')}`,
      expected: 'a number above 0, with at most 3 decimals',
      remedy: 'Copy it from the bill, the sanction letter or the nameplate.',
    }),
  },
  'account/factor-on-large-load': {
    severity: 'question',
    text: (v) => ({
      found: `a multiplying factor of 1 on a connection of ${of(v, 'load')} kW`,
      expected: 'often a meter on current transformers, with a factor above 1',
      remedy:
        'Does the nameplate say "×" and a number? Enter it, or keep 1 if the meter is connected directly.',
    }),
  },
  'reading/none': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'count')} readings`,
      expected: 'at least two, the first of which opens the first period',
      remedy: 'Add a reading. Every bill needs one at each end of its period.',
    }),
  },
  'reading/no-day': {
    severity: 'error',
    text: (v) => ({
      found: of(v, 'value') === '' ? 'no date' : `the date "${of(v, 'value')}"`,
      expected: 'the day of the reading, such as 2025-05-01',
      remedy:
        'Look for "reading date" on the bill: from which day to which day? A month alone is not enough.',
    }),
  },
  'reading/day-or-month': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'value')}, read as ${of(v, 'read')}`,
      expected: 'a date that can be read in one way',
      remedy: `Keep it, or use ${of(v, 'other')} if the month comes first.`,
    }),
  },
  'reading/day-not-after': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'day')}, not after the reading before, ${of(v, 'before')}`,
      expected: 'dates that go forward',
      remedy: 'Correct the date, or put the rows in order of time.',
    }),
  },
  'reading/day-in-future': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'day')}, which is in the future`,
      expected: `a day up to today, ${of(v, 'today')}`,
      remedy: 'Correct the date.',
    }),
  },
  'reading/days-unusual': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'days')} days since the reading before`,
      expected: 'a bill of 20 to 70 days',
      remedy: 'Check both dates: the reading date counts, not the bill date. Keep it if it is right.',
    }),
  },
  'reading/days-differ': {
    severity: 'question',
    text: (v) => ({
      found: `dates ${of(v, 'days')} days apart, where the bill says ${of(v, 'printed')} days`,
      expected: 'as many days as the bill prints',
      remedy: 'Use the reading dates, not the date of the bill. Keep it if it is right.',
    }),
  },
  'reading/printed-days': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}" for the days printed on the bill`,
      expected: 'a whole number of days, such as 31',
      remedy: 'Copy it from the bill, or leave it empty.',
    }),
  },
  'reading/missing-register': {
    severity: 'error',
    text: (v) => ({
      found: `no ${of(v, 'register')} reading`,
      expected: `a number for every register of the account`,
      remedy: `Add what the ${of(v, 'meter')} meter shows for ${of(v, 'register')}.`,
    }),
  },
  'reading/extra-register': {
    severity: 'error',
    text: () => ({
      found: 'a generation reading',
      expected: 'none, since the account has no generation meter',
      remedy: 'Add the generation meter to the account, or take the reading out.',
    }),
  },
  'reading/formula': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}", which looks like a spreadsheet formula`,
      expected: 'a number',
      remedy: 'Save the sheet with values instead of formulas.',
    }),
  },
  'reading/mixed-separators': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}", with points and commas that fit no way of writing numbers`,
      expected: 'one decimal point or comma, and groups of two or three digits',
      remedy: 'Write it without grouping, such as 12892.4.',
    }),
  },
  'reading/comma-unclear': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}", where the comma can group thousands or mark decimals`,
      expected: 'a number that can be read in one way',
      remedy: `Write ${of(v, 'grouped')} or ${of(v, 'decimal')}.`,
    }),
  },
  'reading/letter': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}", with a letter`,
      expected: 'digits only',
      remedy: `Did you mean ${of(v, 'offer')}?`,
    }),
  },
  'reading/not-a-number': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}"`,
      expected: 'the number on the meter, such as 12892.4',
      remedy: 'Type the digits of the display only.',
    }),
  },
  'reading/negative': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'value')}, below 0`,
      expected: 'a register, which only counts up from 0',
      remedy: 'Take the minus sign off if the display shows none.',
    }),
  },
  'reading/too-many-digits': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'value')}, with ${of(v, 'count')} digits before the point`,
      expected: `at most ${of(v, 'digits')} on this register`,
      remedy:
        of(v, 'offer') === ''
          ? 'Check the digits, or the number of digits in the account.'
          : `Is the last digit red or after a dot? Use ${of(v, 'offer')}.`,
    }),
  },
  'reading/too-many-decimals': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'value')}, with ${of(v, 'count')} decimals`,
      expected: `at most ${of(v, 'decimals')} on this register`,
      remedy: 'Check the point, or the number of decimals in the account.',
    }),
  },
  'reading/screen-test': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'value')}, eights only`,
      expected: 'a reading',
      remedy: 'That is the screen test; wait for the next number. Keep it if the register really shows it.',
    }),
  },
  'reading/below-before': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'value')}, below the reading before, ${of(v, 'before')}`,
      expected: 'a register that counts up',
      remedy:
        `Did the counter pass ${of(v, 'top')}? Then confirm it. Was the meter changed? Then begin a new ` +
        'account with the new meter. Was the reading before estimated, or a digit mistyped? Correct it.',
    }),
  },
  'reading/rolled-over': {
    severity: 'note',
    text: (v) => ({
      found: `${of(v, 'value')} after ${of(v, 'before')}: the counter passed ${of(v, 'top')}`,
      expected: `${of(v, 'units')} units, plausible for the days`,
      remedy: 'Nothing to do if the display shows it.',
    }),
  },
  'reading/registers-swapped': {
    severity: 'question',
    text: () => ({
      found: 'import and export that each fit the other register better',
      expected: 'each register to go on from its own reading before',
      remedy: 'These look swapped. Swap them?',
    }),
  },
  'reading/net-screen': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'value')} for import, which is what import less export would show`,
      expected: `the import register, about ${of(v, 'offer')}`,
      remedy: 'This looks like the NET screen. Find the screen marked IMP or 1.8.0.',
    }),
  },
  'reading/same-as-before': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'value')} again, the same as last time`,
      expected: 'a register that has moved',
      remedy: 'Is this the "last bill" screen? Keep it if nothing was counted.',
    }),
  },
  'reading/units-not-readings': {
    severity: 'question',
    text: (v) => ({
      found: 'numbers far below the readings before',
      expected: 'the big number that only grows',
      remedy: `Did you type the units used this month? Then the readings are ${of(v, 'offer')}.`,
    }),
  },
  'reading/large-advance': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'units')} units in ${of(v, 'days')} days`,
      expected: `at most ${of(v, 'most')} for ${of(v, 'because')}`,
      remedy:
        of(v, 'offer') === ''
          ? 'Check the digits. Keep it if it is right.'
          : `Is the last digit red or after a dot? Use ${of(v, 'offer')}, or keep it if it is right.`,
    }),
  },
  'reading/estimated': {
    severity: 'note',
    text: () => ({
      found: 'an estimated reading',
      expected: 'an actual one',
      remedy: 'The next actual reading corrects it; keep a photo of the meter from about this day.',
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];

/** A code of a finding about readings or an account. */
export type ReadingFindingCode = keyof typeof READING_FINDINGS;

/** Make a finding about readings or an account. */
export const readingFinding: (
  code: ReadingFindingCode,
  place: FindingPlace,
  values?: Readonly<Record<string, string>>,
) => Finding = findingMaker<ReadingFindingCode>(READING_FINDINGS);
