import { isDecimalText, type Finding } from '@unitbook/engine';
import type { TypedCommand } from './command.ts';
import { optionFinding } from './shared-options.ts';

/** More than any bill prints, and no more than can be compared exactly. */
const MOST = { decimals: 8, digits: 12 } as const;

/** What an amount is to be instead; null: it is right. */
function expectedFor(text: string): string | null {
  if (!isDecimalText(text) || text.startsWith('-')) return 'an amount of money of 0 or more, such as 0.01';
  const decimals = text.split('.')[1]?.length ?? 0;
  const digits = text.replace('.', '').length;
  if (decimals <= MOST.decimals && digits <= MOST.digits) return null;
  return `an amount of at most ${String(MOST.decimals)} decimals and ${String(MOST.digits)} digits, such as 0.01`;
}

/**
 * What is wrong with `--tolerance`.
 *
 * @example
 * toleranceFindings({ values: new Map([['tolerance', '0.01']]) }) //=> []
 */
export function toleranceFindings({ values }: Pick<TypedCommand, 'values'>): readonly Finding[] {
  const value = values.get('tolerance');
  const expected = value === undefined ? null : expectedFor(value);
  return value === undefined || expected === null
    ? []
    : [optionFinding('command/not-a-number', { name: '--tolerance', value, expected })];
}
