import type { Charge } from '../../tariff/index.ts';
import type { Cause } from '../cause.ts';
import { chargeVariant } from '../changed-tariff.ts';
import { energyCharge } from '../charge-basis.ts';

const ID = 'fixed-by-other-units';

const TAKEN: Readonly<Record<string, string>> = {
  import: 'all units imported',
  'total-use': 'total use, with what was used straight from the roof',
  billed: 'units billed',
};

/** Units that choose a fixed charge, or a rate per kW; null: nothing of the kind does. */
function chooserOf(charge: Charge): string | null {
  if (charge.kind !== 'fixed' && charge.kind !== 'per-kilowatt') return null;
  const { chosenBy } = charge;
  return chosenBy !== undefined && (chosenBy in TAKEN || chosenBy.includes('.')) ? chosenBy : null;
}

/** C34: the step of a fixed charge is chosen by other units than the rule says, such as total use. */
export const FIXED_BY_OTHER_UNITS: Cause = {
  id: ID,
  name: 'Fixed charge by other units',
  stage: 'charges',
  evidence: [
    'the clause that says by which units the fixed charge is chosen',
    'the fixed charge of two months in which the plant made different amounts',
  ],
  source: 'C34, Why a net-metered bill is wrong, or right but surprising, project reference, 2025',
  variants: (facts) =>
    Object.entries(TAKEN).flatMap(([name, words]) =>
      chargeVariant(
        facts,
        { cause: ID, id: name, what: `The fixed charge is chosen by ${words}` },
        (charge, charges) => {
          // Units billed go by the name of what netting left; without netting there are none apart from import.
          const own = name === 'billed' ? energyCharge(charges)?.on : name;
          const chooser = chooserOf(charge);
          if (chooser === null || own === undefined || chooser === own) return charge;
          return { ...charge, chosenBy: own } as Charge;
        },
      ),
    ),
};
