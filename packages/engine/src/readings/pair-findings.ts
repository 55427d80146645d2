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
  'reading/cycle-missed': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'days')} days since the reading before, after a period of ${of(v, 'before')}`,
      expected: 'periods about as long as the one before',
      remedy:
        'Is a reading missing in between? Add it: two short bills and one long bill differ where slabs or ' +
        'charges go by the month. Keep it if the utility billed both months in one.',
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
        `Did the counter pass ${of(v, 'top')}? Then confirm it. Was the meter changed? Then add the last ` +
        'reading of the old one and the first of the new one. Was a digit mistyped? Correct it.',
    }),
  },
  'reading/below-estimate': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'value')}, below the reading before, ${of(v, 'before')}, which was estimated`,
      expected: 'an estimate that the next actual reading does not fall below',
      remedy:
        of(v, 'offer') === ''
          ? 'The estimate was too high. Put a reading in its place: your own photo, or a share by days.'
          : `The estimate was too high. Put ${of(v, 'offer')} in its place, a share by days, or your own ` +
            'photo of the meter; what was printed is kept beside it.',
    }),
  },
  'reading/began-anew': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'value')}, below the reading before, ${of(v, 'before')}: the counter seems to have begun anew at 0`,
      expected: 'a register that counts up',
      remedy:
        'What it counted before that is not known, so own use is not worked out. If its last number is known, ' +
        'add it as the last reading of the old meter, and 0 as the first of the new one. A mistyped digit? Correct it.',
    }),
  },
  'reading/begins-anew': {
    severity: 'note',
    text: (v) => ({
      found: `a first reading of the ${of(v, 'meter')} meter on ${of(v, 'day')}, where the account names no other meter`,
      expected: 'a counter that began anew, or a meter that the account names',
      remedy: 'Nothing to do if it is the same meter. Was it changed? Add the new one to the account.',
    }),
  },
  'reading/meter-unknown': {
    severity: 'error',
    text: (v) => ({
      found: `a first reading of another ${of(v, 'meter')} meter on ${of(v, 'day')}, of which the account knows nothing`,
      expected: 'the new meter in the account, from that day, with its digits and multiplying factor',
      remedy: `Add it under the ${of(v, 'meter')} meter as a later one. A sealed meter is changed by the utility only.`,
    }),
  },
  'reading/meter-changed': {
    severity: 'error',
    text: (v) => ({
      found: `another ${of(v, 'meter')} meter or factor from ${of(v, 'day')}, inside this period`,
      expected: 'the last reading of the old one and the first of the new one on that day',
      remedy: 'Copy both from the replacement slip: every register of the meter.',
    }),
  },
  'reading/first-without-final': {
    severity: 'error',
    text: (v) => ({
      found: `a first reading of the ${of(v, 'meter')} meter, without the last one of the meter before`,
      expected: 'the last reading of the old meter, then the first of the new one',
      remedy: 'Add the last reading from the replacement slip.',
    }),
  },
  'reading/final-without-first': {
    severity: 'error',
    text: (v) => ({
      found: `a last reading of the ${of(v, 'meter')} meter, without the first one of the meter after it`,
      expected: 'the last reading of the old meter, then the first of the new one',
      remedy: 'Add the first reading from the replacement slip; it is not always 0.',
    }),
  },
  'reading/register-changed': {
    severity: 'error',
    text: (v) => ({
      found: `no ${of(v, 'register')} reading at both ends, ${of(v, 'from')} and ${of(v, 'to')}`,
      expected: 'every register of a meter read when it begins and when it ends',
      remedy: 'Add what is missing.',
    }),
  },
  'reading/unmetered-days': {
    severity: 'question',
    text: (v) => ({
      found: `no ${of(v, 'meter')} meter from ${of(v, 'from')} to ${of(v, 'to')}`,
      expected: 'the new meter on the day on which the old one is taken off',
      remedy: 'What was used in between is in no reading. Keep it if the slip says so.',
    }),
  },
  'reading/change-at-end': {
    severity: 'error',
    text: (v) => ({
      found: `a meter that ends or begins on ${of(v, 'day')}, and no reading after it`,
      expected: 'a reading of all registers that closes the period',
      remedy: 'Add the next reading; the bill of this period is made from both meters.',
    }),
  },
  'reading/rates-differ': {
    severity: 'question',
    text: (v) => ({
      found: `${of(v, 'total')} for ${of(v, 'register')} in all, where rates ${of(v, 'rates')} make ${of(v, 'sum')}`,
      expected: 'a total that is the sum of its rates, but for the digits a display cuts off',
      remedy: `The difference is ${of(v, 'difference')}. Check the registers, such as 1.8.0 = 1.8.1 + 1.8.2. Keep it if they are right.`,
    }),
  },
  'reading/rates-offset': {
    severity: 'note',
    text: (v) => ({
      found: `${of(v, 'total')} for ${of(v, 'register')} in all, where rates ${of(v, 'rates')} make ${of(v, 'sum')}, as far apart as before`,
      expected: 'a total that is the sum of its rates',
      remedy: 'Nothing to do: the registers of the rates began later. What they counted since agrees.',
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
    text: (v) => ({
      found:
        of(v, 'registers') === ''
          ? 'an estimated reading'
          : `an estimated reading of ${of(v, 'registers')} alone`,
      expected: 'an actual one',
      remedy: 'The next actual reading corrects it; keep a photo of the meter from about this day.',
    }),
  },
} as const satisfies Readonly<Record<string, FindingKind>>;
