import { isSameQuotient } from '../../quantity/index.ts';
import type { PrintedBill } from '../printed.ts';
import { atBill, type ConsistencyCheck } from './check.ts';

/** Whether two bills print the same figures for the same days. */
function isSamePaper(bill: PrintedBill, before: PrintedBill): boolean {
  if (bill.period.from !== before.period.from || bill.period.to !== before.period.to) return false;
  if (bill.figures.size !== before.figures.size) return false;
  return [...bill.figures].every(([name, value]) => {
    const other = before.figures.get(name);
    return other !== undefined && isSameQuotient(value, other);
  });
}

/** A bill is not the one before once more. */
export const SAME_BILL_TWICE: ConsistencyCheck = {
  id: 'same-bill-twice',
  holds: 'no bill stands there twice',
  find: ({ bill, before }) => {
    if (before === null) return [];
    const { number, from, to } = bill.document;
    const isSameNumber = number !== undefined && number !== '' && number === before.document.number;
    if (!isSameNumber && !isSamePaper(bill, before)) return [];
    const values = { number: number ?? '', from, to };
    return [atBill(bill, [isSameNumber ? 'number' : 'from'], 'check/bill-twice', values)];
  },
};
