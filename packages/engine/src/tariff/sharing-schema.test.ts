import * as z from 'zod/mini';
import { describe, expect, it } from 'vitest';
import { sharingRuleFindings, sharingSchema, type SharingRule } from './sharing-schema.ts';

const RULE = {
  clause: 'T 9',
  of: 'export',
  by: 'equal',
  decimals: '0',
  remainder: 'host',
  unused: 'stays-with-member',
};
const isRule = (parts: Readonly<Record<string, unknown>>): boolean =>
  z.safeParse(sharingSchema, { ...RULE, ...parts }).success;

describe('a rule for sharing', () => {
  it.each(['percentage', 'capacity', 'equal', 'priority'])('may share by %s', (by) => {
    expect(['host', 'first-named', 'kept-in-pool'].map((remainder) => isRule({ by, remainder }))).toEqual([
      true,
      true,
      true,
    ]);
  });

  it('has largest remainders wherever shares are parts of the whole: not by priority', () => {
    const remainder = 'largest-remainder';
    expect(['percentage', 'capacity', 'equal', 'priority'].map((by) => isRule({ by, remainder }))).toEqual([
      true,
      true,
      true,
      false,
    ]);
  });

  it.each([
    { by: 'size' },
    { decimals: '4' },
    { decimals: 0 },
    { remainder: 'lost' },
    { unused: undefined },
    { clause: '' },
    { other: '1' },
  ])('is no %j', (parts) => {
    expect(isRule(parts)).toBe(false);
  });

  it.each([
    ['priority', 'host', 'returns-to-pool', ['sharing.remainder']],
    ['priority', 'first-named', 'returns-to-pool', ['sharing.remainder']],
    ['priority', 'kept-in-pool', 'returns-to-pool', []],
    ['priority', 'host', 'stays-with-member', []],
    ['equal', 'host', 'returns-to-pool', []],
  ])('says one thing of the units that nobody needs: %s, %s, %s', (by, remainder, unused, expected) => {
    const rule = { ...RULE, by, remainder, unused } as SharingRule;
    expect(sharingRuleFindings(rule, ['sharing']).map(({ path }) => path.join('.'))).toEqual(expected);
  });
});
