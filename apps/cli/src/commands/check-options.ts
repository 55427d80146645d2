import { parseDay, type Finding } from '@unitbook/engine';
import { idleTableOptions } from './check-batch-options.ts';
import { toleranceFindings } from './check-tolerance.ts';
import type { TypedCommand } from './command.ts';
import { excludedFindings, hasOption, optionFinding, type Excluded } from './shared-options.ts';

const EXPECTED = '--bills FILE, or --batch FILE for a table';
const ONE_FORM = 'Ask for one, then for the other.';
const WHOLE = 'It is about every bill; leave one of the two out.';
const EXCLUDED: readonly Excluded[] = [
  ['memo', 'letter', ONE_FORM],
  ['memo', 'json', ONE_FORM],
  ['letter', 'json', ONE_FORM],
  ['bill', 'json', WHOLE],
  ['bill', 'memo', WHOLE],
  ['bill', 'letter', WHOLE],
];

/** Options that only a report has a use for. */
function idleOptions(typed: TypedCommand): readonly Finding[] {
  if (['memo', 'letter', 'json'].some((name) => hasOption(typed, name))) return [];
  return ['dispute', 'on']
    .filter((name) => hasOption(typed, name))
    .map((name) =>
      optionFinding('command/option-alone', { name: `--${name}`, other: '--memo, --letter or --json' }),
    );
}

function inputTwice({ values, lists }: TypedCommand): readonly Finding[] {
  const single = (['bills', 'tariff', 'dispute'] as const)
    .filter((name) => values.get(name) === '-')
    .map((name) => `--${name}`);
  const others = (lists.get('other') ?? []).filter((path) => path === '-').map(() => '--other');
  const names = [...single, ...others];
  return names.length < 2 ? [] : [optionFinding('command/input-twice', { names: names.join(' and ') })];
}

function valueFindings(typed: TypedCommand): readonly Finding[] {
  const [bill, on] = [typed.values.get('bill'), typed.values.get('on')];
  const isDay = on === undefined || parseDay(on) !== null;
  const noDay = {
    name: '--on',
    value: on ?? '',
    or: '',
    remedy: 'Correct the date, or leave the option out to use the clock.',
  };
  const noPlace = {
    name: '--bill',
    value: bill ?? '',
    expected: 'the place of a bill in the file, from 1 on',
  };
  const isPlace = bill === undefined || /^[1-9]\d{0,2}$/.test(bill);
  return [
    ...toleranceFindings(typed),
    ...(isDay ? [] : [optionFinding('command/no-such-day', noDay)]),
    ...(isPlace ? [] : [optionFinding('command/not-a-number', noPlace)]),
  ];
}

/**
 * Everything that is wrong with the options of `unitbook check` taken together.
 *
 * @param typed  each of them right by itself
 * @example
 * checkCheckOptions({ values: new Map(), lists: new Map(), switches: new Set(), others: [] }).length //=> 1
 */
export function checkCheckOptions(typed: TypedCommand): readonly Finding[] {
  const missing = hasOption(typed, 'bills')
    ? []
    : [optionFinding('command/missing-option', { name: '--bills', expected: EXPECTED })];
  return [
    ...missing,
    ...excludedFindings(typed, EXCLUDED),
    ...inputTwice(typed),
    ...idleOptions(typed),
    ...idleTableOptions(typed),
    ...typed.others.map((value) =>
      optionFinding('command/extra-argument', {
        value,
        remedy: 'Put --bills, --tariff or --other before it.',
      }),
    ),
    ...valueFindings(typed),
  ];
}
