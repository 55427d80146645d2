import {
  decimalPlaces,
  decimalToWhole,
  isDecimalText,
  wholeToDecimal,
  type Charge,
  type Tariff,
  type TariffDocument,
} from '@unitbook/engine';

/** A decimal text times another, exact. */
function product(one: string, other: string): string {
  const places = decimalPlaces(one) + decimalPlaces(other);
  const top =
    BigInt(decimalToWhole(one, decimalPlaces(one))) * BigInt(decimalToWhole(other, decimalPlaces(other)));
  return wholeToDecimal(top, places);
}

const RATES = new Set(['rate', 'amount']);

/** Every rate and amount inside a charge times a factor; names of prices stay. */
function timesInside(value: unknown, factor: string): unknown {
  if (Array.isArray(value)) return value.map((one) => timesInside(one, factor));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, one]) =>
      RATES.has(key) && typeof one === 'string' && isDecimalText(one)
        ? [key, product(one, factor)]
        : [key, timesInside(one, factor)],
    ),
  );
}

/** Whether a charge has rates in money that are numbers, and a line that is rounded. */
function canRise(charge: Charge, { rounding }: TariffDocument): boolean {
  if (charge.kind === 'percentage' || charge.kind === 'credit') return false;
  const own = 'rounding' in charge ? charge.rounding : undefined;
  const names = /"(?:rate|amount)":"(?![-\d])/.test(JSON.stringify(charge));
  return (own ?? rounding.line) !== 'none' && !names;
}

/** Charges, by id, that can rise wherever they stand. */
export function risingCharges({ document }: Tariff): readonly string[] {
  const all = document.versions.flatMap(({ charges }) => charges);
  const no = new Set(all.filter((charge) => !canRise(charge, document)).map(({ id }) => id));
  return [...new Set(all.map(({ id }) => id))].filter((id) => !no.has(id));
}

/** The same tariff with the rates of some charges times a factor, written out. */
export function withRates(document: TariffDocument, ids: readonly string[], factor: string): TariffDocument {
  const versions = document.versions.map((version) => ({
    ...version,
    charges: version.charges.map((charge) =>
      ids.includes(charge.id) ? (timesInside(charge, factor) as Charge) : charge,
    ),
  }));
  return { ...document, versions };
}
