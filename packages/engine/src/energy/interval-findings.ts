import { findingMaker, type Finding, type FindingPlace } from '../quantity/index.ts';

type Values = Readonly<Record<string, string>>;

const of = (v: Values, key: string): string => v[key] ?? '';
/** So many of something, with the first and the last: "3 intervals missing, from … to …". */
const counted = (v: Values, what: string): string =>
  of(v, 'count') === '1'
    ? `1 interval ${what}: ${of(v, 'first')}`
    : `${of(v, 'count')} intervals ${what}, the first at ${of(v, 'first')}, the last at ${of(v, 'last')}`;

/** Everything that can be said of interval data, by code. */
export const INTERVAL_FINDINGS = {
  'energy/interval-missing': {
    severity: 'question',
    grouped: ['count'],
    text: (v) => ({
      found: counted(v, 'missing'),
      expected: `an interval of ${of(v, 'minutes')} minutes for all of the period from ${of(v, 'from')} to ${of(v, 'to')}`,
      remedy:
        'Ask for the missing data. What they held is in none of the sums. If an hour is missing because the ' +
        'clocks went forward, name the day as a clock change.',
    }),
  },
  'energy/interval-repeated': {
    severity: 'question',
    grouped: ['count'],
    text: (v) => ({
      found: counted(v, 'twice, with the same values'),
      expected: 'each interval once',
      remedy:
        'Take the second out. It is counted once. If the clocks went back, name the day as a clock change.',
    }),
  },
  'energy/interval-conflict': {
    severity: 'error',
    grouped: ['count'],
    text: (v) => ({
      found: counted(v, 'twice, with different values'),
      expected: 'each interval once',
      remedy:
        'Keep the one that is right. If the clocks went back, name the day as a clock change: a whole hour ' +
        'then follows the hour that it repeats.',
    }),
  },
  'energy/interval-hour-twice': {
    severity: 'question',
    text: (v) => ({
      found: `the hour from ${of(v, 'first')} twice, one after the other`,
      expected: 'an hour twice only on the day the clocks go back',
      remedy: 'Both are counted. Name the day as a clock change if it is one; else take the second out.',
    }),
  },
  'energy/interval-out-of-order': {
    severity: 'error',
    grouped: ['count'],
    text: (v) => ({
      found: counted(v, 'after a later one'),
      expected: 'intervals in order of time',
      remedy: 'Put them in order.',
    }),
  },
  'energy/interval-off-grid': {
    severity: 'error',
    grouped: ['count'],
    text: (v) => ({
      found: counted(v, 'off the grid'),
      expected: `starts on multiples of ${of(v, 'minutes')} minutes from the full hour`,
      remedy: 'Correct the starts, or the length of the intervals.',
    }),
  },
  'energy/interval-straddles': {
    severity: 'error',
    text: (v) => ({
      found: `the interval of ${of(v, 'minutes')} minutes at ${of(v, 'first')}, across the edge of the period at ${of(v, 'edge')}`,
      expected: 'intervals that lie in one period',
      remedy: 'Correct the start: nothing says which part of the interval lies in which period.',
    }),
  },
  'energy/interval-not-whole': {
    severity: 'error',
    grouped: ['count'],
    text: (v) => ({
      found: `${counted(v, `with no whole watt-hours of ${of(v, 'channel')}`)} (${of(v, 'value')})`,
      expected: 'whole numbers of watt-hours, 0 or more',
      remedy: 'Correct the value; units of kWh have to be given as watt-hours.',
    }),
  },
  'energy/interval-too-large': {
    severity: 'error',
    text: (v) => ({
      found: `a sum of ${of(v, 'channel')} that is too large to be exact`,
      expected: 'at most 9,007,199,254,740,991 Wh in a period',
      remedy: 'Check the unit of the values.',
    }),
  },
  'energy/interval-splits-block': {
    severity: 'error',
    text: (v) => ({
      found: `the interval of ${of(v, 'minutes')} minutes at ${of(v, 'first')}, which lies in "${of(v, 'block')}" and "${of(v, 'other')}"`,
      expected: 'intervals that lie in one time block',
      remedy: 'Use intervals as short as the tariff changes its block, or correct the times of the blocks.',
    }),
  },
  'energy/interval-window-in-two-blocks': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'window')}" nets ${of(v, 'span')}, which lies in "${of(v, 'block')}" and "${of(v, 'other')}"`,
      expected: 'energy that is netted inside one time block',
      remedy:
        'Net by shorter windows, or correct the times of the blocks: what is left belongs to no one block.',
    }),
  },
  'energy/interval-splits-window': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'window')}" nets from ${of(v, 'from')} to ${of(v, 'to')}, in intervals of ${of(v, 'minutes')} minutes`,
      expected: 'hours that begin and end with an interval',
      remedy: 'Use shorter intervals, or correct the hours.',
    }),
  },
  'energy/interval-no-channel': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'window')}" nets ${of(v, 'channel')}, which the intervals do not have`,
      expected: `intervals with ${of(v, 'channel')}`,
      remedy: 'Add the values, or use a tariff that does not need them.',
    }),
  },
  'energy/interval-holidays-unknown': {
    severity: 'question',
    text: (v) => ({
      found: `no holiday of ${of(v, 'year')} in the tariff, which has blocks of its own for holidays`,
      expected: 'the holidays of every year that is billed',
      remedy: 'Add them to the tariff. Without them every day is its weekday.',
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];

/** A code of a finding about interval data. */
export type IntervalFindingCode = keyof typeof INTERVAL_FINDINGS;

/** Make a finding about interval data. */
export const intervalFinding: (code: IntervalFindingCode, place: FindingPlace, values?: Values) => Finding =
  findingMaker<IntervalFindingCode>(INTERVAL_FINDINGS);
