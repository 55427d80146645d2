import type { Cause, Variant } from '../cause.ts';
import { chargeVariant } from '../changed-tariff.ts';
import type { BillFacts } from '../facts.ts';

const ID = 'fixed-on-plant-capacity';
const LOAD = 'sanctioned-load';
const PLANT = 'plant-capacity';

/** Charges that go by one power, taken by another. */
function byOther(facts: BillFacts, from: string, to: string, what: string): readonly Variant[] {
  if (facts.powers[to] === undefined || facts.powers[from] === facts.powers[to]) return [];
  return chargeVariant(facts, { cause: ID, id: to, what }, (charge) => {
    if (charge.kind === 'per-kilowatt' && charge.on === from) return { ...charge, on: to };
    return charge.kind === 'fixed' && charge.chosenBy === from ? { ...charge, chosenBy: to } : charge;
  });
}

/** C33: a charge for sanctioned load is taken on the capacity of the plant, or the reverse. */
export const FIXED_ON_PLANT_CAPACITY: Cause = {
  id: ID,
  name: 'Fixed charge on plant capacity',
  stage: 'charges',
  evidence: ['the sanction letter, which names the load', 'the clause of the fixed charge'],
  source: 'C33, Why a net-metered bill is wrong, or right but surprising, project reference, 2025',
  variants: (facts) => [
    ...byOther(facts, LOAD, PLANT, 'Charges for sanctioned load are taken on the capacity of the plant'),
    ...byOther(facts, PLANT, LOAD, 'Charges for the capacity of the plant are taken on sanctioned load'),
  ],
};
