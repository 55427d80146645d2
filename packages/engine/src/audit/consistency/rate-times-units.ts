import type { Finding, Path } from '../../quantity/index.ts';
import type { PrintedBill } from '../printed.ts';
import { atBill, type ConsistencyCheck } from './check.ts';
import { compare, exactOf, minus, sizeOf, textOf, times } from './exact.ts';

interface Product {
  readonly what: string;
  readonly units?: string | undefined;
  readonly rate?: string | undefined;
  readonly amount?: string | undefined;
  readonly path: Path;
}

function productsOf({ document }: PrintedBill): readonly Product[] {
  const { lines = [], slabs = [] } = document;
  return [
    ...lines.map((line, at) => ({ ...line, what: line.charge, path: ['lines', at, 'amount'] })),
    ...slabs.map((slab, at) => ({
      ...slab,
      what: `part ${(at + 1).toString()}`,
      path: ['slabs', at, 'amount'],
    })),
  ];
}

function off({ what, units, rate, amount, path }: Product, bill: PrintedBill): readonly Finding[] {
  if (units === undefined || rate === undefined || amount === undefined) return [];
  const product = times(exactOf(units), exactOf(rate));
  const printed = exactOf(amount);
  // However an amount is rounded, it is off by less than one of its last digit.
  const lastDigit = { whole: 1n, places: printed.places };
  if (compare(sizeOf(minus(product, printed)), lastDigit) < 0) return [];
  const values = { what, units, rate, amount, product: textOf(product) };
  return [atBill(bill, path, 'check/rate-off-amount', values)];
}

/** (11) Units times rate are the amount, of every line and of every part of the energy charge. */
export const RATE_TIMES_UNITS: ConsistencyCheck = {
  id: 'rate-times-units',
  holds: 'units times rate are the amount',
  find: ({ bill }) => productsOf(bill).flatMap((product) => off(product, bill)),
};
