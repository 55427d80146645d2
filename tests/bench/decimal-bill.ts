import { Decimal } from 'decimal.js';

/**
 * The demo tariff and the plain one in decimal.js, the way somebody writes them first: every rate a
 * `new Decimal` of its text, every line rounded with toDecimalPlaces.
 */

const PLAIN_SLABS = [
  ['50', '2.7'],
  ['100', '3.645'],
  ['200', '5.1275'],
  ['300', '6.305'],
  [null, '7.4825'],
] as const;

const DEMO_SLABS = [
  ['50', '3.00'],
  ['150', '4.80'],
  ['300', '6.50'],
  [null, '8.00'],
] as const;

type Slabs = readonly (readonly [string | null, string])[];

const toPaisa = (amount: Decimal): Decimal => amount.toDecimalPlaces(2, Decimal.ROUND_HALF_UP);

function telescopic(units: Decimal, slabs: Slabs): Decimal {
  let below = new Decimal(0);
  let amount = new Decimal(0);
  for (const [limit, rate] of slabs) {
    const upper = limit === null ? units : Decimal.min(units, new Decimal(limit));
    if (upper.greaterThan(below)) amount = amount.plus(upper.minus(below).times(new Decimal(rate)));
    if (limit === null || units.lessThanOrEqualTo(limit)) break;
    below = new Decimal(limit);
  }
  return toPaisa(amount);
}

/** The plain tariff: units and kW as texts in, rounded payable out. */
export function decimalPlainBill(unitsText: string, loadText: string): Decimal {
  const units = new Decimal(unitsText);
  const load = new Decimal(loadText);
  const energy = telescopic(units, PLAIN_SLABS);
  const band = load.lessThanOrEqualTo('2') ? '40' : load.lessThanOrEqualTo('5') ? '75.50' : '110.25';
  const fixed = toPaisa(load.times(new Decimal(band)));
  const fuel = toPaisa(units.times(new Decimal('0.4875')));
  const surchargeA = toPaisa(energy.plus(fixed).times(new Decimal('4.25')).div(100));
  const surchargeB = toPaisa(energy.times(new Decimal('2.7')).div(100));
  const before = energy.plus(fixed).plus(fuel).plus(surchargeA).plus(surchargeB);
  const duty = toPaisa(before.times(new Decimal('15')).div(100));
  return before.plus(duty).toDecimalPlaces(0, Decimal.ROUND_HALF_UP);
}

/** The demo tariff for a month of 27 to 33 days: units and kW as texts in, rounded payable out. */
export function decimalDemoBill(unitsText: string, loadText: string): Decimal {
  const units = new Decimal(unitsText);
  const fixed = toPaisa(new Decimal(loadText).times(new Decimal('60.00')));
  const energy = telescopic(units, DEMO_SLABS);
  const minimum = Decimal.max(0, new Decimal('150').minus(fixed).minus(energy));
  const fuel = toPaisa(units.times(new Decimal('0.40')));
  const tax = toPaisa(energy.times(new Decimal('6')).div(100));
  const subsidy = toPaisa(Decimal.min(units, new Decimal('50')).times(new Decimal('-1.50')));
  const sum = fixed.plus(energy).plus(minimum).plus(fuel).plus(tax).plus(subsidy);
  return sum.toDecimalPlaces(0, Decimal.ROUND_HALF_UP);
}
