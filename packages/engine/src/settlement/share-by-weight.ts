import { givenFigure, shareOut, wholeProduct, type Figure } from '../quantity/index.ts';
import { capacityWatts, percentParts, type PoolMember } from './check-members.ts';
import { toTaker, withMore } from './left-over.ts';
import { cutDownUnits, givenUnits, type Derivation, type Sharing } from './share-figures.ts';

/** Where the numbers of members stand. */
const GROUP = 'group';

/** How the exact share of a member follows from the pool. */
type Derive = (member: PoolMember, weight: number) => Pick<Derivation, 'operation' | 'inputs' | 'parameters'>;

/** A plain number, or the part that one is of others. */
function ratio(words: Pick<Figure, 'id' | 'label' | 'clause'>, value: number): Figure {
  return givenFigure({ ...words, unit: 'ratio', numerator: value, denominator: 1 });
}

function byPercentage({ pool }: Sharing): Derive {
  return ({ percent = '' }) => ({
    operation: 'share',
    inputs: [pool],
    parameters: [{ name: 'percent', text: percent, unit: 'percent', clause: GROUP }],
  });
}

function kilowatts({ id }: PoolMember, watts: number): Figure {
  const label = `Capacity of ${id}`;
  return givenFigure({
    id: 'capacity',
    label,
    unit: 'kW',
    numerator: watts,
    denominator: 1000,
    clause: GROUP,
  });
}

function byCapacity({ pool }: Sharing, members: readonly PoolMember[], weights: readonly number[]): Derive {
  const all = weights.reduce((sum, watts) => sum + watts, 0);
  const total: Figure = {
    ...givenFigure({
      id: 'group-capacity',
      label: 'Capacity of all members',
      unit: 'kW',
      numerator: all,
      denominator: 1000,
      clause: '',
    }),
    operation: 'sum',
    inputs: members.map((member, index) => kilowatts(member, weights[index] ?? 0)),
  };
  return (member, watts) => {
    const part: Figure = {
      ...ratio({ id: 'capacity-part', label: `Part of the capacity that is ${member.id}'s`, clause: '' }, 1),
      numerator: watts,
      denominator: all,
      operation: 'quotient',
      inputs: [kilowatts(member, watts), total],
    };
    return { operation: 'product', inputs: [pool, part] };
  };
}

function equally({ pool }: Sharing, members: readonly PoolMember[]): Derive {
  const count = ratio({ id: 'members', label: 'Members', clause: GROUP }, members.length);
  return () => ({ operation: 'quotient', inputs: [pool, count] });
}

/** What members share by, as whole numbers; all of them were checked. */
function weightsOf({ rule: { by } }: Sharing, members: readonly PoolMember[]): readonly number[] {
  if (by === 'percentage') return members.map(({ percent = '' }) => percentParts(percent) ?? 0);
  if (by === 'capacity') return members.map(({ capacity = '' }) => capacityWatts(capacity) ?? 0);
  return members.map(() => 1);
}

function deriveBy(sharing: Sharing, members: readonly PoolMember[], weights: readonly number[]): Derive {
  const { by } = sharing.rule;
  if (by === 'percentage') return byPercentage(sharing);
  return by === 'capacity' ? byCapacity(sharing, members, weights) : equally(sharing, members);
}

/** One unit of those left over to each of the largest remainders. */
function byLargestRemainder(cut: readonly Figure[], weights: readonly number[], sharing: Sharing): Figure[] {
  const out = shareOut(sharing.wattHours, weights, sharing.step);
  const label = 'Of the units left over, by largest remainder';
  return cut.map((share, index) => {
    const more = (out[index] ?? 0) - (share.numerator as number);
    return withMore(
      share,
      givenUnits({ id: 'remainder', label, clause: sharing.rule.clause }, more),
      sharing,
    );
  });
}

/** Share a pool by percentage, by capacity or alike, and place the units left over as the rule says. */
export function shareByWeight(sharing: Sharing, members: readonly PoolMember[]): readonly Figure[] {
  const weights = weightsOf(sharing, members);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const derive = deriveBy(sharing, members, weights);
  const cut = members.map((member, index) => {
    const weight = weights[index] ?? 0;
    const exact = { numerator: wholeProduct(sharing.wattHours, weight), denominator: total };
    const words = { id: 'share', label: `Share of ${member.id}` };
    return cutDownUnits({ ...words, ...derive(member, weight) }, exact, sharing);
  });
  return sharing.rule.remainder === 'largest-remainder'
    ? byLargestRemainder(cut, weights, sharing)
    : toTaker(cut, members, sharing);
}
