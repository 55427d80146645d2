import { parseDay, type Finding } from '@unitbook/engine';
import { placeOf } from '../batch/index.ts';
import { toleranceFindings } from './check-tolerance.ts';
import type { TypedCommand } from './command.ts';
import { excludedFindings, hasOption, optionFinding, type Excluded } from './shared-options.ts';

/** Options of a table whose parts take them, too; what is put together was checked with them. */
const OF_PARTS = ['unread', 'resume', 'workers', 'part', 'every', 'json-lines', 'since', 'settlement-day'];
/** Options that only a table of bills has a use for. */
const OF_TABLES = ['findings', ...OF_PARTS];
/** Options that only the bills of one account have a use for. */
const OF_ONE_ACCOUNT = ['bill', 'memo', 'letter', 'dispute', 'on', 'locale'];

const ONE_INPUT = 'A table is one input, a file of one account the other: check one, then the other.';
const NOT_HERE = 'It is about one account; leave one of the two out.';
const OF_THE_PARTS = 'The parts were checked with it or without it; leave it out.';
const EXCLUDED: readonly Excluded[] = [
  ['batch', 'bills', ONE_INPUT],
  ['batch', 'join', 'Check the parts first, then put their findings together.'],
  ...OF_ONE_ACCOUNT.map((name): Excluded => ['batch', name, NOT_HERE]),
];
const EXCLUDED_BY_JOIN: readonly Excluded[] = [
  ['join', 'bills', ONE_INPUT],
  ...OF_ONE_ACCOUNT.map((name): Excluded => ['join', name, NOT_HERE]),
  ...[...OF_PARTS, 'tolerance', 'other'].map((name): Excluded => ['join', name, OF_THE_PARTS]),
];

const MOST_WORKERS = 256;

/** Whether a day of the year, as mm-dd, is one that every year has. */
const isDayOfYear = (text: string): boolean => /^\d\d-\d\d$/.test(text) && parseDay(`2025-${text}`) !== null;

const isWorkers = (text: string): boolean => /^[1-9]\d{0,2}$/.test(text) && Number(text) <= MOST_WORKERS;

function valueFindings(typed: TypedCommand): readonly Finding[] {
  const { values } = typed;
  const wrong = (name: string, isRight: (text: string) => boolean, expected: string): readonly Finding[] => {
    const value = values.get(name);
    if (value === undefined || isRight(value)) return [];
    return [optionFinding('command/not-a-number', { name: `--${name}`, value, expected })];
  };
  const since = values.get('since');
  const remedy = 'Correct the date, or leave the option out.';
  return [
    ...wrong('workers', isWorkers, `a number of threads from 1 to ${String(MOST_WORKERS)}`),
    ...wrong('part', (text) => placeOf(text) !== null, 'a part of so many, such as 2/7'),
    ...toleranceFindings(typed),
    ...wrong('settlement-day', isDayOfYear, 'a day of the year as mm-dd, such as 03-31'),
    ...(since === undefined || parseDay(since) !== null
      ? []
      : [optionFinding('command/no-such-day', { name: '--since', value: since, or: '', remedy })]),
  ];
}

/** Options of a table that were typed without one. */
export function idleTableOptions(typed: TypedCommand): readonly Finding[] {
  return OF_TABLES.filter((name) => hasOption(typed, name)).map((name) =>
    optionFinding('command/option-alone', { name: `--${name}`, other: '--batch' }),
  );
}

/** Standard input for several things at once. */
function inputTwice({ values, lists }: TypedCommand): readonly Finding[] {
  const single = ['batch', 'tariff'].filter((name) => values.get(name) === '-');
  const several = ['join', 'other'].flatMap((name) =>
    (lists.get(name) ?? []).filter((path) => path === '-').map(() => name),
  );
  const names = [...single, ...several].map((name) => `--${name}`);
  return names.length < 2 ? [] : [optionFinding('command/input-twice', { names: names.join(' and ') })];
}

/**
 * Everything that is wrong with the options of a check of a whole table, taken together.
 *
 * @param typed  each of them right by itself; `--batch` or `--join` is among them
 */
export function checkBatchOptions(typed: TypedCommand): readonly Finding[] {
  const isResumable =
    !hasOption(typed, 'resume') || hasOption(typed, 'findings') || !hasOption(typed, 'batch');
  const missing = (name: string): Finding =>
    optionFinding('command/missing-option', { name: `--${name}`, expected: `--${name} FILE` });
  return [
    ...(hasOption(typed, 'tariff') ? [] : [missing('tariff')]),
    ...(isResumable
      ? []
      : [optionFinding('command/option-alone', { name: '--resume', other: '--findings' })]),
    // Beside a table, --join itself is the mistake, and no option of the table.
    ...excludedFindings(typed, hasOption(typed, 'batch') ? EXCLUDED : EXCLUDED_BY_JOIN),
    ...inputTwice(typed),
    ...typed.others.map((value) =>
      optionFinding('command/extra-argument', { value, remedy: 'Put --batch or --tariff before it.' }),
    ),
    ...valueFindings(typed),
  ];
}
