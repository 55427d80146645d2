import type { Finding, QuoteDocument, QuoteTables } from '@unitbook/engine';
import type { TypedCommand } from './command.ts';
import {
  excludedFindings,
  hasOption,
  meterOptionFindings,
  optionFinding,
  type Excluded,
} from './shared-options.ts';

/** The tables that `--csv` prints. */
export const TABLES: readonly (keyof QuoteTables)[] = [
  'months',
  'years',
  'cases',
  'sizes',
  'batteries',
  'band',
];

const FILES = ['quote', 'tariff', 'flyer', 'profile', 'columns'] as const;
const EXPECTED = '--quote and --tariff together';

const ONE_FORM = 'Ask for one, then for the other.';
const EXCLUDED: readonly Excluded[] = [
  ['json', 'csv', ONE_FORM],
  ['sizes', 'json', 'JSON holds the sizes already; leave it out.'],
  ['sizes', 'csv', 'A table is printed alone: --csv sizes is that of the sizes.'],
  ['flyer', 'csv', 'A table is printed alone; leave one of the two out.'],
];

/** Nothing is drawn for 0. */
const DRAWS = /^(?:0|[1-9]\d{0,2}00|100000)$/;
const DEFAULT_DRAWS = '1000';

const missing = (name: string): Finding =>
  optionFinding('command/missing-option', { name: `--${name}`, expected: EXPECTED });

function inputTwice({ values }: TypedCommand): readonly Finding[] {
  const names = FILES.filter((name) => values.get(name) === '-').map((name) => `--${name}`);
  return names.length < 2 ? [] : [optionFinding('command/input-twice', { names: names.join(' and ') })];
}

function valueFindings({ values }: TypedCommand): readonly Finding[] {
  const [draws = DEFAULT_DRAWS, table] = [values.get('draws'), values.get('csv')];
  const expected = 'how many random draws: a whole number of hundreds up to 100000, or 0 for none';
  const allowed = TABLES.join(', ');
  const isKnown = table === undefined || TABLES.some((name) => name === table);
  return [
    ...(DRAWS.test(draws)
      ? []
      : [optionFinding('command/not-a-number', { name: '--draws', value: draws, expected })]),
    ...(isKnown ? [] : [optionFinding('command/not-one-of', { name: '--csv', value: table, allowed })]),
    ...(table === 'band' && draws === '0'
      ? [
          optionFinding('command/options-exclude', {
            name: '--csv band',
            other: '--draws 0',
            remedy: 'The band is that of the draws; leave --draws out.',
          }),
        ]
      : []),
  ];
}

/**
 * Everything that is wrong with the options of `unitbook quote` taken together.
 *
 * @param typed  each of them right by itself
 * @example
 * checkQuoteOptions({ values: new Map(), lists: new Map(), switches: new Set(), others: [] }).length //=> 2
 */
export function checkQuoteOptions(typed: TypedCommand): readonly Finding[] {
  const remedy = 'Put --quote, --tariff, --flyer or --profile before it.';
  return [
    ...(['quote', 'tariff'] as const).filter((name) => !hasOption(typed, name)).map(missing),
    ...excludedFindings(typed, EXCLUDED),
    ...inputTwice(typed),
    ...typed.others.map((value) => optionFinding('command/extra-argument', { value, remedy })),
    ...valueFindings(typed),
    ...meterOptionFindings(typed),
    ...(['columns', 'zone'] as const)
      .filter((name) => hasOption(typed, name) && !hasOption(typed, 'profile'))
      .map((name) => optionFinding('command/option-alone', { name: `--${name}`, other: '--profile FILE' })),
  ];
}

/** How many draws are asked for, once `--draws` is right. */
export function drawCount({ values }: Pick<TypedCommand, 'values'>): number {
  return Number.parseInt(values.get('draws') ?? DEFAULT_DRAWS, 10);
}

/** Options that ask for draws, of a quote that says nothing of what is uncertain. */
export function idleQuoteOptions(
  { values }: Pick<TypedCommand, 'values'>,
  { uncertainty }: Pick<QuoteDocument, 'uncertainty'>,
): readonly Finding[] {
  if (uncertainty !== undefined) return [];
  const wanted = 'a quote that says what is uncertain, under "uncertainty"';
  const asked = [
    ...((values.get('draws') ?? '0') === '0' ? [] : ['--draws']),
    ...(values.get('csv') === 'band' ? ['--csv band'] : []),
  ];
  return asked.map((name) => optionFinding('command/option-idle', { name, wanted }));
}
