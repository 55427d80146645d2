import type { Finding } from '../../quantity/index.ts';
import type { PrintedBill } from '../printed.ts';
import { atBill, figureOf, type ConsistencyCheck } from './check.ts';
import { compare, minus, NONE, ONE, sizeOf, sumOf, textOf, type Exact } from './exact.ts';

/** What stands on a bill besides its lines and is summed with them. */
const BESIDES = ['arrears', 'late-fee', 'adjustment'] as const;

function partsOf(bill: PrintedBill): Exact | null {
  if ((bill.document.lines ?? []).length === 0) return null;
  const names = [...bill.figures.keys()].filter((name) => name.startsWith('line.'));
  return sumOf([...names, ...BESIDES].map((name) => figureOf(bill, name) ?? NONE));
}

function offSum(bill: PrintedBill, parts: Exact, total: Exact): readonly Finding[] {
  if (compare(parts, total) === 0) return [];
  const values = { lines: textOf(parts), sum: textOf(total), difference: textOf(minus(total, parts)) };
  return [atBill(bill, ['sum'], 'check/lines-off-sum', values)];
}

/** What is to be paid beside the sum that it is rounded from. */
function offPayable(bill: PrintedBill, from: Exact, payable: Exact): readonly Finding[] {
  const rounding = figureOf(bill, 'rounding');
  const values = { sum: textOf(from), payable: textOf(payable), rounding: textOf(rounding ?? NONE) };
  if (rounding !== undefined) {
    const isSame = compare(sumOf([from, rounding]), payable) === 0;
    return isSame ? [] : [atBill(bill, ['payable'], 'check/rounding-off-payable', values)];
  }
  // Without a tariff nobody knows how the total is rounded; hardly ever by a whole unit of money or more.
  const isNear = compare(sizeOf(minus(payable, from)), ONE) < 0;
  return isNear ? [] : [atBill(bill, ['payable'], 'check/payable-far-from-sum', values)];
}

/** (10) The lines, with arrears, fees and corrections, come to the sum, and the sum to what is to be paid. */
export const LINES_SUM_TO_TOTAL: ConsistencyCheck = {
  id: 'lines-sum-to-total',
  holds: 'the lines come to the total',
  find: ({ bill }) => {
    const parts = partsOf(bill);
    const [sum, payable] = [figureOf(bill, 'sum'), figureOf(bill, 'payable')];
    const from = sum ?? parts;
    return [
      ...(parts === null || sum === undefined ? [] : offSum(bill, parts, sum)),
      ...(from === null || payable === undefined ? [] : offPayable(bill, from, payable)),
    ];
  },
};
