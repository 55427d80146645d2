import type { PreparedQuote } from './quote-prepare.ts';
import {
  batteryOf,
  fillUnits,
  makeLifeUnits,
  onGrid,
  ownUseOf,
  simplePayback,
  type BatteryResult,
  type QuoteYear,
} from './quote/index.ts';

/** Savings of every year as they would be without the battery; null where those bills cannot be made. */
function savingsWithout(prepared: PreparedQuote): readonly number[] | null {
  const { input, biller, raises, grid, units: quoted } = prepared;
  const units = makeLifeUnits(input.years * 12, quoted.width);
  fillUnits(input, ownUseOf({ ...prepared, hasBattery: false }), units);
  const isBilled = biller.run(units, raises, 'with').length === 0;
  const { before, after, surplus, grid: own } = biller.bills;
  const savings = Array.from({ length: input.years }, (_, year) => {
    let saved = 0;
    for (let at = year * 12; at < year * 12 + 12; at += 1)
      saved += (before[at] as number) - (after[at] as number) + (surplus[at] as number);
    return saved * (grid / own);
  });
  // The bills of the quote itself are made again.
  biller.run(quoted, raises, 'with');
  return isBilled ? savings : null;
}

/**
 * What the battery of a quote saves by itself: a second run of all bills without it, so that its payback is not
 * blended with that of the plant.
 *
 * @param years  of the quote with it
 * @returns      null where the quote has no battery, or its units are without one
 */
export function batteryResultOf(prepared: PreparedQuote, years: readonly QuoteYear[]): BatteryResult | null {
  const { input, grid, hasBattery } = prepared;
  const { battery } = input.document;
  if (battery === undefined || !hasBattery) return null;
  const isIdle = batteryOf(input.document) === null;
  const without = isIdle ? years.map(({ saving }) => saving) : savingsWithout(prepared);
  if (without === null) return null;
  const { replacement } = battery;
  const cost = onGrid(battery.cost, grid);
  const again = (year: number): number =>
    replacement !== undefined && Number.parseInt(replacement.year, 10) === year
      ? onGrid(replacement.amount, grid)
      : 0;
  const more = years.map(({ year, saving }) => saving - (without[year - 1] ?? 0));
  const flows = [0 - cost, ...more.map((saving, at) => saving - again(at + 1))];
  const { first, last } = simplePayback(flows);
  return { cost, saving: more[0] ?? 0, payback: first, paybackForGood: last };
}
