import { type CheckedBill } from '@unitbook/engine';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkPapers, EXAMPLES } from './examples.ts';
import { withCoin, type Coin } from './one-coin.ts';
import { printed, randomPapers, rightBills } from './random-papers.ts';

const PERIODS = 4;

const coin: fc.Arbitrary<Coin> = fc.record({
  line: fc.nat(),
  sign: fc.constantFrom(1 as const, -1 as const),
  places: fc.constantFrom(null, 2, 2, 0, 4),
});

const differing = ({ compared }: CheckedBill): readonly string[] =>
  compared.filter(({ agrees }) => !agrees).map(({ name }) => name);

describe('one coin changed on one printed line of money', () => {
  it('is found on that line, and nowhere else', () => {
    let found = 0;
    const draws = fc.constantFrom(...EXAMPLES).chain((example) => randomPapers(example, PERIODS));
    fc.assert(
      fc.property(draws, fc.nat(PERIODS - 1), coin, (draw, place, one) => {
        const bills = rightBills(draw);
        const papers = printed(draw, bills);
        const at = place % Math.max(1, bills.length);
        const [document, bill] = [papers.documents[at], bills[at]];
        const changed = document === undefined || bill === undefined ? null : withCoin(document, bill, one);
        fc.pre(changed !== null);
        const documents = papers.documents.with(at, changed.document);
        const checked = checkPapers({ ...papers, documents }, { causes: [] });
        expect(checked.map(differing)).toEqual(bills.map((_, own) => (own === at ? [changed.name] : [])));
        const verdicts = checked.map(({ verdict }) => verdict.replace('right-but-surprising', 'right'));
        expect(verdicts).toEqual(bills.map((_, own) => (own === at ? 'wrong' : 'right')));
        found += 1;
      }),
      { numRuns: 300 },
    );
    expect(found).toBeGreaterThan(0);
  });
});
