import type { FindingKind } from '../quantity/index.ts';

const of = (v: Readonly<Record<string, string>>, key: string): string => v[key] ?? '';

/** What can be said of an account and of what was typed for one reading, by code. */
export const TYPED_FINDINGS = {
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
      expected: `a number above 0, at most ${of(v, 'most')}, with at most 3 decimals`,
      remedy: 'Copy it from the bill, the sanction letter or the nameplate.',
    }),
  },
  'account/no-such-day': {
    severity: 'error',
    text: (v) => ({
      found: `"${v['value'] ?? ''}"`,
      expected: `a day of the calendar, as ${v['form'] ?? ''}`,
      remedy: 'Correct the date.',
    }),
  },
  'account/meters-not-in-order': {
    severity: 'error',
    text: (v) => ({
      found: `a meter from ${of(v, 'from')} after one from ${of(v, 'before')}`,
      expected: 'meters in order of time, each from a day of its own',
      remedy: 'Correct the day, or put them in order.',
    }),
  },
  'account/rate-twice': {
    severity: 'error',
    text: (v) => ({
      found: `rate ${of(v, 'rate')} a second time`,
      expected: 'each rate of a register once',
      remedy: 'Name the rates as the display numbers them.',
    }),
  },
  'account/blank': {
    severity: 'note',
    text: (v) => ({
      found: `nothing for ${of(v, 'what')}`,
      expected: `a number; a blank counts as ${of(v, 'counts')}`,
      remedy: 'Nothing to do if that is right.',
    }),
  },
  'account/number-missing': {
    severity: 'error',
    text: (v) => ({
      found: `nothing for ${of(v, 'what')}`,
      expected: 'a number above 0',
      remedy: 'Copy it from the bill, the sanction letter or the nameplate.',
    }),
  },
  'account/credit-not-a-number': {
    severity: 'error',
    text: (v) => ({
      found: `an opening credit of "${of(v, 'value')}"`,
      expected: 'a number of units with at most 3 decimals; "0" for none',
      remedy: 'Copy the credit carried forward from the last bill.',
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
  'reading/no-day': {
    severity: 'error',
    text: (v) => ({
      found: of(v, 'value') === '' ? 'no date' : `the date "${of(v, 'value')}"`,
      expected: 'the day of the reading, such as 2025-05-01',
      remedy:
        'Look for "reading date" on the bill: from which day to which day? A month alone is not enough.',
    }),
  },
  'reading/no-year': {
    severity: 'error',
    text: (v) => ({
      found: `the date "${of(v, 'value')}", without a year`,
      expected: 'the day of the reading, such as 2025-05-01',
      remedy: of(v, 'offer') === '' ? 'Add the year.' : `Is it ${of(v, 'offer')}?`,
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
  'reading/unknown-rate': {
    severity: 'error',
    text: (v) => ({
      found: `a reading of ${of(v, 'register')} rate ${of(v, 'rate')}`,
      expected:
        of(v, 'known') === ''
          ? `no rates of ${of(v, 'register')}, since the account names none`
          : `one of the rates of the account: ${of(v, 'known')}`,
      remedy: 'Correct the rate, or add it to the register in the account.',
    }),
  },
  'reading/event-empty': {
    severity: 'error',
    text: (v) => ({
      found: `a ${of(v, 'event') === 'final' ? 'last' : 'first'} reading of a meter, without a number`,
      expected: 'every register of the meter that is changed',
      remedy: 'Copy them from the replacement slip.',
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
      remedy:
        of(v, 'offer') === '' ? 'Type the digits of the display only.' : `Did you mean ${of(v, 'offer')}?`,
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
      remedy:
        of(v, 'offer') === ''
          ? 'Check the point, or the number of decimals in the account.'
          : `Does the point group thousands? Use ${of(v, 'offer')}.`,
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
} as const satisfies Readonly<Record<string, FindingKind>>;
