import { parseDay, type Period } from '../../quantity/index.ts';
import type { TariffDocument, TariffVersion } from '../../tariff/index.ts';
import type { Cause, Variant } from '../cause.ts';
import { tariffVariant } from '../changed-tariff.ts';
import { versionsDuring } from '../charge-basis.ts';
import type { BillFacts } from '../facts.ts';

const ID = 'rates-out-of-date';

/** One version as if it had always been in force. */
function onlyVersion(document: TariffDocument, version: TariffVersion): TariffDocument {
  const from = document.versions.map((one) => one.from).sort()[0] ?? version.from;
  return { ...document, versions: [{ ...version, from, through: undefined }] };
}

/** Charges of one version for the whole period: of an older order, of a later one, or of one where two share it. */
function byOneVersion(facts: BillFacts): readonly Variant[] {
  const right = versionsDuring(facts);
  return facts.tariff.versions
    .filter((version) => right.length > 1 || version !== right[0])
    .flatMap((version) => {
      const isInForce = right.includes(version);
      const what = isInForce
        ? `The whole period is billed by ${version.name}, which is in force for a part of it`
        : `Billed by ${version.name}, which is not in force in the period`;
      return tariffVariant(facts, { cause: ID, id: `version ${version.from}`, what }, (document) =>
        onlyVersion(document, version),
      );
    });
}

/** Where in a dated price the value stands that a period begins with; -1: nowhere. */
function valueAt(values: readonly { readonly from: string }[], { to }: Period): number {
  return values.findLastIndex(({ from }) => (parseDay(from) ?? to) < to);
}

/** A dated price as it was before its last change. */
function byOldPrices(facts: BillFacts): readonly Variant[] {
  return Object.entries(facts.tariff.prices ?? {}).flatMap(([name, price]) => {
    if (price.is !== 'series') return [];
    const at = valueAt(price.values, facts.period);
    if (at < 1) return [];
    const words = { cause: ID, id: `price ${name} ${price.values[at]?.from ?? ''}` };
    const what = `The price "${name}" is still that of ${price.values[at - 1]?.from ?? ''}`;
    return tariffVariant(facts, { ...words, what }, (document) => ({
      ...document,
      prices: {
        ...document.prices,
        [name]: { ...price, values: price.values.filter((_, index) => index !== at) },
      },
    }));
  });
}

/** C30: rates of an order that is not in force, or a change inside the period that is not shared by days. */
export const RATES_OUT_OF_DATE: Cause = {
  id: ID,
  name: 'Rates of another order',
  stage: 'slabs',
  evidence: [
    'both orders, with the day from which each is in force',
    'the rates beside the lines of the bill',
  ],
  source: 'C30, Why a net-metered bill is wrong, or right but surprising, project reference, 2025',
  variants: (facts) => [...byOneVersion(facts), ...byOldPrices(facts)],
};
