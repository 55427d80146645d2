import { addQuotients, type Quotient } from '../../quantity/index.ts';
import type { LedgersRule, SettlementRule } from '../../tariff/index.ts';
import type { Cause, Variant } from '../cause.ts';
import { changedSettlements, tariffVariant } from '../changed-tariff.ts';
import { unitLedgers } from '../charge-basis.ts';
import { FIGURE } from '../figure-names.ts';
import { thousandths, withShown, withUnits, type BillFacts } from '../facts.ts';

type Netting = Extract<NonNullable<LedgersRule['quantities']>[number], { is: 'netting' }>;

const ID = 'netted-by-block';

/** Blocks in which both what was taken and what was given is known. */
const blocksOf = ({ units }: BillFacts): readonly string[] =>
  Object.keys(units)
    .filter((name) => name.startsWith('import@'))
    .map((name) => name.slice('import@'.length))
    .filter((block) => units[`export@${block}`] !== undefined);

/** Whether a rule sets off over the whole period, without regard to time blocks. */
function netsOverPeriod(rule: SettlementRule): boolean {
  if (rule.scheme === 'unit-netting') return true;
  return (rule.quantities ?? []).some(
    (one) => one.is === 'netting' && one.demand.includes('import') && one.supply.includes('export'),
  );
}

const ZERO = thousandths(0);

/**
 * Units set off inside each block alone: what is left of import is billed; what is left of export waits, and so does
 * the credit brought forward.
 */
function insideBlocks(facts: BillFacts, blocks: readonly string[]): Variant {
  const { units, opening } = facts;
  const left = blocks.map((block) => (units[`import@${block}`] ?? 0) - (units[`export@${block}`] ?? 0));
  const billed = left.reduce((sum, one) => sum + Math.max(0, one), 0);
  const parked = left.reduce((sum, one) => sum + Math.max(0, -one), 0);
  const ledgers = unitLedgers(facts);
  const names = [...blocks.flatMap((block) => [`import@${block}`, `export@${block}`]), 'import', 'export'];
  const shown: Record<string, Quotient> = Object.fromEntries(
    names.map((name) => [FIGURE.units(name), thousandths(units[name] ?? 0)]),
  );
  for (const id of ledgers) {
    const held = thousandths(opening[id] ?? 0);
    shown[FIGURE.opening(id)] = held;
    shown[FIGURE.closing(id)] = addQuotients([held, id === ledgers[0] ? thousandths(parked) : ZERO]);
  }
  const none = Object.fromEntries(ledgers.map((id) => [id, 0]));
  const own = withUnits({ ...facts, opening: { ...opening, ...none } }, { import: billed, export: 0 });
  const bare = Object.fromEntries(Object.entries(own.units).filter(([name]) => !name.includes('@')));
  const what = 'Units are set off inside each time block alone, and credit is not used';
  return { id: 'inside-blocks', what, facts: withShown({ ...own, units: bare }, shown) };
}

const isBetweenBlocks = (one: NonNullable<LedgersRule['quantities']>[number]): one is Netting =>
  one.is === 'netting' && one.demand.filter((name) => name.includes('@')).length > 1;

/** Every netting of time blocks by other routes. */
function routed(facts: BillFacts, routes: 'any' | 'same-block', what: string): readonly Variant[] {
  return tariffVariant(facts, { cause: ID, id: routes, what }, (document) =>
    changedSettlements(document, (rule) => {
      if (rule.scheme === 'unit-netting') return rule;
      const quantities = rule.quantities ?? [];
      if (!quantities.some((one) => isBetweenBlocks(one) && one.routes !== routes)) return rule;
      return {
        ...rule,
        quantities: quantities.map((one) => (isBetweenBlocks(one) ? { ...one, routes } : one)),
      };
    }),
  );
}

/** C23: units are set off inside time blocks although the rule nets over the period, or the reverse. */
export const NETTED_BY_BLOCK: Cause = {
  id: ID,
  name: 'Netting by time block, or not',
  stage: 'netting',
  evidence: [
    'the category of the tariff, and the rule that says over what units are set off',
    'the readings of each time block',
  ],
  source: 'C23, Why a net-metered bill is wrong, or right but surprising, project reference, 2025',
  variants: (facts) => {
    const blocks = blocksOf(facts);
    const isOverPeriod = facts.tariff.settlements.some(netsOverPeriod);
    return [
      ...(isOverPeriod && blocks.length > 1 ? [insideBlocks(facts, blocks)] : []),
      ...routed(facts, 'any', 'Units are set off over the whole period, whatever their time block'),
      ...routed(facts, 'same-block', 'Units are set off inside each time block alone'),
    ];
  },
};
