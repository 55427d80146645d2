import type { FindingKind } from '../quantity/index.ts';

type Values = Readonly<Record<string, string>>;
const of = (values: Values, key: string): string => values[key] ?? '';

/** What can be said where a quote meets its tariff, by code. */
export const QUOTE_LIFE_FINDINGS = {
  'quote/other-tariff': {
    severity: 'question',
    text: (v) => ({
      found: `the tariff "${of(v, 'other')}"`,
      expected: `that of the quote, "${of(v, 'own')}"`,
      remedy: 'Take the tariff that the quote was worked out by, or name the other one in the quote.',
    }),
  },
  'quote/charge-unknown': {
    severity: 'error',
    text: (v) => ({
      found: `a rise of "${of(v, 'charge')}"`,
      expected: `one of the charges of the tariff: ${of(v, 'known')}`,
      remedy: 'Name a charge as the tariff does, or leave it out.',
    }),
  },
  'quote/charge-cannot-rise': {
    severity: 'error',
    text: (v) => ({
      found: `a rise of "${of(v, 'charge')}", which ${of(v, 'why')}`,
      expected: 'a charge with a rate in money whose line is rounded',
      remedy: of(v, 'remedy'),
    }),
  },
  'quote/tariff-goes-on': {
    severity: 'note',
    text: (v) => ({
      found: `a tariff that ends on ${of(v, 'last')}, ${of(v, 'part')}`,
      expected: `a tariff through ${of(v, 'through')}`,
      remedy: 'What is in force on its last day is assumed to go on, with the rises of the quote.',
    }),
  },
  'quote/self-use-unknown': {
    severity: 'note',
    text: () => ({
      found: 'neither a share of own use nor an interval profile',
      expected: 'one of them',
      remedy: 'The answer is a range: from nothing used at home to as much as use and generation allow.',
    }),
  },
  'quote/needs-profile': {
    severity: 'error',
    text: (v) => ({
      found: `a tariff with ${of(v, 'parts')}`,
      expected: 'an interval profile of use and generation',
      remedy: `Give the profile: months alone do not tell ${of(v, 'what')}.`,
    }),
  },
  'quote/settlement-day-needed': {
    severity: 'error',
    text: (v) => ({
      found: `a quote without "settlementDay", which "${of(v, 'ledger')}" goes by`,
      expected: 'the day of the year on which this account is settled',
      remedy: 'Add "settlementDay" to the quote, as mm-dd: the day that the customer chooses.',
    }),
  },
  'quote/other-currency': {
    severity: 'error',
    text: (v) => ({
      found: `a tariff in ${of(v, 'other')}`,
      expected: `one in ${of(v, 'own')}, as that of the quote`,
      remedy: 'Amounts of two currencies cannot be set against each other: take a tariff of the same one.',
    }),
  },
  'quote/promise-leaves-out': {
    severity: 'note',
    text: (v) => ({
      found: `${of(v, 'count')} from before the start of the quote`,
      expected: 'periods that begin on or after it',
      remedy: 'They are left out: the plant did not run yet.',
    }),
  },
  'quote/promise-before-start': {
    severity: 'error',
    text: () => ({
      found: 'no billing period that begins on or after the start of the quote',
      expected: 'readings from the first day of the plant on',
      remedy:
        'Give the readings since the plant runs. Where it began on another day, correct the start of the quote.',
    }),
  },
  'quote/promise-without-generation': {
    severity: 'error',
    text: () => ({
      found: 'periods of which generation is not known',
      expected: 'readings of the generation meter for every period',
      remedy: 'Without them nobody can tell use from generation. Type them, or those of the inverter.',
    }),
  },
  'quote/plant-not-admitted': {
    severity: 'error',
    text: (v) => ({
      found: `a plant of ${of(v, 'kWp')} kWp`,
      expected: `at most ${of(v, 'limit')} (${of(v, 'clause')})`,
      remedy: 'Offer a smaller plant, or another scheme that admits it.',
    }),
  },
  'quote/cannot-project': {
    severity: 'error',
    text: (v) => ({
      found: `bills that cannot be projected: ${of(v, 'why')}`,
      expected: 'amounts that ordinary numbers hold',
      remedy: 'Check the units and the rises; a shorter life may do.',
    }),
  },
  'quote/case-not-billed': {
    severity: 'error',
    text: (v) => ({
      found: `the case "${of(v, 'name')}", which cannot be billed: ${of(v, 'why')}`,
      expected: 'a settlement rule that fits the charges and begins when no units are banked',
      remedy: 'Correct the rule of the case, or the year from which it holds.',
    }),
  },
} as const satisfies Readonly<Record<string, FindingKind>>;
