import * as z from 'zod/mini';
import type { Outcome } from '../quantity/index.ts';
import { decimalText, inFileOrder, locate, readDocument, type SourceText } from '../tariff/index.ts';
import { basisFindings, type PoolMember } from './check-members.ts';

const accountId = (description: string): z.ZodMiniString =>
  z.string().check(z.minLength(1), z.describe(description));

const member = z.strictObject({
  account: accountId('The id of an account that shares the pool'),
  percent: z.optional(decimalText('Its part of the pool, as the members agreed')),
  capacity: z.optional(decimalText('Its capacity in kW')),
});

/** The group document as zod checks it. */
const groupSchema = z.strictObject({
  $schema: z.optional(z.string()),
  format: z.literal('unitbook-group-1'),
  id: accountId('Names the group'),
  host: accountId('The id of the account whose plant fills the pool; it need not be a member'),
  members: z.array(member).check(z.describe('The accounts that share the pool, in order of priority')),
});

/** A group document: a host, and the accounts that share what its plant gives. */
export type GroupDocument = z.infer<typeof groupSchema>;

/** A group that was read, with its text: `locate` puts findings about its members in their place. */
export interface ReadGroup extends Outcome<GroupDocument | null> {
  readonly source: SourceText;
}

/**
 * The members of a group as a pool is shared over them.
 *
 * @param group  as read
 * @param needs  what accounts took from the grid in the period, in whole watt-hours, by account
 * @example
 * groupMembers({ format: 'unitbook-group-1', id: 'G', host: 'A', members: [{ account: 'A' }] }, new Map([['A', 5000]])) //=> [{"id":"A","isHost":true,"need":5000}]
 */
export function groupMembers(
  { host, members }: GroupDocument,
  needs: ReadonlyMap<string, number> = new Map(),
): readonly PoolMember[] {
  return members.map(({ account, percent, capacity }) => ({
    id: account,
    isHost: account === host,
    percent,
    capacity,
    need: needs.get(account),
  }));
}

/**
 * Read a group document and list everything that is wrong with it.
 *
 * @param text  the JSON file, whole
 * @returns     the group, or null when anything is wrong; findings with line and column, in file order
 * @example
 * readGroup('{}').findings.length //=> 4
 */
export function readGroup(text: string): ReadGroup {
  const { mended, source, findings } = readDocument<GroupDocument>(text, groupSchema);
  const basis = mended === null ? [] : basisFindings(groupMembers(mended), ['members']);
  const all = inFileOrder([...findings, ...basis.map((finding) => locate(source, finding))]);
  return { value: all.length === 0 ? mended : null, findings: all, source };
}
