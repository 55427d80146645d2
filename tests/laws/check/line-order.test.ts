import { exactText, type CheckedBill, type PrintedBillDocument, type Quotient } from '@unitbook/engine';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkPapers, type Papers } from './examples.ts';
import { planted } from './planted.ts';

const text = (value: Quotient | null): string =>
  value === null ? 'none' : exactText(value.numerator, value.denominator);

type Lines = NonNullable<PrintedBillDocument['lines']>;

/** A variant that is named by the lines it adds names them in the order of paper: that one is no result. */
const variantName = (id: string): string => id.split('+').sort().join('+');

/** What a check says, without the order in which the bill prints its lines. */
function said({ verdict, compared, difference, explanations, isExhausted }: CheckedBill) {
  const figures = compared.map(
    ({ name, printed, computed, agrees }) =>
      [name, { printed: text(printed), computed: text(computed), agrees }] as const,
  );
  return {
    verdict,
    difference: text(difference),
    isExhausted,
    compared: Object.fromEntries(figures),
    explanations: explanations.map(({ attempt: { steps }, confidence }) => ({
      causes: steps.map(({ cause, variant }) => `${cause.id} ${variantName(variant.id)}`),
      confidence,
    })),
  };
}

/** Every bill with its lines in the order of some numbers. */
function shuffled(papers: Papers, order: readonly number[]): Papers {
  const rank = (at: number): number => order[at % order.length] ?? 0;
  const documents = papers.documents.map((document) => {
    const lines: Lines = [...(document.lines ?? [])]
      .map((line, at) => ({ line, at: rank(at) }))
      .sort((one, other) => one.at - other.at)
      .map(({ line }) => line);
    return { ...document, lines };
  });
  return { ...papers, documents };
}

describe('the order in which a bill prints its lines', () => {
  it('makes no difference', () => {
    let moved = 0;
    const order = fc.uniqueArray(fc.nat(), { minLength: 24, maxLength: 24 });
    fc.assert(
      fc.property(planted, order, (one, ranks) => {
        fc.pre(one !== null);
        const other = shuffled(one.papers, ranks);
        if (JSON.stringify(other.documents) !== JSON.stringify(one.papers.documents)) moved += 1;
        const options = { most: 600 };
        expect(checkPapers(other, options).map(said)).toEqual(checkPapers(one.papers, options).map(said));
      }),
      { numRuns: 30 },
    );
    expect(moved).toBeGreaterThan(0);
  });
});
