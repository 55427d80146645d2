import type { Finding } from '../../quantity/index.ts';
import { FIGURE } from '../figure-names.ts';
import type { PrintedBill } from '../printed.ts';
import { atBill, figureOf, type ConsistencyCheck } from './check.ts';
import { compare, textOf } from './exact.ts';
import { sameSerial, serialOf } from './serials.ts';

function offReadings(bill: PrintedBill, before: PrintedBill): readonly Finding[] {
  return Object.keys(bill.document.readings ?? {}).flatMap((register) => {
    const meter = register === 'generation' ? 'generation' : 'grid';
    // Another meter begins with a reading of its own: its number is asked about.
    if (!sameSerial(serialOf(bill, meter), serialOf(before, meter))) return [];
    const opening = figureOf(bill, FIGURE.reading(register, 'previous'));
    const closing = figureOf(before, FIGURE.reading(register, 'present'));
    if (opening === undefined || closing === undefined || compare(opening, closing) === 0) return [];
    const values = { register, opening: textOf(opening), closing: textOf(closing) };
    return [atBill(bill, ['readings', register, 'previous'], 'check/reading-not-handed-on', values)];
  });
}

function offCredit(bill: PrintedBill, before: PrintedBill): readonly Finding[] {
  return Object.keys(bill.document.opening ?? {}).flatMap((ledger) => {
    const opening = figureOf(bill, FIGURE.opening(ledger));
    const closing = figureOf(before, FIGURE.closing(ledger));
    if (opening === undefined || closing === undefined || compare(opening, closing) === 0) return [];
    const values = { ledger, opening: textOf(opening), closing: textOf(closing) };
    return [atBill(bill, ['opening', ledger], 'check/credit-not-handed-on', values)];
  });
}

/** (4) Every register and every ledger begins with what the bill before ended with. */
export const OPENING_IS_LAST_CLOSING: ConsistencyCheck = {
  id: 'opening-is-last-closing',
  holds: 'readings and credit begin with what the bill before ended with',
  find: ({ bill, before }) =>
    // Behind a gap there is a bill that is not known, and it may have ended with anything.
    before === null || before.period.to < bill.period.from
      ? []
      : [...offReadings(bill, before), ...offCredit(bill, before)],
};
