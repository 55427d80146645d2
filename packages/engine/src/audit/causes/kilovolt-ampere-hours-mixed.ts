import type { Cause, Variant } from '../cause.ts';
import { changedSettlements, tariffVariant } from '../changed-tariff.ts';
import { withUnits, type BillFacts } from '../facts.ts';

const ID = 'kilovolt-ampere-hours-mixed';

/** Measures of apparent energy taken or given, each with the channel that counts the same in kWh. */
function apparentMeasures({ tariff }: BillFacts): readonly (readonly [string, string])[] {
  return Object.entries(tariff.measures ?? {})
    .filter(([name, { unit }]) => unit === 'kVAh' && /^(?:import|export)/.test(name))
    .map(([name]) => [name, name.startsWith('import') ? 'import' : 'export']);
}

/** Units of one kind counted as of the other. */
function countedAs(facts: BillFacts, [measure, channel]: readonly [string, string]): readonly Variant[] {
  const real = facts.units[channel];
  if (real === undefined || real === facts.units[measure]) return [];
  const direction = channel === 'import' ? 'taken' : 'given';
  const what = `Of the units ${direction}, kWh count as if they were kVAh`;
  return [{ id: measure, what, facts: withUnits(facts, { [measure]: real }) }];
}

/** kWh that the rule turns into kVAh by a power factor, taken as they are. */
const withoutPowerFactor = (facts: BillFacts): readonly Variant[] =>
  tariffVariant(
    facts,
    { cause: ID, id: 'power-factor', what: 'Units given count as kVAh without the power factor of the rule' },
    (document) =>
      changedSettlements(document, (rule) => {
        if (rule.scheme === 'unit-netting') return rule;
        const quantities = rule.quantities ?? [];
        const own = quantities.map((one) =>
          one.is === 'quotient' && one.unit === 'kVAh' && one.by !== '1' ? { ...one, by: '1' } : one,
        );
        return own.every((one, at) => one === quantities[at]) ? rule : { ...rule, quantities: own };
      }),
  );

/** kWh and kVAh are set off against each other where the tariff counts kVAh. */
export const KILOVOLT_AMPERE_HOURS_MIXED: Cause = {
  id: ID,
  name: 'kWh taken for kVAh',
  stage: 'netting',
  evidence: [
    'photos of the kWh and the kVAh register of both directions, at both ends',
    'the rule of the tariff that says in what units are counted',
  ],
  source: 'an ombudsman on a solar billing error, Hindustan Times, 2025',
  variants: (facts) => [
    ...apparentMeasures(facts).flatMap((pair) => countedAs(facts, pair)),
    ...withoutPowerFactor(facts),
  ],
};
