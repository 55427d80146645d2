import {
  addQuotients,
  stageAt,
  subtractQuotients,
  type Attribution,
  type BillExplanation,
  type CheckedBill,
  type Quotient,
} from '@unitbook/engine';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkPapers } from './examples.ts';
import { planted } from './planted.ts';

const isSame = (one: Quotient, other: Quotient): boolean =>
  BigInt(one.numerator) * BigInt(other.denominator) === BigInt(other.numerator) * BigInt(one.denominator);

const NONE: Quotient = { numerator: 0, denominator: 1 };

/** A total of the bill that a difference is counted from: the right one, or that of the books. */
function base({ right, carried }: CheckedBill, name: 'sum' | 'payable'): Quotient {
  return (carried ?? right)?.figures.get(name) ?? NONE;
}

/** What is wrong with an attribution; nothing where it adds up. */
function faults(
  bill: CheckedBill,
  { attempt }: BillExplanation,
  { parts, rounding, rest, difference }: Attribution,
): readonly string[] {
  const printed = bill.printed.figures.get('payable') ?? NONE;
  const amounts = parts.map(({ amount }) => amount);
  const added = subtractQuotients(attempt.figures.get('sum') ?? NONE, base(bill, 'sum'));
  const stages = parts.map(({ cause }) => stageAt(cause));
  const checks: Readonly<Record<string, boolean>> = {
    'parts, rounding and rest are not the difference': isSame(
      addQuotients([...amounts, rounding, rest]),
      difference,
    ),
    'the difference is not what is printed less what is right': isSame(
      difference,
      subtractQuotients(printed, base(bill, 'payable')),
    ),
    'the parts are not what the causes add to the sum': isSame(addQuotients([NONE, ...amounts]), added),
    // A cause reproduces what is printed, cut off or rounded to the decimals that are printed.
    'the rest is more than what is printed rounded':
      Math.abs(Number(rest.numerator) / rest.denominator) < 1 / printed.denominator,
    'there is not a part for each cause': parts.length === attempt.steps.length,
    'the parts are not in the order of the stages': stages.every(
      (stage, at) => stage >= (stages[at - 1] ?? 0),
    ),
  };
  return Object.keys(checks).filter((fault) => checks[fault] === false);
}

describe('what a wrong bill comes to, put down to its causes', () => {
  it('sums to the difference exactly', () => {
    let attributed = 0;
    fc.assert(
      fc.property(planted, (one) => {
        fc.pre(one !== null);
        const bills = checkPapers(one.papers, { most: 1200 });
        for (const bill of bills)
          for (const explanation of bill.explanations) {
            if (explanation.attribution === null) continue;
            attributed += 1;
            expect(faults(bill, explanation, explanation.attribution)).toEqual([]);
          }
      }),
      { numRuns: 40 },
    );
    expect(attributed).toBeGreaterThan(0);
  });
});
