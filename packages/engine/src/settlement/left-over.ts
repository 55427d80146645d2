import type { Figure } from '../quantity/index.ts';
import type { PoolMember } from './check-members.ts';
import { cameTo, cutDownUnits, derivedUnits, type Sharing } from './share-figures.ts';

/** Units that are left of the pool once others are taken off, cut down to whole shared units. */
function leftOver(taken: readonly Figure[], sharing: Sharing): Figure {
  const left = taken.reduce((rest, one) => rest - (one.numerator as number), sharing.wattHours);
  return cutDownUnits(
    {
      id: 'left-over',
      label: 'Units left over',
      operation: 'difference',
      inputs: [sharing.pool, ...taken.map(cameTo)],
    },
    { numerator: left, denominator: 1 },
    sharing,
  );
}

/** A share with units left over added: the share before becomes its first input. */
export function withMore(share: Figure, more: Figure, sharing: Sharing): Figure {
  if (more.numerator === 0) return share;
  const { id, label } = share;
  const before = { ...share, id: 'share-before', label: `${label}, before units left over` };
  const sum = (share.numerator as number) + (more.numerator as number);
  return derivedUnits({ id, label, operation: 'sum', inputs: [before, more] }, sum, sharing);
}

/** All that is left over to the one that the rule names. */
export function toTaker(
  shares: readonly Figure[],
  members: readonly PoolMember[],
  sharing: Sharing,
): readonly Figure[] {
  const { remainder } = sharing.rule;
  if (remainder === 'kept-in-pool') return shares;
  const taker = remainder === 'host' ? members.findIndex(({ isHost }) => isHost === true) : 0;
  const left = leftOver(shares, sharing);
  return shares.map((share, index) => (index === taker ? withMore(share, left, sharing) : share));
}
