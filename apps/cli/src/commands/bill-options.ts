import { parseDay, type Finding } from '@unitbook/engine';
import { commandFinding, type CommandFindingCode } from '../findings.ts';
import type { TypedCommand } from './command.ts';

const FILES = ['tariff', 'account', 'readings', 'household'] as const;
const EXPECTED: Readonly<Record<string, string>> = {
  tariff: '--tariff, --account and --readings together, or --household alone',
  account: '--tariff, --account and --readings together, or --household alone',
  readings: '--tariff, --account and --readings together, or --household alone',
};

const make = (code: CommandFindingCode, values: Readonly<Record<string, string>>): Finding =>
  commandFinding(code, { path: [] }, values);

function fileFindings({ values }: TypedCommand): Finding[] {
  if (values.has('household')) {
    return (['account', 'readings'] as const)
      .filter((name) => values.has(name))
      .map((name) =>
        make('command/options-exclude', {
          name: `--${name}`,
          other: '--household',
          remedy: 'A household file holds both; leave one of the two out.',
        }),
      );
  }
  return (['tariff', 'account', 'readings'] as const)
    .filter((name) => !values.has(name))
    .map((name) => make('command/missing-option', { name: `--${name}`, expected: EXPECTED[name] ?? '' }));
}

function inputTwice({ values }: TypedCommand): Finding[] {
  const names = FILES.filter((name) => values.get(name) === '-').map((name) => `--${name}`);
  return names.length < 2 ? [] : [make('command/input-twice', { names: names.join(' and ') })];
}

function formFindings({ values, switches, others }: TypedCommand): Finding[] {
  const extra = others.map((value) =>
    make('command/extra-argument', {
      value,
      remedy: 'Put --tariff, --account, --readings or --household before it.',
    }),
  );
  const textOnly = [values.has('month') ? '--month' : '', switches.has('explain') ? '--explain' : '']
    .filter((name) => switches.has('json') && name !== '')
    .map((name) =>
      make('command/options-exclude', {
        name,
        other: '--json',
        remedy: 'JSON holds every bill with its derivation; leave one of the two out.',
      }),
    );
  const today = values.get('today');
  const noDay = today !== undefined && parseDay(today) === null;
  return [...extra, ...textOnly, ...(noDay ? [make('command/no-such-day', { value: today })] : [])];
}

/**
 * Everything that is wrong with the options of `unitbook bill` taken together.
 *
 * @param typed  each of them right by itself
 */
export function checkBillOptions(typed: TypedCommand): readonly Finding[] {
  return [...fileFindings(typed), ...inputTwice(typed), ...formFindings(typed)];
}
