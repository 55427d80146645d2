import type { FindingKind } from '../../quantity/index.ts';

type Values = Readonly<Record<string, string>>;

const of = (v: Values, key: string): string => v[key] ?? '';

const stretches = (v: Values): string =>
  `the ${of(v, 'count')} days before, from ${of(v, 'first')}, made ${of(v, 'before')} units a day, ` +
  `${of(v, 'beforeLevel')} % of ${of(v, 'season')}; the ${of(v, 'count')} days from ${of(v, 'day')} to ` +
  `${of(v, 'last')} made ${of(v, 'after')}, ${of(v, 'afterLevel')} %`;

/** Everything that the course of a plant's days can show, by code. */
export const PLANT_LEVEL_FINDINGS = {
  'plant/season-unknown': {
    severity: 'note',
    text: (v) => ({
      found: `${of(v, 'count')} days, and nothing to tell the season by`,
      expected: 'a monthly table, irradiation by month, or the same days of the year before',
      remedy:
        'Lasting falls and slow ones were not looked for: they could not be told from the season. Add the ' +
        "quote's table to the plant document.",
    }),
  },
  'plant/step-down': {
    severity: 'question',
    grouped: ['before', 'after'],
    text: (v) => ({
      found: `${of(v, 'percent')} % less from about ${of(v, 'day')} on: ${stretches(v)}`,
      expected: `a level that lasts; ${of(v, 'percent')} % is about ${of(v, 'part')}`,
      remedy:
        'A lasting fall is a finding, not a diagnosis. Compare the lights or displays of the inverters, and ' +
        'what each of them made; look for a tripped breaker, new shade, and a changed meter or factor. Work on ' +
        'inverters, fuses and connectors is for licensed people: the modules carry dangerous direct current ' +
        'in daylight.',
    }),
  },
  'plant/step-up': {
    severity: 'question',
    grouped: ['before', 'after'],
    text: (v) => ({
      found: `${of(v, 'percent')} % more from about ${of(v, 'day')} on: ${stretches(v)}`,
      expected: 'a level that lasts',
      remedy:
        'Was capacity added? Then add it to the plant document with its day. Was something repaired, a tree ' +
        'cut, the meter or its factor changed? Then note it in the diary.',
    }),
  },
  'plant/slow-slide': {
    severity: 'question',
    text: (v) => ({
      found:
        `a slow fall of ${of(v, 'percent')} % from ${of(v, 'first')} to ${of(v, 'last')}, ${of(v, 'count')} days ` +
        `of data, that ended ${of(v, 'ended')}`,
      expected: 'no fall beyond the season',
      remedy:
        'Dirt is the usual reason, washed off by rain or a cleaning. Clean more often in such weeks: early or ' +
        'late in the day, with plain water and a soft cloth, from where you stand safely.',
    }),
  },
} as const satisfies Readonly<Record<string, FindingKind>>;
