import type { FindingKind } from '../../quantity/index.ts';

/** Everything that can be wrong with a plant document of the right form, by code. */
export const PLANT_DOCUMENT_FINDINGS = {
  'plant/number-out-of-range': {
    severity: 'error',
    text: (v) => ({
      found: `${v['value'] ?? ''} for ${v['what'] ?? ''}`,
      expected: v['range'] ?? '',
      remedy: 'Check the unit and the point.',
    }),
  },
  'plant/ratio-as-percent': {
    severity: 'error',
    text: (v) => ({
      found: `a performance ratio of ${v['value'] ?? ''}`,
      expected: 'a number above 0 and up to 1, such as "0.78" for 78 %',
      remedy: `Was a percentage meant? Then write "${v['offer'] ?? ''}".`,
    }),
  },
  'plant/no-such-day': {
    severity: 'error',
    text: (v) => ({
      found: `"${v['value'] ?? ''}", which is no day of the calendar`,
      expected: 'a day as yyyy-mm-dd',
      remedy: 'Correct the day.',
    }),
  },
  'plant/capacity-order': {
    severity: 'error',
    text: (v) => ({
      found:
        v['from'] === ''
          ? 'a later capacity without a day'
          : `a capacity from ${v['from'] ?? ''} on, listed late`,
      expected: v['before'] === '' ? 'the first day with this capacity' : `a day after ${v['before'] ?? ''}`,
      remedy: 'Give each change of capacity its first day, the earliest change first.',
    }),
  },
  'plant/through-before-date': {
    severity: 'error',
    text: (v) => ({
      found: `an entry from ${v['date'] ?? ''} through ${v['through'] ?? ''}`,
      expected: 'a last day that is not before the first',
      remedy: 'Correct one of the two days, or leave "through" out where it was one day.',
    }),
  },
  'plant/not-twelve-months': {
    severity: 'error',
    text: (v) => ({
      found: `${v['count'] ?? ''} values`,
      expected: '12 values, January to December',
      remedy: 'List every month once; for a month without sun write "0".',
    }),
  },
  'plant/nothing-expected': {
    severity: 'error',
    text: () => ({
      found: 'a table of zeros',
      expected: 'a value above 0 in at least one month',
      remedy: 'Write what the quote or the source lists, or take the table out.',
    }),
  },
  'plant/one-expectation': {
    severity: 'error',
    text: (v) => ({
      found: v['given'] === '' ? 'none of them' : `${v['given'] ?? ''} together`,
      expected: 'one of "monthly", "irradiation", "lastYears"',
      remedy: 'Keep the one that the plant is to be judged by.',
    }),
  },
  'plant/irradiation-incomplete': {
    severity: 'error',
    text: (v) => ({
      found: `"${v['has'] ?? ''}" without ${v['lacks'] ?? ''}`,
      expected: '"irradiation", "unit", "performanceRatio" and "source" together',
      remedy: 'Add what is missing: irradiation alone does not tell what a plant makes.',
    }),
  },
  'plant/table-implausible': {
    severity: 'question',
    grouped: ['year'],
    text: (v) => ({
      found: `${v['year'] ?? ''} units a year for ${v['capacity'] ?? ''} kWp, ${v['yield'] ?? ''} per kWp and day`,
      expected: 'less than 7.5 units per kWp and day, which no plant goes beyond (common practice)',
      remedy: 'Is the table in kWh, and for a plant of this size?',
    }),
  },
} as const satisfies Readonly<Record<string, FindingKind>>;
