import type { FindingKind } from '../quantity/index.ts';

type Values = Readonly<Record<string, string>>;
const of = (values: Values, key: string): string => values[key] ?? '';

/** Everything that can be wrong with a quote document of the right form, by code. */
export const QUOTE_INPUT_FINDINGS = {
  'quote/number-out-of-range': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'value')} for ${of(v, 'what')}`,
      expected: of(v, 'range'),
      remedy: 'Check the unit, the sign and the point.',
    }),
  },
  'quote/no-such-day': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}", which is no day of the calendar`,
      expected: `a day as ${of(v, 'form')}`,
      remedy: 'Correct the day.',
    }),
  },
  'quote/start-inside-month': {
    severity: 'error',
    text: (v) => ({
      found: `a start on ${of(v, 'value')}`,
      expected: 'the first day of a month',
      remedy: `The quote counts whole months. Begin on ${of(v, 'first')}, and say when the plant is switched on in the offer.`,
    }),
  },
  'quote/month-unknown': {
    severity: 'error',
    text: (v) => ({
      found: `"${of(v, 'value')}" for a month`,
      expected: '"01" for January to "12" for December',
      remedy: 'Name each month by its two digits.',
    }),
  },
  'quote/months-missing': {
    severity: 'error',
    text: (v) => ({
      found: `no value for ${of(v, 'months')}`,
      expected: 'a value for each of the twelve months',
      remedy: of(v, 'remedy'),
    }),
  },
  'quote/months-filled': {
    severity: 'note',
    text: (v) => ({
      found: `no bill of ${of(v, 'months')}`,
      expected: 'twelve months of bills',
      remedy: `Filled by ${of(v, 'rule')}, and marked. Ask for the missing bills.`,
    }),
  },
  'quote/needs-one-of': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'found')} of ${of(v, 'choices')}`,
      expected: 'exactly one of them',
      remedy: 'Give one and leave the others out.',
    }),
  },
  'quote/irradiation-incomplete': {
    severity: 'error',
    text: (v) => ({
      found: `irradiation without ${of(v, 'missing')}`,
      expected: 'irradiation by month, its unit and the performance ratio',
      remedy: 'Add what is missing, or give the units of each month.',
    }),
  },
  'quote/irradiation-unused': {
    severity: 'note',
    text: (v) => ({
      found: `"${of(v, 'key')}" without irradiation`,
      expected: 'it beside the irradiation of each month, and nowhere else',
      remedy: 'The units are taken as they stand. Leave it out, or give the irradiation in their place.',
    }),
  },
  'quote/self-use-above-use': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'share')} % of ${of(v, 'made')} units in ${of(v, 'month')}: ${of(v, 'own')} used at home of ${of(v, 'used')} used in all`,
      expected: `at most ${of(v, 'most')} %`,
      remedy: 'Lower the share of own use, or check the use of that month.',
    }),
  },
  'quote/loan-longer-than-life': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'months')} instalments`,
      expected: `at most ${of(v, 'most')}: the life that is looked at`,
      remedy: 'Shorten the loan, or look at a longer life.',
    }),
  },
  'quote/loan-above-price': {
    severity: 'error',
    text: (v) => ({
      found: `a loan of ${of(v, 'amount')}`,
      expected: `at most the price, ${of(v, 'price')}`,
      remedy: 'Correct the loan or the price.',
    }),
  },
  'quote/year-outside-life': {
    severity: 'error',
    text: (v) => ({
      found: `${of(v, 'what')} in year ${of(v, 'year')}`,
      expected: `a year from 1 to ${of(v, 'years')}`,
      remedy: 'Correct the year, or look at a longer life.',
    }),
  },
  'quote/subsidy-above-price': {
    severity: 'error',
    text: (v) => ({
      found: `a subsidy of ${of(v, 'amount')}`,
      expected: `at most the price, ${of(v, 'price')}`,
      remedy: 'Correct the subsidy or the price.',
    }),
  },
  'quote/policy-unknown': {
    severity: 'error',
    text: (v) => ({
      found: `the case "${of(v, 'name')}"`,
      expected: `one of: ${of(v, 'known')}`,
      remedy: 'Name a case that stands under "policies".',
    }),
  },
} as const satisfies Readonly<Record<string, FindingKind>>;
