import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { unexplained } from '../../../../tests/support/recompute.ts';
import type { SharingRule } from '../tariff/index.ts';
import type { PoolMember } from './check-members.ts';
import { sharePool, type SharedPool } from './share-pool.ts';

/** A member whose weight is a whole number: its kW, or its percentage of all weights. */
interface Drawn {
  readonly weight: number;
  readonly need: number;
}

const drawn = fc.record({ weight: fc.integer({ min: 1, max: 40 }), need: fc.nat(60_000) });
const someDrawn = fc.array(drawn, { minLength: 1, maxLength: 8 });
const anyPool = fc.oneof(
  fc.nat(200_000),
  fc.nat(200).map((units) => units * 1000),
);
const decimals = fc.constantFrom('0', '1', '2', '3');
const unused = fc.constantFrom('returns-to-pool', 'stays-with-member');
const places = ['largest-remainder', 'host', 'first-named', 'kept-in-pool'] as const;

const weighted = fc.record({
  clause: fc.constant('T 9'),
  by: fc.constantFrom('capacity', 'equal', 'percentage'),
  decimals,
  remainder: fc.constantFrom(...places),
  unused,
}) as fc.Arbitrary<SharingRule>;
const byPriority = fc.record({
  clause: fc.constant('T 9'),
  by: fc.constant('priority'),
  decimals,
  remainder: fc.constantFrom('host', 'first-named', 'kept-in-pool'),
  unused,
}) as fc.Arbitrary<SharingRule>;
const anyRule = fc.oneof(weighted, byPriority);

/** Percentages of two decimals in the ratio of weights, the last one what is missing to 100. */
function percentages(weights: readonly number[]): readonly string[] {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const hundredths = weights.map((weight) => Math.floor((weight * 10_000) / total));
  const missing = 10_000 - hundredths.reduce((sum, one) => sum + one, 0);
  return hundredths.map((one, index) => {
    const all = index === weights.length - 1 ? one + missing : one;
    return `${Math.floor(all / 100)}.${String(all % 100).padStart(2, '0')}`;
  });
}

/** Members of a pool; the last one is the host. */
function membersOf(all: readonly Drawn[]): readonly PoolMember[] {
  const percents = percentages(all.map(({ weight }) => weight));
  return all.map(({ weight, need }, index) => ({
    id: `M${index}`,
    percent: percents[index],
    capacity: String(weight),
    need,
    isHost: index === all.length - 1,
  }));
}

function share(rule: SharingRule, pool: number, members: readonly PoolMember[]): SharedPool {
  const { value, findings } = sharePool(rule, pool, members, ['members']);
  if (value === null) throw new Error(JSON.stringify(findings));
  return value;
}

const wattHours = ({ shares }: SharedPool): readonly number[] =>
  shares.map(({ figure }) => Number(figure.numerator));

const byId = ({ shares }: SharedPool): ReadonlyMap<string, number> =>
  new Map(shares.map(({ id, figure }) => [id, Number(figure.numerator)]));

const stepOf = (rule: SharingRule): number => 10 ** (3 - Number(rule.decimals));

/** What a member shares by, in whole numbers. */
function weightOf({ by }: SharingRule, { percent = '', capacity = '' }: PoolMember): number {
  if (by === 'percentage') return Number(percent.replace('.', ''));
  return by === 'capacity' ? Number(capacity) : 1;
}

/** The part of a shared unit that a member's exact share is above whole ones, times all weights. */
function remainders(rule: SharingRule, pool: number, members: readonly PoolMember[]): readonly number[] {
  const weights = members.map((member) => weightOf(rule, member));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => (pool * weight) % (total * stepOf(rule)));
}

describe('a pool that is shared', () => {
  it('balances: it is the sum of the shares and of what is kept', () => {
    fc.assert(
      fc.property(anyRule, anyPool, someDrawn, (rule, pool, all) => {
        const shared = share(rule, pool, membersOf(all));
        const sum = wattHours(shared).reduce((total, one) => total + one, 0);
        expect(sum + Number(shared.keptInPool.numerator)).toBe(pool);
      }),
    );
  });

  it('gives nobody less than nothing, and everybody whole shared units', () => {
    fc.assert(
      fc.property(anyRule, anyPool, someDrawn, (rule, pool, all) => {
        const shared = share(rule, pool, membersOf(all));
        const shares = wattHours(shared);
        expect(shares.every((one) => one >= 0 && one % stepOf(rule) === 0)).toBe(true);
        expect(Number(shared.keptInPool.numerator) >= 0).toBe(true);
      }),
    );
  });

  it('keeps less than one shared unit where every unit has a taker', () => {
    fc.assert(
      fc.property(anyRule, anyPool, someDrawn, (rule, pool, all) => {
        fc.pre(rule.remainder !== 'kept-in-pool' && rule.unused === 'stays-with-member');
        expect(Number(share(rule, pool, membersOf(all)).keptInPool.numerator)).toBe(pool % stepOf(rule));
      }),
    );
  });

  it('has figures that follow from what they show', () => {
    fc.assert(
      fc.property(anyRule, anyPool, someDrawn, (rule, pool, all) => {
        const { shares, keptInPool } = share(rule, pool, membersOf(all));
        expect([...shares.map(({ figure }) => figure), keptInPool].flatMap(unexplained)).toEqual([]);
      }),
    );
  });
});

describe('names and order', () => {
  it('of members: another name changes no share', () => {
    fc.assert(
      fc.property(anyRule, anyPool, someDrawn, (rule, pool, all) => {
        const members = membersOf(all);
        const renamed = members.map((member, index) => ({ ...member, id: `Z${members.length - index}` }));
        expect(wattHours(share(rule, pool, renamed))).toEqual(wattHours(share(rule, pool, members)));
      }),
    );
  });

  const shuffled = someDrawn.chain((all) => {
    const members = membersOf(all);
    const indexes = members.map((_, index) => index);
    return fc
      .shuffledSubarray(indexes, { minLength: indexes.length })
      .map((order) => ({ members, other: order.map((index) => members[index] as PoolMember) }));
  });

  it('of members: another order changes no share, but between those with the same remainder', () => {
    let ties = 0;
    fc.assert(
      fc.property(weighted, anyPool, shuffled, (rule, pool, { members, other }) => {
        fc.pre(rule.remainder !== 'first-named');
        const before = byId(share(rule, pool, members));
        const after = byId(share(rule, pool, other));
        const parts = remainders(rule, pool, members);
        members.forEach(({ id }, index) => {
          const isTied = parts.filter((part) => part === parts[index]).length > 1;
          const moved = Math.abs((after.get(id) ?? 0) - (before.get(id) ?? 0));
          if (moved > 0) ties += 1;
          expect(moved <= (rule.remainder === 'largest-remainder' && isTied ? stepOf(rule) : 0)).toBe(true);
        });
      }),
      { numRuns: 500 },
    );
    expect(ties > 0).toBe(true);
  });

  it('of members: among equals the earlier named is never behind', () => {
    fc.assert(
      fc.property(weighted, anyPool, fc.integer({ min: 1, max: 9 }), (rule, pool, count) => {
        fc.pre(rule.by === 'equal' && rule.remainder !== 'host');
        const all = Array.from({ length: count }, () => ({ weight: 1, need: 30_000 }));
        const shares = wattHours(share(rule, pool, membersOf(all)));
        expect([...shares].sort((a, b) => b - a)).toEqual(shares);
      }),
    );
  });
});

describe('more capacity', () => {
  const rule = fc.record({ remainder: fc.constantFrom(...places), decimals });

  it('never gets a member less than it had', () => {
    fc.assert(
      fc.property(rule, anyPool, someDrawn, fc.integer({ min: 1, max: 20 }), (parts, pool, all, more) => {
        const by: SharingRule = {
          clause: 'T 9',
          of: 'export',
          by: 'capacity',
          unused: 'stays-with-member',
          ...parts,
        };
        const before = wattHours(share(by, pool, membersOf(all)));
        all.forEach((_, index) => {
          const grown = all.map((one, at) => (at === index ? { ...one, weight: one.weight + more } : one));
          const after = wattHours(share(by, pool, membersOf(grown)));
          expect((after[index] ?? 0) >= (before[index] ?? 0)).toBe(true);
        });
      }),
    );
  });

  it('never gets less than a member with less, where no single one takes what is left over', () => {
    fc.assert(
      fc.property(rule, anyPool, someDrawn, (parts, pool, all) => {
        fc.pre(parts.remainder === 'largest-remainder' || parts.remainder === 'kept-in-pool');
        const by: SharingRule = {
          clause: 'T 9',
          of: 'export',
          by: 'capacity',
          unused: 'stays-with-member',
          ...parts,
        };
        const shares = wattHours(share(by, pool, membersOf(all)));
        all.forEach(({ weight }, index) => {
          all.forEach((other, at) => {
            if (weight > other.weight) expect((shares[index] ?? 0) >= (shares[at] ?? 0)).toBe(true);
          });
        });
      }),
    );
  });
});

/**
 * The same sharing as somebody would hand out tokens, one shared unit after the other: by weight each goes
 * to whoever is owed most at that moment, by priority to the first who still needs one. Nothing is divided.
 */
function handOut(rule: SharingRule, pool: number, members: readonly PoolMember[]): readonly number[] {
  const step = stepOf(rule);
  const weights = members.map((member) => weightOf(rule, member));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const held = members.map(() => 0);
  const owed = (index: number): number => pool * (weights[index] ?? 0) - (held[index] ?? 0) * total;
  const everyone = members.map((_, index) => index);
  const taker = { 'largest-remainder': -1, 'kept-in-pool': -1, 'first-named': 0, host: members.length - 1 };
  for (let left = pool; left >= step; left -= step) {
    const isDue = (index: number): boolean =>
      rule.by === 'priority'
        ? (members[index]?.need ?? 0) - (held[index] ?? 0) >= step
        : owed(index) >= step * total;
    // A taker's own share is filled before anything is left over, so only the others are looked at first.
    let next = everyone.find(isDue) ?? taker[rule.remainder];
    if (rule.remainder === 'largest-remainder') {
      next = everyone.reduce((most, index) => (owed(index) > owed(most) ? index : most), 0);
    }
    if (next < 0) break;
    held[next] = (held[next] ?? 0) + step;
  }
  if (rule.unused === 'stays-with-member') return held;
  return held.map((one, index) => {
    let kept = one;
    while (kept > (members[index]?.need ?? 0)) kept -= step;
    return kept;
  });
}

describe('handing out unit by unit', () => {
  it('comes to the same shares', () => {
    fc.assert(
      fc.property(anyRule, anyPool, someDrawn, (any, pool, all) => {
        const rule: SharingRule = { ...any, decimals: '0' };
        const members = membersOf(all);
        expect(wattHours(share(rule, pool, members))).toEqual(handOut(rule, pool, members));
      }),
      { numRuns: 1000 },
    );
  });
});
