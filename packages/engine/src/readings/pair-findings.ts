import type { FindingKind } from '../quantity/index.ts';

const of = (v: Readonly<Record<string, string>>, key: string): string => v[key] ?? '';

/** What can be said of readings one after the other, by code. */
export const PAIR_FINDINGS = {
  'reading/none': {
    severity: 'error',
    text: (v) => ({
      found: of(v, 'count') === '1' ? '1 reading' : `${of(v, 'count')} readings`,
      expected: 'at least two, the first of which opens the first period',
      remedy: 'Add a reading. Every bill needs one at each end of its period.',
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
    grouped: ['units'],
    text: (v) => ({
      found: `${of(v, 'value')} after ${of(v, 'before')}: the counter passed ${of(v, 'top')}`,
      expected: `${of(v, 'units')} units, plausible for the days`,
      remedy: 'Nothing to do if the display shows it.',
    }),
  },
  'reading/registers-swapped': {
    severity: 'error',
    text: () => ({
      found: 'import and export that each fit the other register better',
      expected: 'each register to go on from its own reading before',
      remedy: 'These look swapped. Swap them?',
    }),
  },
  'reading/net-screen': {
    severity: 'error',
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
    severity: 'error',
    text: (v) => ({
      found: 'numbers far below the readings before',
      expected: 'the big number that only grows',
      remedy: `Did you type the units used this month? Then the readings are ${of(v, 'offer')}.`,
    }),
  },
  'reading/large-advance': {
    severity: 'question',
    grouped: ['units', 'most'],
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
} as const satisfies Readonly<Record<string, FindingKind>>;
