import type { Finding } from '../../quantity/index.ts';
import { FIGURE } from '../figure-names.ts';
import type { PrintedBill } from '../printed.ts';
import { atBill, figureOf, type ConsistencyCheck } from './check.ts';
import { compare, minus, NONE, sumOf, textOf, type Exact } from './exact.ts';

function belowZero(bill: PrintedBill): readonly Finding[] {
  return Object.keys(bill.document.closing ?? {}).flatMap((ledger) => {
    const closing = figureOf(bill, FIGURE.closing(ledger));
    if (closing === undefined || compare(closing, NONE) >= 0) return [];
    return [
      atBill(bill, ['closing', ledger], 'check/credit-below-zero', { ledger, closing: textOf(closing) }),
    ];
  });
}

/** What is billed of net units, where the bill does not say. */
const netUnits = (net: Exact): Exact => (compare(net, NONE) < 0 ? NONE : net);

function offCredit(bill: PrintedBill): readonly Finding[] {
  const opening = figureOf(bill, FIGURE.opening('credit'));
  const closing = figureOf(bill, FIGURE.closing('credit'));
  const [taken, given] = [figureOf(bill, FIGURE.units('import')), figureOf(bill, FIGURE.units('export'))];
  if (opening === undefined || closing === undefined || taken === undefined || given === undefined) return [];
  const net = minus(taken, sumOf([given, opening]));
  const billed = figureOf(bill, FIGURE.units('billed')) ?? netUnits(net);
  const gone = minus(minus(billed, net), closing);
  const side = compare(gone, NONE);
  if (side === 0) return [];
  const values = {
    opening: textOf(opening),
    export: textOf(given),
    import: textOf(taken),
    billed: textOf(billed),
    closing: textOf(closing),
    units: textOf(side < 0 ? minus(NONE, gone) : gone),
  };
  const code = side < 0 ? 'check/credit-made-up' : 'check/credit-gone';
  return [atBill(bill, ['closing', 'credit'], code, values)];
}

/**
 * (7) The credit carried forward is what was brought forward and exported, less what was set off: import less what is
 * billed. What is paid out or lapses at a settlement is asked about.
 */
export const CREDIT_ADDS_UP: ConsistencyCheck = {
  id: 'credit-adds-up',
  holds: 'credit carried forward is credit brought forward and exported less what was set off',
  find: ({ bill }) => [...belowZero(bill), ...offCredit(bill)],
};
