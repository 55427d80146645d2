import type { FindingKind } from '../../quantity/index.ts';

type Values = Readonly<Record<string, string>>;

const of = (v: Values, key: string): string => v[key] ?? '';

const made = (v: Values): string =>
  `${of(v, 'actual')} units from ${of(v, 'from')} to ${of(v, 'to')}, ${of(v, 'percent')} % of the ` +
  `${of(v, 'expected')} expected`;

const within = (v: Values): string =>
  `${of(v, 'percent')} % lies ${of(v, 'sigmas')} sigma from 100 %, where one sigma is ${of(v, 'sigma')} %`;

/** Everything that can be said of the months of a plant, by code. */
export const PLANT_MONTH_FINDINGS = {
  'plant/month-watch': {
    severity: 'note',
    grouped: ['actual', 'expected'],
    text: (v) => ({
      found: made(v),
      expected: `within one sigma (our own rule); ${within(v)}`,
      remedy:
        'About one healthy month in six is as low as this. Watch the next month. Were the readings taken on ' +
        'the right days, was the weather dull, are the modules dirty?',
    }),
  },
  'plant/month-low': {
    severity: 'question',
    grouped: ['actual', 'expected'],
    text: (v) => ({
      found: made(v),
      expected: `within two sigma (our own rule); ${within(v)}`,
      remedy:
        'Look at it. A low month is a finding, not a diagnosis: check the days of the readings, outages, dull ' +
        'weather, dirt and new shade, then what the inverter shows, then the meter. Opening anything is for ' +
        'licensed people: modules carry dangerous direct current in daylight.',
    }),
  },
  'plant/month-high': {
    severity: 'question',
    grouped: ['actual', 'expected'],
    text: (v) => ({
      found: made(v),
      expected: `within two sigma (our own rule); ${within(v)}`,
      remedy:
        'Was capacity added, or is the table for a smaller plant? Then correct the plant document. Else check ' +
        'the days of the readings and the multiplying factor of the meter.',
    }),
  },
  'plant/month-cannot-be-told': {
    severity: 'note',
    text: (v) => ({
      found: `from ${of(v, 'from')} to ${of(v, 'to')}: ${of(v, 'reason')}`,
      expected: of(v, 'needed'),
      remedy: 'Nothing can be said about this period; nothing is wrong with it for that.',
    }),
  },
} as const satisfies Readonly<Record<string, FindingKind>>;
