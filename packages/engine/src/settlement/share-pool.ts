import {
  exactText,
  isSameQuotient,
  wholeSteps,
  type Figure,
  type Outcome,
  type Path,
} from '../quantity/index.ts';
import type { SharingRule } from '../tariff/index.ts';
import { memberFindings, type PoolMember } from './check-members.ts';
import { needFigure, shareByPriority } from './share-by-priority.ts';
import { shareByWeight } from './share-by-weight.ts';
import { cameTo, cutDownUnits, derivedUnits, givenUnits, type Sharing } from './share-figures.ts';

const NONE: readonly never[] = [];

/** What one account got of a pool. */
export interface PoolShare {
  /** The account. */
  readonly id: string;
  readonly figure: Figure;
}

/** A pool that was shared: the pool is the sum of the shares and of what stays in it, to the watt-hour. */
export interface SharedPool {
  /** In the order in which the members were named. */
  readonly shares: readonly PoolShare[];
  /** Units that stay in the pool for the next period. */
  readonly keptInPool: Figure;
}

/** Energy that no whole number of watt-hours counts is a caller's mistake: registers have no finer digit. */
function refused(what: 'pool' | 'need', found: string): RangeError {
  return new RangeError(`a ${what} is counted in whole watt-hours of 0 or more, found ${found}`);
}

const isCount = (wattHours: number): boolean => Number.isSafeInteger(wattHours) && wattHours >= 0;

/** The pool as a figure and in watt-hours. */
function poolOf(pool: Figure | number): Pick<Sharing, 'pool' | 'wattHours'> {
  if (typeof pool === 'number') {
    if (!isCount(pool)) throw refused('pool', `${pool} Wh`);
    return {
      pool: givenUnits({ id: 'pool', label: 'Units to share', clause: '' }, pool),
      wattHours: pool,
    };
  }
  const wattHours = wholeSteps(pool, { numerator: 1, denominator: 1000 }, 'down');
  if (wattHours < 0 || !isSameQuotient(pool, { numerator: wattHours, denominator: 1000 })) {
    throw refused('pool', `${exactText(pool.numerator, pool.denominator)} kWh`);
  }
  return { pool, wattHours };
}

/** What a member can use of its share: the rest returns to the pool. */
function upToNeed(share: Figure, member: PoolMember, sharing: Sharing): Figure {
  const { need = 0 } = member;
  const allotted = share.numerator as number;
  if (allotted <= need) return share;
  const { id, label } = share;
  const inputs = [{ ...share, id: 'share-allotted', label: `${label}, as allotted` }, needFigure(member)];
  return cutDownUnits(
    { id, label, operation: 'least', inputs },
    { numerator: need, denominator: 1 },
    sharing,
  );
}

function keptUnits(shares: readonly Figure[], sharing: Sharing): Figure {
  const kept = shares.reduce((rest, share) => rest - (share.numerator as number), sharing.wattHours);
  return derivedUnits(
    {
      id: 'kept-in-pool',
      label: 'Units kept in the pool',
      operation: 'difference',
      inputs: [sharing.pool, ...shares.map(cameTo)],
    },
    kept,
    sharing,
  );
}

/**
 * Share the units of a pool over accounts by a tariff's rule: group and virtual net metering.
 *
 * Every share is a whole multiple of the rule's shared unit. First the exact shares are cut down, then the
 * units left over go where the rule's `remainder` says, then, where unused units return to the pool, every
 * share is cut to what its member took from the grid in the period. What is finer than a shared unit, and
 * what returns, stays in the pool: nothing is shared a second time.
 *
 * @param rule     of the tariff
 * @param pool     units to share, as a figure or in whole watt-hours, 0 or more
 * @param members  in the order named, each with what the rule shares by
 * @param path     of the list of members, for findings
 * @returns        shares and what stays in the pool, or null with a finding for every problem of the members
 * @throws         RangeError when the pool or a need is below 0 or finer than a watt-hour
 * @example
 * const rule = { clause: 'T 9', of: 'export', by: 'equal', decimals: '0', remainder: 'largest-remainder', unused: 'stays-with-member' };
 * const { value } = sharePool(rule, 10_001_000, [{ id: 'A' }, { id: 'B' }], ['members']);
 * value.shares.map(({ figure }) => figure.numerator) //=> [5001000,5000000]
 */
export function sharePool(
  rule: SharingRule,
  pool: Figure | number,
  members: readonly PoolMember[],
  path: Path,
): Outcome<SharedPool | null> {
  const findings = memberFindings(rule, members, path);
  if (findings.length > 0) return { value: null, findings };
  const odd = members.find(({ need = 0 }) => !isCount(need));
  if (odd !== undefined) throw refused('need', `${odd.need ?? 0} Wh`);
  const sharing: Sharing = { rule, ...poolOf(pool), step: 10 ** (3 - (rule.decimals.charCodeAt(0) - 48)) };
  const allotted =
    rule.by === 'priority' ? shareByPriority(sharing, members) : shareByWeight(sharing, members);
  const shares = members.map((member, index) => {
    const share = allotted[index] as Figure;
    return rule.unused === 'returns-to-pool' ? upToNeed(share, member, sharing) : share;
  });
  const named = members.map(({ id }, index) => ({ id, figure: shares[index] as Figure }));
  return { value: { shares: named, keptInPool: keptUnits(shares, sharing) }, findings: NONE };
}
