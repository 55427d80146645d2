import { isDecimalText, parseDay, type Finding } from '@unitbook/engine';
import type { TypedCommand } from './command.ts';
import { excludedFindings, hasOption, optionFinding, type Excluded } from './shared-options.ts';

/** Options that only a table of bills has a use for. */
const OF_TABLES = [
  'findings',
  'unread',
  'resume',
  'workers',
  'part',
  'every',
  'json-lines',
  'since',
  'settlement-day',
];

const ONE_INPUT = 'A table is one input, a file of one account the other: check one, then the other.';
const NOT_HERE = 'It is about one account; leave one of the two out.';
const EXCLUDED: readonly Excluded[] = [
  ['batch', 'bills', ONE_INPUT],
  ['batch', 'join', 'Check the parts first, then put their findings together.'],
  ...['bill', 'memo', 'letter', 'dispute', 'on', 'locale'].map((name): Excluded => ['batch', name, NOT_HERE]),
];

const MOST_WORKERS = 256;

/** A part of a table, such as the second of seven. */
export interface TablePart {
  readonly index: number;
  readonly count: number;
}

/** Reads "2/7"; null: no part. */
export function readPart(text: string): TablePart | null {
  const match = /^([1-9]\d{0,4})\/([1-9]\d{0,4})$/.exec(text);
  if (match === null) return null;
  const [index, count] = [Number(match[1]), Number(match[2])];
  return index > count ? null : { index, count };
}

/** Whether a day of the year, as mm-dd, is one that every year has. */
const isDayOfYear = (text: string): boolean => /^\d\d-\d\d$/.test(text) && parseDay(`2025-${text}`) !== null;

const isWorkers = (text: string): boolean => /^[1-9]\d{0,2}$/.test(text) && Number(text) <= MOST_WORKERS;

const isAmount = (text: string): boolean => isDecimalText(text) && !text.startsWith('-');

function valueFindings({ values }: TypedCommand): readonly Finding[] {
  const wrong = (name: string, isRight: (text: string) => boolean, expected: string): readonly Finding[] => {
    const value = values.get(name);
    if (value === undefined || isRight(value)) return [];
    return [optionFinding('command/not-a-number', { name: `--${name}`, value, expected })];
  };
  const since = values.get('since');
  const remedy = 'Correct the date, or leave the option out.';
  return [
    ...wrong('workers', isWorkers, `a number of threads from 1 to ${String(MOST_WORKERS)}`),
    ...wrong('part', (text) => readPart(text) !== null, 'a part of so many, such as 2/7'),
    ...wrong('tolerance', isAmount, 'an amount of money of 0 or more, such as 0.01'),
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

/**
 * Everything that is wrong with the options of a check of a whole table, taken together.
 *
 * @param typed  each of them right by itself; `--batch` or `--join` is among them
 */
export function checkBatchOptions(typed: TypedCommand): readonly Finding[] {
  const isResumable = !hasOption(typed, 'resume') || hasOption(typed, 'findings');
  const missing = (name: string): Finding =>
    optionFinding('command/missing-option', { name: `--${name}`, expected: `--${name} FILE` });
  const tables = [typed.values.get('batch'), typed.values.get('tariff')].filter((path) => path === '-');
  return [
    ...(hasOption(typed, 'tariff') ? [] : [missing('tariff')]),
    ...(isResumable
      ? []
      : [optionFinding('command/option-alone', { name: '--resume', other: '--findings' })]),
    ...excludedFindings(typed, EXCLUDED),
    ...(tables.length < 2 ? [] : [optionFinding('command/input-twice', { names: '--batch and --tariff' })]),
    ...typed.others.map((value) =>
      optionFinding('command/extra-argument', { value, remedy: 'Put --batch or --tariff before it.' }),
    ),
    ...valueFindings(typed),
  ];
}
