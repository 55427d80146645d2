import { Decimal } from 'decimal.js';

const Exact = Decimal.clone({ precision: 60, toExpPos: 60, toExpNeg: -60 });

/** A slab table as the tariff document writes it. */
export type SlabRows = readonly { readonly upTo?: string | undefined; readonly rate: string }[];

/** The part of a period that one table is in force for. */
export interface ChargedPart {
  readonly slabs: SlabRows;
  readonly days: number;
}

/** Days that are not scaled: the demo tariff's clause 4.3. */
const isMonth = (days: number): boolean => days >= 27 && days <= 33;

/** Charge the units of one part, one after the other; everything is counted in 1/(30 x days) of a unit. */
function chargePart(billed: string, part: ChargedPart, allDays: number): Decimal {
  const unit = new Exact(30).times(allDays);
  const scale = isMonth(part.days) ? unit : new Exact(part.days).times(allDays);
  const rows = part.slabs.map(({ upTo, rate }) => ({
    limit: upTo === undefined ? new Exact(Infinity) : scale.times(upTo),
    rate,
  }));
  const end = new Exact(billed).times(part.days).times(30);
  let amount = new Exact(0);
  for (let from = new Exact(0); from.lessThan(end); from = from.plus(unit)) {
    const to = Decimal.min(from.plus(unit), end);
    let below = new Exact(0);
    for (const { limit, rate } of rows) {
      const inSlab = Decimal.min(to, limit).minus(Decimal.max(from, below));
      if (inSlab.greaterThan(0)) amount = amount.plus(inSlab.times(rate));
      below = limit;
    }
  }
  return amount.div(unit);
}

/**
 * The energy charge of a telescopic tariff by a loop that charges unit by unit, in decimals: the naive twin
 * of the engine's, which shares no code with it. Each part of a period is charged on its share of days and
 * rounded half-up to 0.01.
 *
 * @param billed  units, as text
 * @param parts   of the period, in order
 * @returns       one amount for each part, as text
 */
export function chargeOneByOne(billed: string, parts: readonly ChargedPart[]): readonly string[] {
  const allDays = parts.reduce((sum, part) => sum + part.days, 0);
  return parts.map((part) =>
    chargePart(billed, part, allDays).toDecimalPlaces(2, Decimal.ROUND_HALF_UP).toFixed(2),
  );
}
