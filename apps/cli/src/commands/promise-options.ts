import { parseDay, type Finding } from '@unitbook/engine';
import type { TypedCommand } from './command.ts';
import {
  excludedFindings,
  hasOption,
  meterOptionFindings,
  optionFinding,
  type Excluded,
} from './shared-options.ts';

const FILES = [
  'quote',
  'tariff',
  'now',
  'account',
  'readings',
  'household',
  'columns',
  'profile',
  'profile-columns',
] as const;
const EXPECTED = '--quote and --tariff, with --account and --readings together or --household alone';

const BOTH = 'A household file holds both; leave one of the two out.';
const OWN_READINGS = 'A household file has its own readings; leave it out.';

const EXCLUDED: readonly Excluded[] = [
  ['account', 'household', BOTH],
  ['readings', 'household', BOTH],
  ['columns', 'household', OWN_READINGS],
  ['day', 'household', OWN_READINGS],
  ['on', 'household', OWN_READINGS],
];

function missingFiles(typed: TypedCommand): readonly Finding[] {
  const own = hasOption(typed, 'household') ? [] : ['account', 'readings'];
  return ['quote', 'tariff', ...own]
    .filter((name) => !hasOption(typed, name))
    .map((name) => optionFinding('command/missing-option', { name: `--${name}`, expected: EXPECTED }));
}

function inputTwice({ values }: TypedCommand): readonly Finding[] {
  const names = FILES.filter((name) => values.get(name) === '-').map((name) => `--${name}`);
  return names.length < 2 ? [] : [optionFinding('command/input-twice', { names: names.join(' and ') })];
}

function formFindings({ values, others }: TypedCommand): readonly Finding[] {
  const remedy = 'Put --quote, --tariff, --now, --account, --readings, --household or --profile before it.';
  const value = values.get('today');
  const isNoDay = value !== undefined && parseDay(value) === null;
  const correct = 'Correct the date, or leave the option out to use the clock.';
  return [
    ...others.map((extra) => optionFinding('command/extra-argument', { value: extra, remedy })),
    ...(isNoDay
      ? [optionFinding('command/no-such-day', { name: '--today', value, or: '', remedy: correct })]
      : []),
  ];
}

/**
 * Everything that is wrong with the options of `unitbook promise` taken together.
 *
 * @param typed  each of them right by itself
 * @example
 * checkPromiseOptions({ values: new Map(), lists: new Map(), switches: new Set(), others: [] }).length //=> 4
 */
export function checkPromiseOptions(typed: TypedCommand): readonly Finding[] {
  return [
    ...missingFiles(typed),
    ...excludedFindings(typed, EXCLUDED),
    ...inputTwice(typed),
    ...formFindings(typed),
    ...meterOptionFindings(typed),
    ...(['profile-columns', 'zone'] as const)
      .filter((name) => hasOption(typed, name) && !hasOption(typed, 'profile'))
      .map((name) => optionFinding('command/option-alone', { name: `--${name}`, other: '--profile FILE' })),
  ];
}
