import type { Charge } from '../../tariff/index.ts';
import type { Cause } from '../cause.ts';
import { chargeIds, chargeVariant } from '../changed-tariff.ts';
import { energyCharge, grossOf, isNegative } from '../charge-basis.ts';

const ID = 'surcharge-on-import';

/** A surcharge for each unit that netting left, the same for all of them: not the energy charge, and no subsidy. */
function isSurcharge(charge: Charge, charges: readonly Charge[]): boolean {
  return (
    charge.kind === 'per-unit' &&
    grossOf(charge.on) !== null &&
    !isNegative(charge) &&
    charge !== energyCharge(charges)
  );
}

/** C37: a surcharge for each unit billed is taken on all units imported. */
export const SURCHARGE_ON_IMPORT: Cause = {
  id: ID,
  name: 'Surcharge on gross import',
  stage: 'charges',
  evidence: [
    'the clause of the surcharge, which says what it is taken on',
    'the notice of the surcharge of the month',
  ],
  variants: (facts) =>
    chargeIds(facts.tariff, isSurcharge).flatMap((id) =>
      chargeVariant(
        facts,
        { cause: ID, id, what: 'The surcharge is taken on every unit imported' },
        (charge) =>
          charge.id === id && charge.kind === 'per-unit'
            ? { ...charge, on: grossOf(charge.on) ?? charge.on }
            : charge,
      ),
    ),
};
