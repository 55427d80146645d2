import type { Charge } from '../../tariff/index.ts';
import type { Cause } from '../cause.ts';
import { changedCharges, changedTariff, chargeIds } from '../changed-tariff.ts';

/** A surcharge for each unit billed, the same for all of them: not the energy charge itself, and no subsidy. */
function isSurcharge(charge: Charge, charges: readonly Charge[]): boolean {
  if (charge.kind !== 'per-unit' || charge.on !== 'billed' || charge.rate.startsWith('-')) return false;
  const first = charges.find(({ kind }) => kind === 'slabs' || kind === 'slab-tables' || kind === 'per-unit');
  return first !== charge;
}

/** C37: a surcharge for each unit billed is taken on all units imported. */
export const SURCHARGE_ON_IMPORT: Cause = {
  id: 'surcharge-on-import',
  name: 'Surcharge on gross import',
  stage: 'charges',
  evidence: [
    'the clause of the surcharge, which says what it is taken on',
    'the notice of the surcharge of the month',
  ],
  variants: (facts) =>
    chargeIds(facts.tariff, isSurcharge).flatMap((id) => {
      const tariff = changedTariff(facts.tariff, `surcharge-on-import ${id}`, (document) =>
        changedCharges(document, (charge) =>
          charge.id === id && charge.kind === 'per-unit' ? { ...charge, on: 'import' } : charge,
        ),
      );
      return tariff === null
        ? []
        : [{ id, what: 'The surcharge is taken on every unit imported', facts: { ...facts, tariff } }];
    }),
};
