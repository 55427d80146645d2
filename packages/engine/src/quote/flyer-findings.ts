import type { FindingKind } from '../quantity/index.ts';

type Values = Readonly<Record<string, string>>;
const of = (values: Values, key: string): string => values[key] ?? '';

/** Those of some texts that are there, in a row. */
const inOneRow = (...texts: readonly string[]): string => texts.filter((text) => text !== '').join(', ');

/** A text about a value, where there is one. */
const about = (v: Values, key: string, text: (value: string) => string): string =>
  of(v, key) === '' ? '' : text(of(v, key));

/** What is asked about a flyer, by code. None of it says that a rival is wrong: each says what to ask. */
export const QUOTE_FLYER_FINDINGS = {
  'quote/flyer-empty': {
    severity: 'question',
    text: () => ({
      found: 'a flyer without a claim',
      expected: 'at least one number or its words',
      remedy: 'Type in what it says: saving, payback, units, price, bill or words.',
    }),
  },
  'quote/flyer-saving-above-bills': {
    severity: 'question',
    grouped: ['saving', 'bills', 'surplus'],
    text: (v) => ({
      found: `a saving of ${of(v, 'saving')} a year`,
      expected: inOneRow(
        `at most the bills of a year without the plant, ${of(v, 'bills')}`,
        about(v, 'surplus', (text) => `and ${text} for surplus`),
      ),
      remedy: 'Ask which bills it was worked out from.',
    }),
  },
  'quote/flyer-top-rate': {
    severity: 'question',
    grouped: ['made', 'saving'],
    text: (v) => ({
      found: `every one of ${of(v, 'made')} units at ${of(v, 'rate')}, the highest rate of the tariff`,
      expected: `each unit at the rate it is billed at: ${of(v, 'saving')} in the first year by this quote`,
      remedy: 'Ask for the bills of twelve months, before and after.',
    }),
  },
  'quote/flyer-fixed-charges': {
    severity: 'question',
    grouped: ['saving', 'bill', 'fixed', 'smallest'],
    text: (v) => ({
      found: inOneRow(
        about(v, 'saving', (text) => `a saving of ${text} a year`),
        about(v, 'bill', (text) => `a bill of ${text} a month`),
        about(v, 'words', (text) => `the words ${text}`),
      ),
      expected: `${of(v, 'fixed')} a year that stay on the bills, ${of(v, 'basis')}`,
      remedy: `Ask what the smallest bill will be; by this quote it is ${of(v, 'smallest')}.`,
    }),
  },
  'quote/flyer-no-upkeep': {
    severity: 'question',
    grouped: ['price', 'saving', 'cost'],
    text: (v) => ({
      found: `a payback of ${of(v, 'payback')} years: ${of(v, 'price')} ÷ ${of(v, 'saving')}, with nothing taken off`,
      expected: `maintenance and what is replaced taken off: ${of(v, 'cost')} in ${of(v, 'years')} years by this quote`,
      remedy: 'Ask what maintenance costs, and when the inverter is replaced.',
    }),
  },
  'quote/flyer-subsidy-assumed': {
    severity: 'note',
    grouped: ['net', 'price', 'subsidy'],
    text: (v) => ({
      found: `a price of ${of(v, 'net')}: ${of(v, 'price')} less a subsidy of ${of(v, 'subsidy')}`,
      expected: 'the whole price, which is paid first, and the payback without the subsidy',
      remedy: 'Ask who receives the subsidy, when, and what happens if it is refused.',
    }),
  },
  'quote/flyer-surplus-at-retail': {
    severity: 'question',
    grouped: ['surplus'],
    text: (v) => ({
      found: `${of(v, 'rate')} for every unit that is made, surplus too`,
      expected: inOneRow(
        `surplus at what is paid for it: ${of(v, 'surplus')} in the first year by this quote`,
        about(v, 'paid', (text) => `${text} for a unit`),
      ),
      remedy: 'Ask how many units are left over in a year, and what is paid for them.',
    }),
  },
  'quote/flyer-words': {
    severity: 'question',
    grouped: ['after'],
    text: (v) => ({
      found: `the words ${of(v, 'words')}`,
      expected: `words that the bills bear out: ${of(v, 'after')} stay in the first year by this quote`,
      remedy: 'Ask for it in writing: who answers for it, for how long and how it is measured.',
    }),
  },
  'quote/flyer-rise': {
    severity: 'question',
    text: (v) => ({
      found: `rates that rise by ${of(v, 'percent')} % a year`,
      expected: `at most ${of(v, 'most')} % a year, with its basis`,
      remedy: 'Ask what the rise is based on.',
    }),
  },
} as const satisfies Readonly<Record<string, FindingKind>>;
