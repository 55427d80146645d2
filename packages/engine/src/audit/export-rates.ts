import { decimalPlaces, decimalToWhole, exactText, isDecimalText } from '../quantity/index.ts';
import type { Charge, SettlementRule, TariffDocument } from '../tariff/index.ts';

/** A rate, or every number that a dated price of that name ever was. */
function numbersOf(rate: string | undefined, { prices = {} }: TariffDocument): readonly string[] {
  if (rate === undefined) return [];
  if (isDecimalText(rate)) return [rate.replace('-', '')];
  const price = prices[rate];
  return price?.is === 'series' ? price.values.map((value) => value.rate) : [];
}

/** A number without zeros at its end, so that the same rate of two tariffs is one. */
function plain(rate: string): string {
  const places = decimalPlaces(rate);
  return exactText(decimalToWhole(rate, places), 10 ** places);
}

function settlementRates(rule: SettlementRule): readonly (string | undefined)[] {
  return rule.scheme === 'unit-netting'
    ? [rule.close.rate]
    : (rule.ledgers ?? []).map(({ payment }) => payment?.rate);
}

const ofUnitsGiven = (charge: Charge): string | undefined =>
  charge.kind === 'per-unit' && /^(?:export|generation)/.test(charge.on) ? charge.rate : undefined;

/**
 * Every rate at which some tariffs pay, or ever paid, for units given or made, each once, without sign and without zeros at the end: rates that
 * someone who takes the wrong one may take.
 */
export function exportRates(documents: readonly TariffDocument[]): readonly string[] {
  const rates = documents.flatMap((document) => [
    ...document.settlements.flatMap(settlementRates).flatMap((rate) => numbersOf(rate, document)),
    ...document.versions.flatMap(({ charges }) =>
      charges.flatMap((charge) => numbersOf(ofUnitsGiven(charge), document)),
    ),
  ]);
  return [...new Set(rates.map(plain))];
}

/** The settlement rules of a tariff pay for what is left over. */
export const paysSurplus = (rule: SettlementRule): boolean =>
  rule.scheme === 'unit-netting'
    ? rule.close.surplus === 'paid'
    : (rule.ledgers ?? []).some(({ close, unit }) => close?.surplus === 'paid' && unit !== 'money');

/** The bill in which the settlement rules of a tariff pay: "same", "next", or both. */
export function paidInBill({ settlements }: TariffDocument): ReadonlySet<'same' | 'next'> {
  const bills = settlements
    .filter(paysSurplus)
    .flatMap((rule) =>
      rule.scheme === 'unit-netting'
        ? [rule.close.inBill]
        : (rule.ledgers ?? []).map(({ payment }) => payment?.inBill),
    );
  return new Set(bills.filter((bill) => bill !== undefined));
}
