import { addQuotients, subtractQuotients, type Quotient, ZERO } from '../quantity/index.ts';
import type { Cause } from './cause.ts';
import { computedOf, type Figures } from './figures.ts';
import type { Attempt, RunFacts } from './search.ts';

/** What one cause adds to the sum of a bill, those before it already applied. */
export interface Part {
  readonly cause: Cause;
  readonly what: string;
  readonly amount: Quotient;
}

/**
 * What is to be paid too much, put down to causes one after the other: parts, rounding and rest sum to the difference
 * exactly.
 */
export interface Attribution {
  /** Printed less right. */
  readonly difference: Quotient;
  readonly parts: readonly Part[];
  /** What rounding of the total adds to that. */
  readonly rounding: Quotient;
  /** What no cause explains: 0 where the causes reproduce what is to be paid. */
  readonly rest: Quotient;
}

const valueOf = (figures: Figures | null, name: string): Quotient =>
  figures === null ? ZERO : (computedOf(figures, name) ?? ZERO);

/**
 * Put a difference down to the causes of an attempt, in the order in which they were applied: readings, netting,
 * credit, slabs, charges, account. Each part is what the sum of the bill changes when that cause comes too.
 *
 * @param payable  as printed
 * @param right    figures of the right bill
 * @param run      makes bills
 */
export function attribute(
  { steps, figures }: Attempt,
  payable: Quotient,
  { right, run }: { readonly right: Figures; readonly run: RunFacts },
): Attribution {
  let before = valueOf(right, 'sum');
  const parts = steps.map(({ cause, variant }): Part => {
    const after = valueOf(run(variant.facts), 'sum');
    const amount = subtractQuotients(after, before);
    before = after;
    return { cause, what: variant.what, amount };
  });
  const sums = addQuotients(parts.map(({ amount }) => amount));
  const explained = subtractQuotients(valueOf(figures, 'payable'), valueOf(right, 'payable'));
  return {
    difference: subtractQuotients(payable, valueOf(right, 'payable')),
    parts,
    rounding: subtractQuotients(explained, sums),
    rest: subtractQuotients(payable, valueOf(figures, 'payable')),
  };
}
