import type { RegisterId } from '../../readings/index.ts';
import type { Cause, Variant } from '../cause.ts';
import type { BillFacts, RegisterFacts } from '../facts.ts';
import { countedBy, isPossible, withChannel } from '../readings-changed.ts';

/** A register of the old meter, and that of the last one in its place. */
interface Replaced {
  readonly id: RegisterId;
  readonly parts: readonly RegisterFacts[];
  readonly old: RegisterFacts;
  readonly last: RegisterFacts;
}

/** Registers whose meter was changed inside the period. */
function replacedOf({ stretches = [] }: BillFacts): readonly Replaced[] {
  const keys = [...new Set(stretches.map(({ register }) => register.key))];
  return keys.flatMap((key) => {
    const parts = stretches.filter(({ register }) => register.key === key);
    const [old, last] = [parts[0], parts.at(-1)];
    return old === undefined || last === undefined || parts.length < 2
      ? []
      : [{ id: old.register.id, parts, old, last }];
  });
}

type Change = readonly [one: Replaced, more: number];

/** Facts in which replaced registers counted so many thousandths more. */
const counting = (facts: BillFacts, changes: readonly Change[]): BillFacts =>
  changes.reduce((own, [{ id }, more]) => withChannel(own, id, (own.units[id] ?? 0) + more), facts);

/** What is left out where a meter does not count. */
const without =
  (facts: BillFacts, part: 'old' | 'last') =>
  (one: Replaced): Change => [one, -countedBy(one[part], facts)];

/** What a new meter counts where it is taken to have begun at 0. */
const fromZero =
  (facts: BillFacts) =>
  (one: Replaced): Change => [
    one,
    countedBy({ ...one.last, previous: 0 }, facts) - countedBy(one.last, facts),
  ];

/** The new meter's reading less the old one's, as if one counter had passed its full scale. */
const acrossMeters =
  (facts: BillFacts) =>
  (one: Replaced): Change => {
    const { old, last, parts } = one;
    const passed = last.present < old.previous;
    const across = countedBy({ ...last, previous: old.previous, passed }, facts);
    return [one, across - parts.reduce((sum, part) => sum + countedBy(part, facts), 0)];
  };

interface Way {
  readonly id: string;
  readonly what: string;
  readonly changes: readonly Change[];
}

function waysOf(facts: BillFacts, replaced: readonly Replaced[]): readonly Way[] {
  const of = (id: RegisterId): readonly Replaced[] => replaced.filter((one) => one.id === id);
  const grid = replaced.filter(({ id }) => id !== 'generation');
  const across = of('import').map(acrossMeters(facts));
  const lost = 'What the old meter counted is left out';
  const subtracted =
    'The reading of the old meter is taken off that of the new one, as if it had passed its full scale';
  return [
    { id: 'old-part', what: lost, changes: replaced.map(without(facts, 'old')) },
    { id: 'old-import', what: `${lost} of import`, changes: of('import').map(without(facts, 'old')) },
    { id: 'old-export', what: `${lost} of export`, changes: of('export').map(without(facts, 'old')) },
    {
      id: 'new-part',
      what: 'What the new meter counted is left out',
      changes: replaced.map(without(facts, 'last')),
    },
    {
      id: 'new-export',
      what: 'What the new meter counted of export is left out',
      changes: of('export').map(without(facts, 'last')),
    },
    {
      id: 'import-start',
      what: 'The new meter counts import from 0, not from where it began',
      changes: of('import').map(fromZero(facts)),
    },
    {
      id: 'start',
      what: 'The new meter counts from 0, not from where it began',
      changes: grid.map(fromZero(facts)),
    },
    { id: 'across-import', what: `${subtracted}; of import`, changes: across },
    {
      id: 'across-import-old-export',
      what: `${subtracted}; of import, and what the old meter counted of export is left out`,
      changes: [...across, ...of('export').map(without(facts, 'old'))],
    },
    { id: 'across', what: `${subtracted}; of import and export`, changes: grid.map(acrossMeters(facts)) },
  ];
}

/** Whether an earlier way changes the same by the same. */
const isNew = ({ changes }: Way, earlier: readonly Way[]): boolean => {
  const text = (all: readonly Change[]): string =>
    all.map(([{ old }, more]) => `${old.register.key} ${more}`).join();
  return !earlier.some((way) => text(way.changes) === text(changes));
};

/** C11: a meter was replaced inside the period, and its readings or those of the old one were put together wrongly. */
export const METER_REPLACED: Cause = {
  id: 'meter-replaced',
  name: 'Replaced meter counted wrongly',
  stage: 'readings',
  evidence: [
    'the replacement slip with the last and the first readings of every register',
    'both numbers and the multiplying factor of each meter',
  ],
  variants: (facts): readonly Variant[] => {
    const replaced = replacedOf(facts);
    if (replaced.length === 0) return [];
    return waysOf(facts, replaced)
      .map(({ changes, ...way }) => ({ ...way, changes: changes.filter(([, more]) => more !== 0) }))
      .filter((way, at, ways) => way.changes.length > 0 && isNew(way, ways.slice(0, at)))
      .map(({ id, what, changes }) => ({ id, what, facts: counting(facts, changes) }))
      .filter((variant) => isPossible(variant.facts));
  },
};
