import { dayText } from '../../quantity/index.ts';
import { exactFigure, compare, NONE, sumOf, textOf } from './exact.ts';
import { atBill, figureOf, type ConsistencyCheck } from './check.ts';

/** What is asked for from bills before stands inside the total: it is no part of this period. */
export const ARREARS_INSIDE: ConsistencyCheck = {
  id: 'arrears-inside',
  holds: 'nothing of bills before stands in the total',
  find: ({ bill, before }) => {
    const [arrears, fee] = [figureOf(bill, 'arrears'), figureOf(bill, 'late-fee')];
    const asked = sumOf([arrears ?? NONE, fee ?? NONE]);
    if (compare(asked, NONE) <= 0) return [];
    const path = [compare(arrears ?? NONE, NONE) === 0 ? 'lateFee' : 'arrears'];
    const paid = before?.paid ?? null;
    const amount = paid === null ? undefined : exactFigure(paid.amount);
    const due = before === null ? undefined : figureOf(before, 'payable');
    const isPaid = amount !== undefined && (due === undefined || compare(amount, due) >= 0);
    if (paid === null || amount === undefined || !isPaid)
      return [atBill(bill, path, 'check/arrears-inside', { arrears: textOf(asked) })];
    const values = { arrears: textOf(asked), paid: textOf(amount), on: dayText(paid.on) };
    return [atBill(bill, path, 'check/arrears-though-paid', values)];
  },
};
