import type { Finding } from '../../quantity/index.ts';
import { atBill, type ConsistencyCheck, type ConsistencyTerms } from './check.ts';
import { ownSerials, sameSerial, serialOf, type MeterName } from './serials.ts';

const METERS: readonly MeterName[] = ['grid', 'generation'];

function changed(terms: ConsistencyTerms, meter: MeterName): readonly Finding[] {
  const { bill, before } = terms;
  const printed = serialOf(bill, meter);
  if (printed === undefined) return [];
  const own = ownSerials(terms.account, meter);
  const path = ['serials', meter];
  if (own.length > 0) {
    if (own.some((serial) => sameSerial(serial, printed))) return [];
    return [atBill(bill, path, 'check/other-meter', { meter, printed, own: own.join(', ') })];
  }
  const earlier = before === null ? undefined : serialOf(before, meter);
  if (earlier === undefined || sameSerial(earlier, printed)) return [];
  return [atBill(bill, path, 'check/serial-changed', { meter, printed, before: earlier })];
}

/** (12) The numbers of the meters are those of the account, or else those of the bill before. */
export const SERIAL_UNCHANGED: ConsistencyCheck = {
  id: 'serial-unchanged',
  holds: 'the numbers of the meters stay the same',
  find: (terms) => METERS.flatMap((meter) => changed(terms, meter)),
};
