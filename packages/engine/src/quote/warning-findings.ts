import type { FindingKind } from '../quantity/index.ts';

type Values = Readonly<Record<string, string>>;
const of = (values: Values, key: string): string => values[key] ?? '';
const isNothing = (text: string): boolean => /^-?0(\.0+)?$/.test(text);

/** How much of a saving is surplus paid out, where there is any. */
const withSurplus = (v: Values): string =>
  isNothing(of(v, 'surplus')) ? '' : `, ${of(v, 'surplus')} of it surplus paid out`;

/** What a seller is asked before a quote of his own is printed, by code. */
export const QUOTE_WARNING_FINDINGS = {
  'quote/saving-above-bills': {
    severity: 'question',
    grouped: ['saving', 'surplus', 'bills'],
    text: (v) => ({
      found: `a saving of ${of(v, 'saving')} in the first year${withSurplus(v)}`,
      expected: `at most the bills of that year without the plant, ${of(v, 'bills')}`,
      remedy: 'Check the size of the plant; name what surplus brings apart from what the bills save.',
    }),
  },
  'quote/saving-above-charges-for-units': {
    severity: 'note',
    grouped: ['saving', 'surplus', 'most', 'fixed'],
    text: (v) => ({
      found: `a saving of ${of(v, 'saving')} in the first year${withSurplus(v)}`,
      expected: `at most ${of(v, 'most')} off the bills: ${of(v, 'fixed')} a year stay on them, ${of(v, 'basis')}`,
      remedy:
        'Name what surplus brings apart from what the bills save: it is paid later, at a rate of its own.',
    }),
  },
  'quote/rise-above-usual': {
    severity: 'question',
    text: (v) => ({
      found: `a rise of "${of(v, 'charge')}" by ${of(v, 'percent')} % a year`,
      expected: `at most ${of(v, 'most')} % a year, with its basis`,
      remedy: 'Lower it, or show orders of the past that it follows from.',
    }),
  },
  'quote/rise-without-basis': {
    severity: 'question',
    text: () => ({
      found: 'rates that change each year, and no reason',
      expected: 'the basis of the rises: past orders, or a forecast with its publisher',
      remedy: 'Say why rates rise so much, or let them stay as they are.',
    }),
  },
  'quote/surplus-at-retail': {
    severity: 'question',
    grouped: ['rate', 'price', 'own'],
    text: (v) => ({
      found: `a unit of surplus paid ${of(v, 'rate')} in year ${of(v, 'year')}, risen from ${of(v, 'own')}`,
      expected: `less than a unit bought costs in that year, ${of(v, 'price')} in the mean`,
      remedy: 'Let what surplus is paid stay as the tariff has it, or show the order by which it rises.',
    }),
  },
  'quote/no-replacement': {
    severity: 'question',
    text: (v) => ({
      found: `a life of ${of(v, 'years')} years in which nothing is replaced`,
      expected: `a new inverter where the life is longer than ${of(v, 'most')} years`,
      remedy: 'Add what is replaced, in which year and at what price.',
    }),
  },
  'quote/no-degradation': {
    severity: 'question',
    text: (v) => ({
      found: 'a plant that loses nothing after its second year',
      expected: `some loss each year: ${of(v, 'usual')} (${of(v, 'source')})`,
      remedy: 'Give the yearly loss from the sheet of the modules.',
    }),
  },
  'quote/yield-above-usual': {
    severity: 'question',
    grouped: ['yield', 'usual'],
    text: (v) => ({
      found: `${of(v, 'yield')} kWh per kWp in the first year`,
      expected: `at most what plants of the region make, ${of(v, 'usual')}`,
      remedy: 'Check irradiation, losses and shade, or say why this plant makes more.',
    }),
  },
  'quote/generation-above-use': {
    severity: 'question',
    grouped: ['made', 'used'],
    text: (v) => ({
      found: `${of(v, 'made')} units made and ${of(v, 'used')} used in the first year`,
      expected: `at most ${of(v, 'most')} % of what is used`,
      remedy: 'Offer a smaller plant too, or say what the units left over are paid.',
    }),
  },
  'quote/payback-with-subsidy': {
    severity: 'note',
    grouped: ['subsidy'],
    text: (v) => ({
      found: `a payback that hangs on a subsidy of ${of(v, 'subsidy')}, paid to the ${of(v, 'to')} ${of(v, 'when')}: ${of(v, 'with')}`,
      expected: `the payback without it beside it: ${of(v, 'without')}`,
      remedy: 'Print both, and say who bears it when the subsidy comes late or not at all.',
    }),
  },
  'quote/battery-in-price': {
    severity: 'note',
    grouped: ['battery', 'price'],
    text: (v) => ({
      found: `a battery of ${of(v, 'battery')} in the price of ${of(v, 'price')}, and a payback of both together`,
      expected: 'plant and battery each with its own price, saving and payback',
      remedy: 'Name what the battery saves by itself beside the payback of both: the quote works it out.',
    }),
  },
  'quote/promising-words': {
    severity: 'question',
    text: (v) => ({
      found: `the words ${of(v, 'words')}`,
      expected: 'what is warranted, for how long and how it is measured',
      remedy: `Say it in figures: bills of ${of(v, 'after')} stay in the first year.`,
    }),
    grouped: ['after'],
  },
} as const satisfies Readonly<Record<string, FindingKind>>;
