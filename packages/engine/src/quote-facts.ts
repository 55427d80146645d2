import { isDecimalText } from './quantity/index.ts';
import type { Tariff } from './tariff/index.ts';
import type { PreparedQuote } from './quote-prepare.ts';
import {
  isOfUnitsTaken,
  lifePeriods,
  makeLifeUnits,
  rateBeforeRises,
  type FlyerFacts,
  type QuoteInput,
} from './quote/index.ts';

type Charge = Tariff['document']['versions'][number]['charges'][number];

/** The rates that a charge has for units taken, as the tariff writes them. */
function unitRates(charge: Charge): readonly string[] {
  if (!isOfUnitsTaken(charge)) return [];
  switch (charge.kind) {
    case 'per-unit':
      return [charge.rate];
    case 'slabs':
      return charge.slabs.map(({ rate }) => rate);
    case 'slab-tables':
      return charge.tables.flatMap(({ slabs }) => slabs.map(({ rate }) => rate));
  }
}

/** Decimal texts are compared digit by digit. */
function isMore(one: string, other: string): boolean {
  const [[whole = '', decimals = ''], [otherWhole = '', otherDecimals = '']] = [
    one.split('.'),
    other.split('.'),
  ];
  const width = Math.max(whole.length, otherWhole.length);
  const places = Math.max(decimals.length, otherDecimals.length);
  return (
    whole.padStart(width, '0') + decimals.padEnd(places, '0') >
    otherWhole.padStart(width, '0') + otherDecimals.padEnd(places, '0')
  );
}

/** What is in force on a day of the first year. */
function ofFirstYear<Item extends { readonly period: { readonly from: number; readonly to: number } }>(
  input: QuoteInput,
  dated: readonly Item[],
): readonly Item[] {
  const months = lifePeriods({ start: input.start, years: 1 });
  const [from, to] = [months[0]?.from ?? 0, months.at(-1)?.to ?? 0];
  return dated.filter(({ period }) => period.from < to && period.to > from);
}

/** The highest rate of a unit; null where one of them is a price that changes, or there is none. */
function topRate(input: QuoteInput, { versions }: Tariff): string | null {
  const rates = ofFirstYear(input, versions).flatMap(({ item }) => item.charges.flatMap(unitRates));
  if (rates.some((rate) => !isDecimalText(rate))) return null;
  const paid = rates.filter((rate) => !rate.startsWith('-'));
  return paid.reduce<string | null>(
    (most, rate) => (most === null || isMore(rate, most) ? rate : most),
    null,
  );
}

/** What is paid for a unit of surplus; null where it is nothing, a price that changes, or not one rate. */
function surplusRate(input: QuoteInput, { document, settlements }: Tariff): string | null {
  const rates = ofFirstYear(input, settlements).flatMap(({ item }) =>
    item.scheme === 'unit-netting'
      ? [item.close.surplus === 'paid' ? item.close.rate : undefined]
      : (item.ledgers ?? []).flatMap(({ unit, payment }) => (unit === 'money' ? [] : [payment?.rate])),
  );
  const [rate] = rates;
  const plain = rate === undefined ? '' : rateBeforeRises(document, rate);
  return rates.length === 1 && isDecimalText(plain) ? plain : null;
}

/** The bills of a first year in which no unit is taken, made or given; null where they cannot be billed. */
function emptyYear({ input, biller, grid, raises, units }: PreparedQuote): number | null {
  const isBilled = biller.run(makeLifeUnits(input.years * 12, units.width), raises, 'both').length === 0;
  const { before, grid: own } = biller.bills;
  const sum = before.subarray(0, 12).reduce((total, bill) => total + bill, 0) * (grid / own);
  // The bills of the quote itself are made again.
  biller.run(units, raises, 'both');
  return isBilled ? sum : null;
}

/**
 * What a quote does not say of its tariff, for the doubts about it and about a flyer: the bills of a first year
 * without a unit, the highest rate of a unit, what surplus is paid.
 *
 * @param prepared  its bills are made; they are made anew afterwards
 */
export function quoteFacts(prepared: PreparedQuote): FlyerFacts {
  const { input, tariff } = prepared;
  return {
    fixedCharges: emptyYear(prepared),
    topRate: topRate(input, tariff),
    surplusRate: surplusRate(input, tariff),
  };
}
