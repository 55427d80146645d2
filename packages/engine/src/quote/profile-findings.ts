import type { FindingKind } from '../quantity/index.ts';

type Values = Readonly<Record<string, string>>;
const of = (values: Values, key: string): string => values[key] ?? '';

/** How many there are of a kind, where there is more than the one told. */
const firstOf = (count: string): string => (count === '1' ? '' : `, the first of ${count} such`);

/** What can be said of an interval profile and of a battery, by code. */
export const QUOTE_PROFILE_FINDINGS = {
  'quote/profile-interval': {
    severity: 'error',
    text: (v) => ({
      found: `a profile with ${of(v, 'found')}`,
      expected: 'intervals of 5, 15, 30 or 60 minutes that begin with the hour',
      remedy: 'Give the profile in one of these lengths, on the local clock.',
    }),
  },
  'quote/profile-value': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'value')} for ${of(v, 'what')} in the interval from ${of(v, 'start')}${firstOf(of(v, 'count'))}`,
      expected: `whole watt-hours from 0 to ${of(v, 'most')}`,
      remedy: 'Correct the values; an export is no negative use.',
    }),
  },
  'quote/profile-out-of-order': {
    severity: 'error',
    text: (v) => ({
      found: `the interval from ${of(v, 'start')} after the one from ${of(v, 'before')}`,
      expected: 'intervals in order of time, none twice but where the clocks go back',
      remedy: 'Put the intervals in order, and leave out what stands there twice.',
    }),
  },
  'quote/profile-month-missing': {
    severity: 'error',
    text: (v) => ({
      found: `a profile without ${of(v, 'months')}`,
      expected: 'intervals of each of the twelve calendar months',
      remedy: 'Give a profile of a whole year, or the share of own use in its place.',
    }),
  },
  'quote/profile-month-in-part': {
    severity: 'note',
    text: (v) => ({
      found: `a profile with ${of(v, 'count')} intervals of ${of(v, 'month')}, of ${of(v, 'whole')}`,
      expected: 'every interval of the month',
      remedy: 'The shape of the days that are there is taken for the whole month.',
    }),
  },
  'quote/profile-month-empty': {
    severity: 'error',
    text: (v) => ({
      found: `a profile with no ${of(v, 'what')} at all in ${of(v, 'month')}, where the quote has ${of(v, 'units')} units`,
      expected: `${of(v, 'what')} in some interval of the month`,
      remedy: 'Give the intervals of that month, or correct its units.',
    }),
  },
  'quote/profile-splits-block': {
    severity: 'error',
    text: (v) => ({
      found: `an interval from ${of(v, 'start')}, of ${of(v, 'minutes')} minutes, that two time blocks share`,
      expected: 'intervals inside the time blocks of the tariff',
      remedy: 'Give the profile in shorter intervals.',
    }),
  },
  'quote/profile-splits-window': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'window')}", which nets from ${of(v, 'from')} to ${of(v, 'to')}, beside intervals of ${of(v, 'minutes')} minutes`,
      expected: 'hours that begin and end with an interval',
      remedy: 'Give the profile in shorter intervals.',
    }),
  },
  'quote/profile-window-in-two-blocks': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'window')}", which nets what two time blocks share: "${of(v, 'block')}" and "${of(v, 'other')}" in the window from ${of(v, 'start')}`,
      expected: 'energy that is netted inside one time block',
      remedy: 'Correct the windows of the tariff, or the times of its blocks: meters would not tell either.',
    }),
  },
  'quote/share-beside-profile': {
    severity: 'note',
    text: (v) => ({
      found: `a share of own use of ${of(v, 'share')} % beside an interval profile`,
      expected: 'one of them',
      remedy: 'Own use is counted from the profile, and the share is not used.',
    }),
  },
  'quote/battery-estimated': {
    severity: 'note',
    text: () => ({
      found: 'a battery, and no interval profile',
      expected: 'a profile, from which charging and discharging follow',
      remedy: 'What it brings is an estimate by the mean day of each month, and rather too high.',
    }),
  },
  'quote/promise-by-blocks': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'count')} ${of(v, 'count') === '1' ? 'period' : 'periods'} without units of ${of(v, 'names')}, the first from ${of(v, 'first')}`,
      expected: 'units of every time block and measure that the tariff of the quote bills',
      remedy: of(v, 'remedy'),
    }),
  },
  'quote/promise-other-blocks': {
    severity: 'error',
    text: (v) => ({
      found: `a tariff of today that bills by ${of(v, 'today')}`,
      expected: `time blocks and windows of the quote's tariff (${of(v, 'own')})`,
      remedy:
        'Compare the bills with those of the quote one by one: units of other blocks are not those that were promised.',
    }),
  },
} as const satisfies Readonly<Record<string, FindingKind>>;
