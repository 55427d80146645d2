import {
  CAUSES,
  isSameQuotient,
  runBill,
  type BillFacts,
  type Figures,
  type TariffDocument,
} from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { checkBill, type BillTerms, type CheckedBill } from '../../packages/engine/src/check-bill.ts';
import { QuickPayable } from '../../packages/engine/src/check-quick-payable.ts';
import tariffText from '../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';
import { randomTariff } from '../laws/random-tariff.ts';
import { FROM_NOTHING, NOTHING_KNOWN } from '../published/cause-bills.ts';
import { BASIS, documentOf, factsOf, TARIFF_TEXTS } from '../support/every-tariff.ts';
import { makeRandom } from '../support/random.ts';

/** Facts as every mistake changes them, alone. */
const mistaken = (facts: BillFacts): readonly BillFacts[] =>
  CAUSES.flatMap((cause) => cause.variants(facts, NOTHING_KNOWN).map((variant) => variant.facts));

/** How many of some facts are told quickly, and those that are told otherwise than their bill. */
function toldOf(all: readonly BillFacts[], basis = BASIS) {
  const quick = new QuickPayable(basis.account);
  let told = 0;
  const wrong: string[] = [];
  for (const facts of all) {
    // The first time a tariff is seen, nothing is told.
    quick.of(facts, basis.carried);
    const own = quick.of(facts, basis.carried);
    if (own === null) continue;
    told += 1;
    const bill = runBill(facts, basis)?.figures.get('payable');
    if (bill === undefined || !isSameQuotient(bill, own))
      wrong.push(`${String(own.numerator)}/${String(own.denominator)}`);
  }
  return { told, wrong };
}

const base = factsOf(documentOf(tariffText));

describe('what is to be paid, told without a bill', () => {
  it('is what the bill says, of every mistake under every example tariff', () => {
    let [all, quick] = [0, 0];
    for (const text of Object.values(TARIFF_TEXTS)) {
      const facts = mistaken(factsOf(documentOf(text)));
      const { told, wrong } = toldOf(facts);
      expect(wrong).toEqual([]);
      all += facts.length;
      quick += told;
    }
    expect([all > 2000, quick > 100]).toEqual([true, true]);
  });

  it('is what the bill says under random tariffs', () => {
    const random = makeRandom(20_262);
    let quick = 0;
    for (let round = 0; round < 60; round += 1) {
      const tariff: TariffDocument = randomTariff(random, random.chance(20));
      const units = { import: random.below(900_000), export: random.below(900_000) };
      const opening = { credit: random.below(300_000) };
      const facts = { ...base, tariff, units, opening };
      const { told, wrong } = toldOf([facts, ...mistaken(facts)], FROM_NOTHING);
      expect(wrong).toEqual([]);
      quick += told;
    }
    expect(quick).toBeGreaterThan(150);
  });

  it('is not told of what plain arithmetic does not hold', () => {
    const amount = { numerator: 5, denominator: 1 };
    const { told } = toldOf([
      { ...base, accountLines: [{ id: 'arrears', label: 'Arrears', amount }] },
      { ...base, surplus: { kind: 'not-paid' } },
      { ...base, shown: { payable: amount } },
      { ...base, opening: { other: 5000 } },
      { ...base, opening: { credit: -5000 } },
      { ...base, units: { ...base.units, import: 0.5 } },
      // 2 taken in the day and 3 at night are no 412.
      { ...base, units: { ...base.units, 'total-use': 1 } },
    ]);
    expect(told).toBe(0);
    expect(toldOf([base]).told).toBe(1);
  });
});

/** What is said of a bill, as far as it hangs on the search. */
function said({ verdict, explanations, nearest, deciders, isExhausted, carried }: CheckedBill): object {
  const names = (attempt: CheckedBill['nearest'][number]): object => ({
    steps: attempt.steps.map(({ cause, variant }) => `${cause.id}: ${variant.id}`),
    missed: attempt.missed,
    reproduced: attempt.reproduced,
  });
  const all = explanations.map(({ attempt, confidence }) => ({ ...names(attempt), confidence }));
  const near = nearest.map(names);
  return { verdict, all, near, deciders: deciders.map(({ figure }) => figure), isExhausted, carried };
}

describe('a search that is spared bills', () => {
  const basis = FROM_NOTHING;
  const NAMES = /^(?:line\.|units\.billed$|opening\.|sum$|rounding$|payable$)/;
  const quick = new QuickPayable(basis.account);
  const check = (figures: Figures, isQuick: boolean, most?: number): object => {
    const printed = new Map([...figures].filter(([name]) => NAMES.test(name)));
    const terms: BillTerms = {
      printed: {
        document: { from: '', to: '' },
        period: base.period,
        figures: printed,
        status: null,
        paid: null,
        path: [],
      },
      facts: base,
      sources: {},
      basis,
      context: { ...NOTHING_KNOWN, printed },
      asCarried: null,
      alternatives: [],
      ...(isQuick && { quick: (facts) => quick.of(facts, basis.carried) }),
    };
    return said(checkBill(terms, most === undefined ? {} : { most }));
  };
  const figuresOf = (facts: BillFacts): Figures => runBill(facts, basis)?.figures ?? new Map();

  it('finds the same for every mistake alone', () => {
    for (const facts of mistaken(base))
      expect(check(figuresOf(facts), true)).toEqual(check(figuresOf(facts), false));
  });

  it('finds the same for pairs, for what nothing explains, and where it is cut short', () => {
    const random = makeRandom(11);
    const singles = mistaken(base);
    for (let round = 0; round < 12; round += 1) {
      const facts = random.pick(mistaken(random.pick(singles)));
      const payable = { numerator: 98_765 + round, denominator: 100 };
      const figures =
        round % 3 === 0 ? new Map([...figuresOf(facts), ['payable', payable]]) : figuresOf(facts);
      for (const most of [undefined, 30, 200])
        expect(check(figures, true, most)).toEqual(check(figures, false, most));
    }
  });
});
