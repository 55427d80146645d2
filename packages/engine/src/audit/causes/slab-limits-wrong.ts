import { isDecimalText } from '../../quantity/index.ts';
import type { Charge } from '../../tariff/index.ts';
import type { Cause, CauseContext, Variant } from '../cause.ts';
import { chargeVariant } from '../changed-tariff.ts';
import { energyCharge, versionsDuring } from '../charge-basis.ts';
import type { BillFacts } from '../facts.ts';
import { FIGURE } from '../figure-names.ts';
import { solveLimit } from '../slab-amount.ts';

const ID = 'slab-limits-wrong';

type SlabCharge = Extract<Charge, { kind: 'slabs' }>;

/** The slabs of a charge with one of their limits replaced. */
function withLimit({ slabs }: SlabCharge, at: number, upTo: string): SlabCharge['slabs'] {
  return slabs.map((slab, index) => (index === at ? { ...slab, upTo } : slab));
}

/** One limit of the energy charge that makes its printed line of the printed units. */
function solvedLimits(facts: BillFacts, { printed }: CauseContext): readonly Variant[] {
  const [version, second] = versionsDuring(facts);
  const energy = version === undefined || second !== undefined ? null : energyCharge(version.charges);
  if (energy?.kind !== 'slabs' || energy.method !== 'telescopic') return [];
  if (!energy.slabs.every(({ rate }) => isDecimalText(rate))) return [];
  const line = FIGURE.line(energy.id);
  const [amount, units] = [printed.get(line), printed.get(FIGURE.units('billed'))];
  if (amount === undefined || units === undefined) return [];
  return energy.slabs.slice(0, -1).flatMap(({ upTo = '' }, at) => {
    const limit = solveLimit({ charge: energy, at, units, amount }, facts);
    if (limit === null || limit === upTo) return [];
    const what = `A slab reaches to ${limit} units in place of ${upTo}`;
    const words = { cause: ID, id: `limit ${String(at + 1)} ${limit}`, what, fitted: [line] };
    return chargeVariant(facts, words, (charge) =>
      charge.kind === 'slabs' && charge.id === energy.id && charge.slabs[at]?.upTo === upTo
        ? { ...charge, slabs: withLimit(charge, at, limit) }
        : charge,
    );
  });
}

/** Everything at the rate of the slab reached, or each part at its own, against the rule. */
function otherMethod(facts: BillFacts): readonly Variant[] {
  const isMeant = (charge: Charge, charges: readonly Charge[]): charge is SlabCharge =>
    charge.kind === 'slabs' && charge === energyCharge(charges);
  const turned = (method: SlabCharge['method'], what: string): readonly Variant[] =>
    chargeVariant(facts, { cause: ID, id: method, what }, (charge, charges) => {
      if (!isMeant(charge, charges) || charge.method === method) return charge;
      return { ...charge, chosenBy: undefined, method };
    });
  return [
    ...turned('whole', 'Every unit is priced at the rate of the slab reached'),
    ...turned('telescopic', 'Each part is priced at the rate of its own slab'),
  ];
}

/** One of several tables of slabs for everybody, whatever the units. */
function otherTable(facts: BillFacts): readonly Variant[] {
  const most = Math.max(
    0,
    ...facts.tariff.versions.flatMap(({ charges }) =>
      charges.map((charge) => (charge.kind === 'slab-tables' ? charge.tables.length : 0)),
    ),
  );
  return Array.from({ length: most }, (_, at) =>
    chargeVariant(
      facts,
      { cause: ID, id: `table ${String(at + 1)}`, what: `Priced by table ${String(at + 1)} of the slabs` },
      (charge) => {
        const table = charge.kind === 'slab-tables' ? charge.tables[at] : undefined;
        if (charge.kind !== 'slab-tables' || table === undefined || charge.tables.length < 2) return charge;
        return { ...charge, tables: [{ slabs: table.slabs }] };
      },
    ),
  ).flat();
}

/** C31: a slab ends at another limit, or slabs are telescopic where they must not be, or the reverse. */
export const SLAB_LIMITS_WRONG: Cause = {
  id: ID,
  name: 'Wrong slabs',
  stage: 'slabs',
  evidence: ['the table of slabs of the order, beside the slab lines of the bill'],
  source: 'C31, Why a net-metered bill is wrong, or right but surprising, project reference, 2025',
  variants: (facts, context) => [
    ...otherMethod(facts),
    ...otherTable(facts),
    ...solvedLimits(facts, context),
  ],
};
