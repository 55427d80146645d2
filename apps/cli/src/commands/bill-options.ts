import { parseDay, type Finding } from '@unitbook/engine';
import type { TypedCommand } from './command.ts';
import {
  excludedFindings,
  hasOption,
  meterOptionFindings,
  optionFinding,
  type Excluded,
} from './shared-options.ts';

const FILES = ['tariff', 'account', 'readings', 'intervals', 'household', 'columns'] as const;
const EXPECTED = '--tariff, --account and --readings (or --intervals) together, or --household alone';

const BOTH = 'A household file holds both; leave one of the two out.';
const IN_JSON = 'JSON holds every bill with its derivation; leave one of the two out.';
const ONE_SOURCE = 'Bills are made of readings or of interval values; ask for one, then for the other.';
const OF_READINGS = 'It is about readings of registers, and interval values are none; leave it out.';
const OWN_READINGS = 'A household file has its own readings; leave it out.';

const EXCLUDED: readonly Excluded[] = [
  ['account', 'household', BOTH],
  ['readings', 'household', BOTH],
  ['intervals', 'household', ONE_SOURCE],
  ['readings', 'intervals', ONE_SOURCE],
  ['columns', 'household', OWN_READINGS],
  ['day', 'household', OWN_READINGS],
  ['on', 'household', OWN_READINGS],
  ['day', 'intervals', OF_READINGS],
  ['on', 'intervals', OF_READINGS],
  ['today', 'intervals', OF_READINGS],
  ['estimates', 'intervals', OF_READINGS],
  ['month', 'json', IN_JSON],
  ['explain', 'json', IN_JSON],
  ['estimates', 'json', 'JSON holds the book alone; leave one of the two out.'],
];

/** Options that only interval data needs. */
const OF_INTERVALS = ['zone', 'cycle-day'] as const;

function missingFiles(typed: TypedCommand): readonly Finding[] {
  if (hasOption(typed, 'household')) return [];
  const wanted = ['tariff', 'account', ...(hasOption(typed, 'intervals') ? [] : ['readings'])];
  return wanted
    .filter((name) => !hasOption(typed, name))
    .map((name) => optionFinding('command/missing-option', { name: `--${name}`, expected: EXPECTED }));
}

function aloneFindings(typed: TypedCommand): readonly Finding[] {
  if (hasOption(typed, 'intervals')) return [];
  return OF_INTERVALS.filter((name) => hasOption(typed, name)).map((name) =>
    optionFinding('command/option-alone', { name: `--${name}`, other: '--intervals FILE' }),
  );
}

function inputTwice({ values }: TypedCommand): readonly Finding[] {
  const names = FILES.filter((name) => values.get(name) === '-').map((name) => `--${name}`);
  return names.length < 2 ? [] : [optionFinding('command/input-twice', { names: names.join(' and ') })];
}

function formFindings({ values, others }: TypedCommand): readonly Finding[] {
  const remedy = 'Put --tariff, --account, --readings, --intervals or --household before it.';
  const extra = others.map((value) => optionFinding('command/extra-argument', { value, remedy }));
  const today = values.get('today');
  const noDay = today !== undefined && parseDay(today) === null;
  const correct = 'Correct the date, or leave the option out to use the clock.';
  return [
    ...extra,
    ...(noDay
      ? [optionFinding('command/no-such-day', { name: '--today', value: today, or: '', remedy: correct })]
      : []),
  ];
}

function cycleFindings({ values }: TypedCommand): readonly Finding[] {
  const value = values.get('cycle-day');
  if (value === undefined || /^(?:[1-9]|1\d|2[0-8])$/.test(value)) return [];
  const expected = 'a day that every month has, from 1 to 28';
  return [optionFinding('command/not-a-number', { name: '--cycle-day', value, expected })];
}

/**
 * Everything that is wrong with the options of `unitbook bill` taken together.
 *
 * @param typed  each of them right by itself
 */
export function checkBillOptions(typed: TypedCommand): readonly Finding[] {
  return [
    ...missingFiles(typed),
    ...excludedFindings(typed, EXCLUDED),
    ...aloneFindings(typed),
    ...inputTwice(typed),
    ...formFindings(typed),
    ...cycleFindings(typed),
    ...meterOptionFindings(typed),
  ];
}
