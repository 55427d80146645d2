import type { Period } from '../../quantity/index.ts';
import { inForceDuring, type Charge, type TariffDocument } from '../../tariff/index.ts';
import { periodOfDated } from './dispute-days.ts';

/** Something dated that is in force on some day of a period, with the first day it is. */
interface Dated {
  readonly from: string;
  readonly through?: string | undefined;
}

/**
 * Those of dated things that are in force on any day of a period, in order of time.
 *
 * @param items  as a document lists them
 */
export function inForceIn<Item extends Dated>(items: readonly Item[], period: Period): readonly Item[] {
  const entries = items.flatMap((item) => {
    const own = periodOfDated(item);
    return own === null ? [] : [{ item, period: own }];
  });
  return inForceDuring(entries, period).map(({ item }) => item);
}

/** A charge of a tariff in force in a period, by its id; the version that it stands in. */
export function chargeIn(
  { versions }: Pick<TariffDocument, 'versions'>,
  id: string,
  period: Period,
): { readonly charge: Charge; readonly from: string } | null {
  for (const { charges, from } of inForceIn(versions, period)) {
    const charge = charges.find((one) => one.id === id);
    if (charge !== undefined) return { charge, from };
  }
  return null;
}
