import * as z from 'zod/mini';
import type { Finding, Path } from '../quantity/index.ts';
import { clauseText, quantityText } from './names.ts';
import { tariffFinding } from './findings.ts';

const common = {
  clause: clauseText,
  of: quantityText('The quantity of the host that is the pool, such as "export"'),
  decimals: z
    .enum(['0', '1', '2', '3'])
    .check(z.describe('Decimals of a shared unit: "0" shares whole units; what is finer stays in the pool')),
  unused: z
    .enum(['returns-to-pool', 'stays-with-member'])
    .check(z.describe('Where the part of a share goes that is above the import of its member')),
};

const byWeight = z.strictObject({
  ...common,
  by: z
    .enum(['percentage', 'capacity', 'equal'])
    .check(z.describe('What the members share by: agreed percentages, kW of each, or alike')),
  remainder: z
    .enum(['largest-remainder', 'host', 'first-named', 'kept-in-pool'])
    .check(z.describe('Where the units go that are left over once every share is cut down')),
});

const byPriority = z.strictObject({
  ...common,
  by: z
    .literal('priority')
    .check(z.describe('In the order named, each member as much as it imports in the period')),
  remainder: z
    .enum(['host', 'first-named', 'kept-in-pool'])
    .check(z.describe('Where the units go that no member needs')),
});

/** How the units of a pool are shared over several accounts, as zod checks it. */
export const sharingSchema = z.discriminatedUnion('by', [byWeight, byPriority]);

/** A rule for sharing the units of a pool, with its clause. */
export type SharingRule = z.infer<typeof sharingSchema>;

/**
 * Check what the schema of a sharing rule cannot say.
 *
 * By priority nobody is given more than it needs but the one that takes what is left over. Where unused
 * units return to the pool, that one would have to give it back: the rule says two things of the same units.
 *
 * @param rule  of a settlement rule
 * @param path  of the sharing rule
 * @example
 * sharingRuleFindings({ clause: 'T 1', of: 'export', by: 'priority', decimals: '0', remainder: 'host', unused: 'stays-with-member' }, []).length //=> 0
 */
export function sharingRuleFindings({ by, remainder, unused }: SharingRule, path: Path): Finding[] {
  if (by !== 'priority' || remainder === 'kept-in-pool' || unused !== 'returns-to-pool') return [];
  const taker = remainder === 'host' ? 'the host' : 'the member named first';
  const values = {
    found: `units that no member needs go to ${taker}, and units above a member's need return to the pool`,
    expected: 'one place for the units that no member needs',
    remedy: 'Write "remainder": "kept-in-pool", or "unused": "stays-with-member".',
  };
  return [tariffFinding('tariff/settlement-incomplete', { path: [...path, 'remainder'] }, values)];
}
