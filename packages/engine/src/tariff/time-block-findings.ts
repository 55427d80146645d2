import { findingMaker, type Finding, type FindingPlace } from '../quantity/index.ts';

const of = (v: Readonly<Record<string, string>>, key: string): string => v[key] ?? '';
/** A stretch of time in words: "from 22:00 to 06:00 on sat, sun, 04-01 through 09-30". */
const stretch = (v: Readonly<Record<string, string>>): string =>
  `from ${of(v, 'from')} to ${of(v, 'to')} ${of(v, 'days') === '' ? 'on every day' : `on ${of(v, 'days')}`}` +
  (of(v, 'season') === '' ? '' : `, ${of(v, 'season')}`);

/** Everything that can be wrong with the time blocks of a tariff, by code. */
export const TIME_BLOCK_FINDINGS = {
  'tariff/block-unknown': {
    severity: 'error',
    text: (v) => ({
      found: `the time block "${of(v, 'block')}"`,
      expected: `one of the time blocks: ${of(v, 'blocks')}`,
      remedy: 'Add it under "blocks" or correct the name.',
    }),
  },
  'tariff/block-unused': {
    severity: 'error',
    text: (v) => ({
      found: `the time block "${of(v, 'block')}", which no entry of the calendar names`,
      expected: 'every block somewhere in the calendar',
      remedy: 'Add when it applies, or take it out.',
    }),
  },
  'tariff/block-same-id-twice': {
    severity: 'error',
    text: (v) => ({
      found: `a second time block with the id "${of(v, 'block')}"`,
      expected: 'each id once',
      remedy: 'Give this block another id, or take it out.',
    }),
  },
  'tariff/block-gap': {
    severity: 'error',
    text: (v) => ({
      found: `no block applies ${stretch(v)}`,
      expected: 'exactly one entry for every minute of every day',
      remedy: 'Add an entry for that time, or correct the times, days or seasons of the others.',
    }),
  },
  'tariff/block-overlap': {
    severity: 'error',
    text: (v) => ({
      found: `two blocks apply ${stretch(v)}: ${of(v, 'entries')}`,
      expected: 'exactly one entry for every minute of every day',
      remedy: 'Correct the times, days or seasons of these entries, so that one of them applies.',
    }),
  },
  'tariff/block-unknown-season': {
    severity: 'error',
    text: (v) => ({
      found: `the season "${of(v, 'season')}"`,
      expected: `one of the seasons of the time blocks: ${of(v, 'seasons')}`,
      remedy: 'Add it under "seasons" or correct the name.',
    }),
  },
  'tariff/block-no-such-time': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'time')}"`,
      expected: `a time of the clock, ${of(v, 'range')}`,
      remedy: 'Correct the time.',
    }),
  },
  'tariff/block-no-time': {
    severity: 'error',
    text: (v) => ({
      found: `from ${of(v, 'from')} to ${of(v, 'to')}, which is no time at all, or all day`,
      expected: 'an end that differs from the beginning',
      remedy: 'Correct one of the two. All day is written "00:00" to "24:00".',
    }),
  },
  'tariff/block-no-such-day': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'day')}"`,
      expected: 'a day of the calendar',
      remedy: 'Correct the date.',
    }),
  },
  'tariff/block-no-holidays': {
    severity: 'error',
    text: () => ({
      found: 'an entry for holidays, where no holiday is listed',
      expected: '"holidays" with their clause and their dates',
      remedy: 'List the holidays, or take "holiday" out of the entry.',
    }),
  },
} as const satisfies Parameters<typeof findingMaker>[0];

/** A code of a finding about time blocks. */
export type TimeBlockFindingCode = keyof typeof TIME_BLOCK_FINDINGS;

/** Make a finding about the time blocks of a tariff. */
export const timeBlockFinding: (
  code: TimeBlockFindingCode,
  place: FindingPlace,
  values?: Readonly<Record<string, string>>,
) => Finding = findingMaker<TimeBlockFindingCode>(TIME_BLOCK_FINDINGS);
