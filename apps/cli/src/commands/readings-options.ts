import type { Finding } from '@unitbook/engine';
import type { TypedCommand } from './command.ts';
import {
  excludedFindings,
  hasOption,
  meterOptionFindings,
  optionFinding,
  type Excluded,
} from './shared-options.ts';

const ONE_OUTPUT = 'Each prints something else; ask for one of them at a time.';
const HAS_LAYOUT = 'A file with --columns is read by them; leave --columns out to see what is proposed.';
const LOCAL_ALREADY = 'Registers are read by the local clock; leave --zone out.';
const NOTHING_READ = 'Only the columns are looked at; leave the other out.';
const PLAIN_TEXT = 'Its numbers are for programs, and are not grouped; leave --locale out.';

const EXCLUDED: readonly Excluded[] = [
  ['propose', 'monthly', ONE_OUTPUT],
  ['propose', 'daily', ONE_OUTPUT],
  ['propose', 'document', ONE_OUTPUT],
  ['monthly', 'daily', ONE_OUTPUT],
  ['monthly', 'document', ONE_OUTPUT],
  ['daily', 'document', ONE_OUTPUT],
  ['columns', 'propose', HAS_LAYOUT],
  ['zone', 'propose', NOTHING_READ],
  ['day', 'propose', NOTHING_READ],
  ['zone', 'document', LOCAL_ALREADY],
  ['locale', 'propose', PLAIN_TEXT],
  ['locale', 'daily', PLAIN_TEXT],
  ['locale', 'document', PLAIN_TEXT],
];

function fileFindings({ others, values }: TypedCommand): readonly Finding[] {
  if (others.length === 0) return [optionFinding('command/no-file', { expected: 'a meter file' })];
  if (others.length > 1) return [optionFinding('command/one-file', { count: String(others.length) })];
  const isTwice = others[0] === '-' && values.get('columns') === '-';
  return isTwice ? [optionFinding('command/input-twice', { names: 'the meter file and --columns' })] : [];
}

/**
 * Everything that is wrong with the options of `unitbook readings` taken together.
 *
 * @param typed  each of them right by itself
 */
export function checkReadingsOptions(typed: TypedCommand): readonly Finding[] {
  const isAlone = hasOption(typed, 'on') && !hasOption(typed, 'document');
  return [
    ...fileFindings(typed),
    ...excludedFindings(typed, EXCLUDED),
    ...(isAlone ? [optionFinding('command/option-alone', { name: '--on', other: '--document' })] : []),
    ...meterOptionFindings(typed),
  ];
}
