import { parseDay, type Finding } from '@unitbook/engine';
import type { TypedCommand } from './command.ts';
import {
  excludedFindings,
  hasOption,
  meterOptionFindings,
  optionFinding,
  type Excluded,
} from './shared-options.ts';

const FILES = ['plant', 'household', 'account', 'readings', 'days', 'columns'] as const;
const EXPECTED = '--household, or --account and --readings together, or --days';

const ONE_SOURCE = 'Each tells what the plant made; keep one of them.';
const OWN_READINGS = 'A household file has its own readings; leave it out.';
const OF_READINGS = 'It is about readings of registers, and days are none; leave it out.';

const EXCLUDED: readonly Excluded[] = [
  ['household', 'days', ONE_SOURCE],
  ['account', 'household', ONE_SOURCE],
  ['readings', 'household', ONE_SOURCE],
  ['account', 'days', ONE_SOURCE],
  ['readings', 'days', ONE_SOURCE],
  ['columns', 'household', OWN_READINGS],
  ['day', 'household', OWN_READINGS],
  ['on', 'household', OWN_READINGS],
  ['day', 'days', OF_READINGS],
  ['on', 'days', OF_READINGS],
];

function missingFiles(typed: TypedCommand): readonly Finding[] {
  const has = (name: string): boolean => hasOption(typed, name);
  const missing = (name: string, expected: string): Finding =>
    optionFinding('command/missing-option', { name: `--${name}`, expected });
  const plant =
    has('plant') || has('household')
      ? []
      : [missing('plant', 'what the plant is: --plant, or --household with a plant in it')];
  if (has('household') || has('days')) return plant;
  if (!has('account') && !has('readings')) return [...plant, missing('household', EXPECTED)];
  const others = (['account', 'readings'] as const).filter((name) => !has(name));
  return [...plant, ...others.map((name) => missing(name, EXPECTED))];
}

function inputTwice({ values }: TypedCommand): readonly Finding[] {
  const names = FILES.filter((name) => values.get(name) === '-').map((name) => `--${name}`);
  return names.length < 2 ? [] : [optionFinding('command/input-twice', { names: names.join(' and ') })];
}

function formFindings(typed: TypedCommand): readonly Finding[] {
  const { values, others } = typed;
  const remedy = 'Put --plant, --household, --account, --readings or --days before it.';
  const extra = others.map((value) => optionFinding('command/extra-argument', { value, remedy }));
  const today = values.get('today');
  const correct = 'Correct the date, or leave the option out to use the clock.';
  const noDay =
    today === undefined || parseDay(today) !== null
      ? []
      : [optionFinding('command/no-such-day', { name: '--today', value: today, or: '', remedy: correct })];
  const isAlone = hasOption(typed, 'zone') && !hasOption(typed, 'days');
  const alone = isAlone
    ? [optionFinding('command/option-alone', { name: '--zone', other: '--days FILE' })]
    : [];
  return [...extra, ...noDay, ...alone];
}

/**
 * Everything that is wrong with the options of `unitbook plant` taken together.
 *
 * @param typed  each of them right by itself
 */
export function checkPlantOptions(typed: TypedCommand): readonly Finding[] {
  return [
    ...missingFiles(typed),
    ...excludedFindings(typed, EXCLUDED),
    ...inputTwice(typed),
    ...formFindings(typed),
    ...meterOptionFindings(typed),
  ];
}
