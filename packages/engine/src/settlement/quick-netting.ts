import { decimalPlaces, decimalToWhole } from '../quantity/index.ts';
import { restName } from '../tariff/index.ts';
import { routesOf, type Netting, type Route } from './netting.ts';
import { ratioOf, timesRatio, type Ratio } from './quick-ratio.ts';
import type { QuickRun } from './quick-run.ts';
import type { PreparedQuantities, PreparedStep } from './settle-context.ts';

/** A way for units by their places in the vector; ratios where a unit is not worth one. */
interface QuickRoute {
  readonly from: number;
  readonly to: number;
  readonly worth: Ratio | null;
  readonly back: Ratio | null;
}

const roundedUp = (rounding: Netting['rounding']): Netting['rounding'] =>
  rounding === undefined ? undefined : { step: rounding.step, mode: 'up' };

/** Units of the supply in units of the demand, and back. */
function ratiosOf({ worth }: Route, { rounding }: Netting): Pick<QuickRoute, 'worth' | 'back'> {
  if (worth === '100') return { worth: null, back: null };
  const places = decimalPlaces(worth);
  const [whole, hundred] = [decimalToWhole(worth, places), 100 * 10 ** places];
  if (whole <= 0) return { worth: ratioOf(whole, hundred, rounding), back: null };
  return { worth: ratioOf(whole, hundred, rounding), back: ratioOf(hundred, whole, roundedUp(rounding)) };
}

function usedFor(setOff: number, had: number, { worth, back }: QuickRoute): number {
  if (worth === null) return setOff;
  return back === null ? NaN : Math.min(had, timesRatio(setOff, back));
}

/** Set off route by route, in place; the sum set off, or NaN where the long way has to decide. */
function setOffAll(values: Float64Array, routes: readonly QuickRoute[], most: number): number {
  let allowed = most;
  let total = 0;
  for (let at = 0; at < routes.length; at += 1) {
    const route = routes[at] as QuickRoute;
    const { from, to, worth } = route;
    const had = values[from] as number;
    const lacked = values[to] as number;
    const counts = worth === null ? had : timesRatio(had, worth);
    const setOff = Math.min(counts, lacked, allowed);
    const used = setOff === 0 ? 0 : usedFor(setOff, had, route);
    values[from] = had - used;
    values[to] = lacked - setOff;
    allowed -= setOff;
    total += setOff;
  }
  return total;
}

/**
 * A netting on ordinary numbers, in place; null where a quantity stands twice among supply and demand.
 *
 * @param slots  of the supply, the demand and the limit, as the operands are written
 */
export function quickNetting(
  { definition, at }: PreparedStep & { readonly definition: Netting },
  slots: readonly number[],
  { at: places }: PreparedQuantities,
): QuickRun | null {
  const names = [...definition.supply, ...definition.demand];
  if (new Set(names).size !== names.length) return null;
  const rests = names.map((name) => places.get(restName(definition, name)) ?? -1);
  const { length: count } = definition.supply;
  const routes = routesOf(definition).map((route): QuickRoute => ({
    from: rests[route.from] ?? -1,
    to: rests[count + route.to] ?? -1,
    ...ratiosOf(route, definition),
  }));
  const most = definition.most === undefined ? -1 : (slots.at(-1) ?? -1);
  return (values) => {
    for (let index = 0; index < rests.length; index += 1) {
      const units = values[slots[index] as number] as number;
      if (units < 0) return false;
      values[rests[index] as number] = units;
    }
    const total = setOffAll(values, routes, most < 0 ? Infinity : Math.max(0, values[most] as number));
    values[at] = total;
    return !Number.isNaN(total);
  };
}
