/** What the float loop of a quote is given: the invented 4 kWp offer. */
export interface FloatQuoteTerms {
  readonly use: readonly number[];
  readonly generation: readonly number[];
  readonly share: number;
  /** A part of one a year. */
  readonly rise: number;
  readonly wear: number;
  readonly load: number;
  readonly years: number;
}

/** Money of each year: before, after, surplus. */
export interface FloatQuoteYears {
  readonly before: Float64Array;
  readonly after: Float64Array;
  readonly surplus: Float64Array;
}

const cents = (value: number): number => Math.floor(value * 100 + 0.5) / 100;

/** One bill of the demo tariff with all rates times a factor, lines rounded as the tariff does. */
function bill(units: number, factor: number, load: number): number {
  let energy = (units > 300 ? units - 300 : 0) * 8;
  energy += (units > 300 ? 150 : units > 150 ? units - 150 : 0) * 6.5;
  energy += (units > 150 ? 100 : units > 50 ? units - 50 : 0) * 4.8;
  energy += (units > 50 ? 50 : units) * 3;
  const charged = cents(energy * factor);
  const fixed = cents(load * 60 * factor);
  const least = cents(Math.max(0, 150 * factor - charged - fixed));
  const fuel = cents(units * 0.4 * factor);
  const tax = cents(charged * 0.06);
  const subsidy = cents((units > 50 ? 50 : units) * 1.5);
  return charged + fixed + least + fuel + tax - subsidy;
}

/** A whole quote in plain floats: 2 × 12 bills a year, netting, settlement each 31 March. */
export function floatQuote(
  { use, generation, share, rise, wear, load, years }: FloatQuoteTerms,
  into: FloatQuoteYears,
): number {
  let factor = 1;
  let left = 1;
  let saved = 0;
  for (let year = 0; year < years; year += 1) {
    let before = 0;
    let after = 0;
    let bank = 0;
    for (let month = 0; month < 12; month += 1) {
      const used = use[month] as number;
      const made = Math.floor((generation[month] as number) * left + 0.5);
      const own = Math.floor(made * share + 0.5);
      const available = made - own + bank;
      const taken = used - own;
      const setOff = available < taken ? available : taken;
      bank = available - setOff;
      before += bill(used, factor, load);
      after += bill(taken - setOff, factor, load);
    }
    into.before[year] = before;
    into.after[year] = after;
    into.surplus[year] = cents(bank * 2.6);
    saved += before - after + (into.surplus[year] as number);
    factor *= 1 + rise;
    left *= 1 - wear;
  }
  return saved;
}
