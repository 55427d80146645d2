import { decimalPlaces, decimalToWhole, isDecimalText } from '../quantity/index.ts';
import {
  givenQuantities,
  operandsOf,
  quantityUnits,
  restName,
  type Definition,
  type LedgersRule,
  type TariffDocument,
} from '../tariff/index.ts';
import { netMoves, routesOf, type Netting } from './netting.ts';
import { resultOf } from './operations.ts';
import { quantityKinds } from './quantity-figures.ts';
import type { Operand, PreparedQuantities, PreparedStep, SettleContext } from './settle-context.ts';

type Places = ReadonlyMap<string, number>;

function operandAt(text: string, at: Places): Operand {
  if (!isDecimalText(text)) return { at: at.get(text) ?? -1, whole: 0, scale: 1, text };
  const places = Math.max(3, decimalPlaces(text));
  return { at: -1, whole: decimalToWhole(text, places), scale: 10 ** places, text };
}

/** A netting leaves its results in several places: what was set off, and what is left of each. */
function runNetting(netting: Netting, operands: readonly Operand[], at: Places): PreparedStep['run'] {
  const routes = routesOf(netting);
  const place = at.get(netting.id) ?? -1;
  const rests = [...netting.supply, ...netting.demand].map((name) => at.get(restName(netting, name)) ?? -1);
  const count = netting.supply.length;
  return (context: SettleContext): void => {
    const { values } = context;
    const moves = netMoves(netting, routes, { operands, context });
    rests.forEach((rest, index) => {
      values[rest] = values[operands[index]?.at ?? -1] as number;
    });
    let total = 0;
    for (const { route, setOff, used } of moves) {
      total += setOff;
      const from = rests[route.from] as number;
      const to = rests[count + route.to] as number;
      values[from] = (values[from] as number) - used;
      values[to] = (values[to] as number) - setOff;
    }
    values[place] = total;
  };
}

function prepareStep(definition: Definition, places: Places): PreparedStep {
  const operands = operandsOf(definition).map((text) => operandAt(text, places));
  const at = places.get(definition.id) ?? -1;
  const run =
    definition.is === 'netting'
      ? runNetting(definition, operands, places)
      : (context: SettleContext): void => {
          context.values[at] = resultOf(definition, operands, context);
        };
  return { definition, operands, at, run };
}

/** Given quantities that something is worked out from, or a ledger takes in or pays up to. */
function neededPlaces(rule: LedgersRule, charged: ReadonlySet<string>, places: Places): readonly number[] {
  const names = new Set(charged);
  for (const definition of rule.quantities ?? []) for (const name of operandsOf(definition)) names.add(name);
  for (const { adds, keeps, payment } of rule.ledgers ?? []) {
    for (const name of [adds, keeps, payment?.most]) if (name !== undefined) names.add(name);
  }
  return [...names].flatMap((name) => places.get(name) ?? []);
}

/**
 * Bring the quantities of a settlement rule into normal form, once for any number of periods.
 *
 * @param document  the tariff it stands in
 * @param rule      of scheme `ledgers`
 * @param charged   names that charges of the document use
 */
export function prepareQuantities(
  document: TariffDocument,
  rule: LedgersRule,
  charged: ReadonlySet<string>,
): PreparedQuantities {
  const known = quantityUnits(document, rule);
  const names = [...known.keys()];
  const at = new Map(names.map((name, index) => [name, index]));
  const steps = (rule.quantities ?? []).map((definition) => prepareStep(definition, at));
  const given = new Set(givenQuantities(document, rule).keys());
  const madeBy = names.map((name): PreparedStep | null => {
    if (given.has(name)) return null;
    const own = steps.find(({ definition }) => definition.id === name);
    return own ?? steps.find(({ definition }) => name.startsWith(`${definition.id}.`)) ?? null;
  });
  const needed = neededPlaces(rule, charged, at).filter((place) => madeBy[place] === null);
  const named = [...known.values()];
  const kinds = quantityKinds(names, named, madeBy);
  return { names, named, at, steps, madeBy, kinds, needed };
}
