import { isDecimalText } from '../quantity/index.ts';
import type { Definition, QuantityUnit } from './quantity-schema.ts';
import type { SettlementRule, TariffDocument } from './schema.ts';

/** What is known of a quantity before there is any: its unit and what it is called. */
export interface NamedQuantity {
  readonly unit: QuantityUnit;
  readonly label: string;
}

/** The channels that meters record, and what follows from them: each also in every time block. */
const CHANNELS: Readonly<Record<string, string>> = {
  import: 'Units taken from the grid',
  export: 'Units given to the grid',
  generation: 'Units the plant made',
  'self-consumption': 'Units used straight from the roof',
  'total-use': 'Units the house used',
};

const POWERS: Readonly<Record<string, string>> = {
  'sanctioned-load': 'Sanctioned load',
  'plant-capacity': 'Plant capacity',
};

type Known = Map<string, NamedQuantity>;

/** The unit of the first operand that is a quantity; of numbers alone, units of energy. */
function unitOfFirst(operands: readonly string[], known: Known): QuantityUnit {
  const named = operands.find((operand) => !isDecimalText(operand));
  return (named === undefined ? undefined : known.get(named)?.unit) ?? 'kWh';
}

/** The operands of a definition, in the order in which they are written. */
export function operandsOf(definition: Definition): readonly string[] {
  switch (definition.is) {
    case 'quotient':
      return [definition.of, definition.by];
    case 'part':
      return [definition.of, definition.above, definition.upTo].filter((operand) => operand !== undefined);
    case 'choice':
      return [...definition.steps.map(({ take }) => take), definition.by];
    case 'running-total':
    case 'mean':
    case 'days-share':
      return [definition.of];
    case 'netting': {
      const most = definition.most === undefined ? [] : [definition.most];
      return [...definition.supply, ...definition.demand, ...most];
    }
    default:
      return definition.of;
  }
}

/** What a netting leaves of one of its supply or demand: a quantity of this name. */
export function restName(netting: { readonly id: string }, name: string): string {
  return `${netting.id}.${name}`;
}

/** The quantities that one definition makes. */
export function madeBy(definition: Definition, known: Known): readonly (readonly [string, NamedQuantity])[] {
  const operands =
    definition.is === 'choice' ? definition.steps.map(({ take }) => take) : operandsOf(definition);
  const unit = definition.unit ?? unitOfFirst(operands, known);
  const own = [definition.id, { unit, label: definition.label }] as const;
  if (definition.is !== 'netting') return [own];
  const rests = [...definition.supply, ...definition.demand].map((name) => {
    const label = `${known.get(name)?.label ?? name}, left by: ${definition.label}`;
    return [restName(definition, name), { unit, label }] as const;
  });
  return [own, ...rests];
}

/** The quantities that every tariff with these time blocks knows. */
function commonQuantities({ timeBlocks }: Pick<TariffDocument, 'timeBlocks'>): Known {
  const known: Known = new Map();
  for (const [name, label] of Object.entries(CHANNELS)) known.set(name, { unit: 'kWh', label });
  for (const [name, label] of Object.entries(POWERS)) known.set(name, { unit: 'kW', label });
  known.set('shared', { unit: 'kWh', label: 'Units shared out to this account' });
  for (const { id, label } of timeBlocks?.blocks ?? []) {
    for (const [name, words] of Object.entries(CHANNELS)) {
      known.set(`${name}@${id}`, { unit: 'kWh', label: `${words}, ${label}` });
    }
  }
  return known;
}

/** Names that are taken before a document gives any: of quantities, and of what is always worked out. */
export function takenNames(document: Pick<TariffDocument, 'timeBlocks'>): ReadonlySet<string> {
  return new Set([...commonQuantities(document).keys(), 'days', 'billed']);
}

/** The quantities that an account or a period can give: none of those that are worked out. */
export function quantitiesToGive(document: TariffDocument): ReadonlyMap<string, NamedQuantity> {
  const known = commonQuantities(document);
  for (const [name, { unit, label }] of Object.entries(document.measures ?? {}))
    known.set(name, { unit, label });
  return known;
}

/** The quantities that are there before anything is worked out. */
export function givenQuantities(document: TariffDocument, rule: SettlementRule): Known {
  const known: Known = new Map(quantitiesToGive(document));
  known.set('days', { unit: 'count', label: 'Days of the period' });
  if (rule.scheme === 'unit-netting') {
    known.set('billed', { unit: 'kWh', label: 'Units billed' });
    return known;
  }
  for (const { id, label, unit } of rule.ledgers ?? []) {
    if (unit !== 'money') known.set(id, { unit, label: `${label}, brought forward` });
  }
  return known;
}

/**
 * Every quantity that a settlement rule gives to the charges, by name.
 *
 * @example
 * quantityUnits({ measures: {} }, { scheme: 'unit-netting' }).get('billed').unit //=> "kWh"
 */
export function quantityUnits(
  document: TariffDocument,
  rule: SettlementRule,
): ReadonlyMap<string, NamedQuantity> {
  const known = givenQuantities(document, rule);
  if (rule.scheme === 'unit-netting') return known;
  for (const definition of rule.quantities ?? []) {
    for (const [name, quantity] of madeBy(definition, known)) known.set(name, quantity);
  }
  return known;
}
