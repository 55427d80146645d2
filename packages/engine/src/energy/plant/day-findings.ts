import type { FindingKind } from '../../quantity/index.ts';

type Values = Readonly<Record<string, string>>;

const of = (v: Values, key: string): string => v[key] ?? '';

const days = (count: string): string => (count === '1' ? '1 day' : `${count} days`);

/** "on 3 days, from 2025-05-01 to 2025-05-03". */
const span = (v: Values): string =>
  of(v, 'count') === '1'
    ? `on ${of(v, 'first')}`
    : `on ${of(v, 'count')} days, from ${of(v, 'first')} to ${of(v, 'last')}`;

/** Everything that single days of a plant can show, by code. */
export const PLANT_DAY_FINDINGS = {
  'plant/nothing-yet': {
    severity: 'note',
    text: (v) => ({
      found: `0 units ${span(v)}, at the beginning`,
      expected: 'a plant that makes something every day',
      remedy:
        'Taken for days before the plant ran, and left out. Write its first day as "from" of the capacity.',
    }),
  },
  'plant/missing-days': {
    severity: 'note',
    text: (v) => ({
      found: `no value ${span(v)}`,
      expected: 'a value for every day',
      remedy: 'Nothing is made up for them. Add them if the inverter or the meter still has them.',
    }),
  },
  'plant/zero-days': {
    severity: 'question',
    grouped: ['around'],
    text: (v) => ({
      found: `0 units ${span(v)}`,
      expected: `something on every day; the days around made ${of(v, 'around')} units a day`,
      remedy:
        'Was it an outage, snow, or work on the plant? Then note it in the diary as "outage". If it lasts: ' +
        'look at the lights or the display of the inverter, and whether a breaker has tripped. Do not open ' +
        'anything, and leave a breaker that trips again to a licensed person: the modules carry dangerous ' +
        'direct current in daylight.',
    }),
  },
  'plant/stuck-register': {
    severity: 'question',
    grouped: ['export'],
    text: (v) => ({
      found: `0 units of generation ${span(v)}, while ${of(v, 'export')} units went to the grid`,
      expected: 'generation of at least what was given, unless a battery gave it',
      remedy:
        'The generation register or its reading stands still, not the plant. Read the meter itself. A sealed ' +
        'meter is for the licensee to open.',
    }),
  },
  'plant/same-value': {
    severity: 'question',
    grouped: ['units'],
    text: (v) => ({
      found: `the same ${of(v, 'units')} units ${span(v)}`,
      expected: 'days that differ, if only a little',
      remedy:
        'A value that was carried on, most likely: a reading that was not fetched, or filled in. Compare with ' +
        'the register on the first and the last of these days.',
    }),
  },
  'plant/spike': {
    severity: 'question',
    grouped: ['units', 'most'],
    text: (v) => ({
      found: `${of(v, 'units')} units on ${of(v, 'first')}`,
      expected:
        of(v, 'because') === 'limit'
          ? `at most ${of(v, 'most')} units, 7.5 per kWp (common practice)`
          : `no more than twice the ${of(v, 'most')} units of the best day within 30 days (our own rule)`,
      remedy: 'A mistyped digit, a changed meter, or a reading in other units. Left out of the comparisons.',
    }),
  },
  'plant/lump': {
    severity: 'note',
    grouped: ['units', 'best'],
    text: (v) => ({
      found:
        `${of(v, 'units')} units on ${of(v, 'first')}, after ${days(of(v, 'gap'))} without any; the best day ` +
        `around made ${of(v, 'best')}`,
      expected: 'the units of each day on that day',
      remedy:
        'Several days in one, most likely: the plant ran, and the meter was not read. Left out of the ' +
        'comparisons.',
    }),
  },
  'plant/short-days': {
    severity: 'question',
    text: (v) => ({
      found:
        `from ${of(v, 'first')} on the plant runs ${of(v, 'minutes')} minutes a day less than ${of(v, 'than')}, ` +
        `most of it in the ${of(v, 'end')}; ${of(v, 'count')} days show it`,
      expected: 'at most an hour less (our own rule)',
      remedy:
        'New shade is one reason: a tree, a tank, a building. An inverter that starts late is another. Look at ' +
        'the roof from the ground at that hour. Going up is work at height, for people equipped for it.',
    }),
  },
} as const satisfies Readonly<Record<string, FindingKind>>;
