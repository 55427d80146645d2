import type { Charge } from '../../tariff/index.ts';
import type { Cause } from '../cause.ts';
import { changedVersions, tariffVariant } from '../changed-tariff.ts';
import { energyCharge, grossOf } from '../charge-basis.ts';
import { unknownLines } from '../unknown-lines.ts';

const ID = 'slabs-on-import';

type SlabCharge = Extract<Charge, { kind: 'slabs' }>;

/** Units set off at the rate of the lowest slab, in two lines that are no part of the sum: taken less billed. */
function setOffLines({ id, clause, label, on, slabs }: SlabCharge, gross: string): readonly Charge[] {
  const rate = slabs[0]?.rate ?? '0';
  const common = { kind: 'per-unit', label, clause, rounding: 'none', inTotal: false } as const;
  return [
    { ...common, id: `${id}-of-taken`, on: gross, rate: `-${rate}` },
    { ...common, id: `${id}-of-billed`, on, rate },
  ];
}

/** A line that is the sum of some above it. */
const sumLine = (words: Pick<Charge, 'id' | 'label' | 'clause'>, of: readonly string[]): Charge => ({
  ...words,
  kind: 'percentage',
  percent: '100',
  of: [...of],
});

/** Names a second line wherever the first is part of a base. */
function withLine(charge: Charge, first: string, second: string): Charge {
  if (charge.kind !== 'percentage' && charge.kind !== 'minimum') return charge;
  if (!charge.of.includes(first)) return charge;
  return charge.kind === 'minimum'
    ? { ...charge, of: [...charge.of, second] }
    : { ...charge, of: [...charge.of, second] };
}

/** All units taken priced in slabs, less units set off at the lowest rate: in one line, or in two. */
function pricedFirst(charges: readonly Charge[], creditLine: string | null): readonly Charge[] {
  const energy = energyCharge(charges);
  const gross = energy === null ? null : grossOf(energy.on);
  if (energy?.kind !== 'slabs' || gross === null) return charges;
  const { id, label, clause } = energy;
  const offset = setOffLines(energy, gross);
  const names = offset.map((line) => line.id);
  return charges.flatMap((charge): readonly Charge[] => {
    if (charge !== energy) return [creditLine === null ? charge : withLine(charge, id, creditLine)];
    if (creditLine !== null)
      return [{ ...energy, on: gross }, ...offset, sumLine({ id: creditLine, label, clause }, names)];
    const taken: Charge = { ...energy, id: `${id}-taken`, on: gross, rounding: 'none', inTotal: false };
    return [taken, ...offset, sumLine({ id, label, clause }, [taken.id, ...names])];
  });
}

/** C32: slabs are applied to all units imported, and units set off are credited at the rate of the lowest slab. */
export const SLABS_ON_IMPORT: Cause = {
  id: ID,
  name: 'Slabs on gross import',
  stage: 'slabs',
  evidence: [
    'the rule that says whether units are set off before they are priced',
    'the slab lines of the bill',
  ],
  source: 'C32, Why a net-metered bill is wrong, or right but surprising, project reference, 2025',
  variants: (facts, { printed }) => {
    const line = unknownLines(facts, printed).find(({ amount }) => amount.numerator < 0)?.charge ?? null;
    const what =
      'Slabs are applied to all units imported; units set off count at the rate of the lowest slab';
    return tariffVariant(facts, { cause: ID, id: line ?? 'one-line', what }, (document) =>
      changedVersions(document, (charges) => pricedFirst(charges, line)),
    );
  },
};
