import { decimalPlaces, decimalToWhole, exactText, wholeProduct } from '../quantity/index.ts';
import type { Definition } from '../tariff/index.ts';
import { percentOf, thousandths, valueOf } from './operations.ts';
import type { Operand, SettleContext } from './settle-context.ts';
import { SettlementProblem } from './settlement-problem.ts';

/** A netting as a document defines it. */
export type Netting = Definition & { is: 'netting' };

/** A way for units from one of the supply to one of the demand, by place in the two lists. */
export interface Route {
  readonly from: number;
  readonly to: number;
  /** What a unit given is worth, in percent. */
  readonly worth: string;
}

/** Units that went one way: as many were set off, so many of the supply were used. */
export interface Move {
  readonly route: Route;
  readonly setOff: number;
  readonly used: number;
  /** What the supply had, what the demand still lacked and what the limit still allowed before. */
  readonly had: number;
  readonly lacked: number;
  readonly allowed: number;
}

/** The time block of a quantity; empty for none. */
const blockOf = (name: string): string => name.split('@')[1] ?? '';

/** The routes of a netting, in the order in which units go. */
export function routesOf({ supply, demand, routes }: Netting): readonly Route[] {
  if (typeof routes !== 'string') {
    return routes.map(({ from, to, worth = '100' }) => ({
      from: supply.indexOf(from),
      to: demand.indexOf(to),
      worth,
    }));
  }
  const all = demand.flatMap((_, to) => supply.map((__, from) => ({ from, to, worth: '100' })));
  const inside = all.filter(({ from, to }) => blockOf(supply[from] ?? '') === blockOf(demand[to] ?? ''));
  if (routes === 'same-block') return inside;
  return routes === 'any' ? all : [...inside, ...all.filter((route) => !inside.includes(route))];
}

/** Units of the supply in units of the demand. */
function worthOf(units: number, { worth }: Route, netting: Netting): number {
  return worth === '100' ? units : thousandths(percentOf(worth, units), netting.rounding, netting);
}

/** Units of the supply that were used up for units set off: the fewest whole steps that are worth so much. */
function usedFor(setOff: number, had: number, route: Route, netting: Netting): number {
  if (route.worth === '100') return setOff;
  const places = decimalPlaces(route.worth);
  const exact = {
    numerator: wholeProduct(setOff, 100 * 10 ** places),
    denominator: decimalToWhole(route.worth, places),
  };
  const { rounding } = netting;
  const up = rounding === undefined ? undefined : ({ step: rounding.step, mode: 'up' } as const);
  return Math.min(had, thousandths(exact, up, netting));
}

/** The operands of a netting: its supply, its demand and its limit. */
export function partsOf(netting: Netting, operands: readonly Operand[]) {
  const count = netting.supply.length;
  return {
    supply: operands.slice(0, count),
    demand: operands.slice(count, count + netting.demand.length),
    most: netting.most === undefined ? null : (operands.at(-1) ?? null),
  };
}

/** Units to be set off: a quantity that can fall below 0 has no place in a netting. */
function notBelowNothing(name: string | undefined, operand: Operand, context: SettleContext): number {
  const units = valueOf(operand, context);
  if (units >= 0) return units;
  const value = exactText(units, 1000);
  throw new SettlementProblem('settlement/below-nothing', { quantity: name ?? '', value });
}

/**
 * Set supply off against demand, route by route: each takes what is there, up to what is lacking.
 *
 * `supply = used + left` and `demand = set off + left`, whatever the routes.
 */
export function netMoves(
  netting: Netting,
  routes: readonly Route[],
  { operands, context }: { readonly operands: readonly Operand[]; readonly context: SettleContext },
): readonly Move[] {
  const { supply, demand, most } = partsOf(netting, operands);
  const left = supply.map((operand, at) => notBelowNothing(netting.supply[at], operand, context));
  const lacking = demand.map((operand, at) => notBelowNothing(netting.demand[at], operand, context));
  let allowed = most === null ? Infinity : Math.max(0, valueOf(most, context));
  const moves: Move[] = [];
  for (const route of routes) {
    const had = left[route.from] ?? 0;
    const lacked = lacking[route.to] ?? 0;
    const worth = worthOf(had, route, netting);
    const setOff = Math.min(worth, lacked, allowed);
    // Units that are not needed for what was set off stay, also those too few to be worth one.
    const used = usedFor(setOff, had, route, netting);
    moves.push({ route, setOff, used, had, lacked, allowed });
    left[route.from] = had - used;
    lacking[route.to] = lacked - setOff;
    allowed -= setOff;
  }
  return moves;
}
