import type { Finding } from '../../quantity/index.ts';
import type { TariffDocument } from '../../tariff/index.ts';
import type { PrintedBill } from '../printed.ts';
import { atBill } from './check.ts';

/** Lines that no charge stands behind and that a bill may have all the same: what surplus is paid. */
const OWN_LINES: readonly string[] = ['surplus'];

/** Charges of the versions that are in force on a day of a bill. */
function chargesOf({ versions }: TariffDocument, { document: { from, to } }: PrintedBill): readonly string[] {
  // Days as yyyy-mm-dd are in the order of their texts.
  const inForce = versions.filter(
    (version) => version.from < to && (version.through === undefined || version.through >= from),
  );
  return [...new Set(inForce.flatMap(({ charges }) => charges.map(({ id }) => id)))];
}

/**
 * Lines of a bill that its tariff does not have.
 *
 * @returns a finding for each line that no charge in force on its days stands behind
 */
export function unknownLineFindings(bill: PrintedBill, tariff: TariffDocument): readonly Finding[] {
  const known = chargesOf(tariff, bill);
  const { lines = [] } = bill.document;
  // Days that no version covers are told of where the bill is made.
  if (known.length === 0) return [];
  return lines.flatMap(({ charge, amount }, at) =>
    known.includes(charge) || OWN_LINES.includes(charge)
      ? []
      : [
          atBill(bill, ['lines', at, 'charge'], 'check/unknown-line', {
            charge,
            amount,
            known: known.join(', '),
          }),
        ],
  );
}

/** A bill of another currency than its tariff: no amount of it can be set beside a right one. */
export function otherCurrencyFindings(bill: PrintedBill, { currency }: TariffDocument): readonly Finding[] {
  const printed = bill.document.currency;
  return printed === undefined || printed === currency
    ? []
    : [atBill(bill, ['currency'], 'check/other-currency', { printed, currency })];
}
