import type { Finding } from '../../quantity/index.ts';
import type { TariffDocument } from '../../tariff/index.ts';
import type { PrintedBill } from '../printed.ts';
import { isLineOf, linesInForce } from '../unknown-lines.ts';
import { atBill } from './check.ts';

/**
 * Lines of a bill that its tariff does not have.
 *
 * @returns a finding for each line that no charge in force on its days stands behind
 */
export function unknownLineFindings(bill: PrintedBill, tariff: TariffDocument): readonly Finding[] {
  const known = linesInForce({ tariff, period: bill.period });
  const { lines = [] } = bill.document;
  // Days that no version covers are told of where the bill is made.
  if (known.length === 0) return [];
  return lines.flatMap(({ charge, amount }, at) =>
    isLineOf(charge, known)
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
