import type { Figure } from '../quantity/index.ts';
import type { PoolMember } from './check-members.ts';
import { toTaker } from './left-over.ts';
import { cutDownUnits, derivedUnits, givenUnits, type Sharing } from './share-figures.ts';

/** What a member took from the grid, as a figure. */
export function needFigure({ id, need = 0 }: PoolMember): Figure {
  return givenUnits({ id: 'need', label: `Import of ${id}`, clause: `readings of ${id}` }, need);
}

/** What members named before have left of the pool. */
function stillThere(given: number, sharing: Sharing): Figure {
  if (given === 0) return sharing.pool;
  // One number for all who came before: their shares stand beside this one, and unfolded again in every
  // later share they would double with each member.
  const words = { id: 'given-before', label: 'Shares of the members named before' };
  const before = givenUnits({ ...words, clause: sharing.rule.clause }, given);
  const inputs = [sharing.pool, before];
  const left = {
    id: 'still-there',
    label: 'Units still in the pool',
    operation: 'difference',
    inputs,
  } as const;
  return derivedUnits(left, sharing.wattHours - given, sharing);
}

/**
 * Fill the members in the order named up to what each needs, in whole shared units, and place what nobody
 * needs as the rule says.
 */
export function shareByPriority(sharing: Sharing, members: readonly PoolMember[]): readonly Figure[] {
  let given = 0;
  const filled = members.map((member) => {
    const { id, need = 0 } = member;
    const left = sharing.wattHours - given;
    const inputs = [stillThere(given, sharing), needFigure(member)];
    const share = cutDownUnits(
      { id: 'share', label: `Share of ${id}`, operation: 'least', inputs },
      { numerator: need < left ? need : left, denominator: 1 },
      sharing,
    );
    given += share.numerator as number;
    return share;
  });
  return toTaker(filled, members, sharing);
}
