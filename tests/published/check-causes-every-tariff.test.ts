import {
  CAUSES,
  readTariff,
  runBill,
  stageAt,
  type BillFacts,
  type Cause,
  type CauseContext,
} from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { BASIS, documentOf, factsOf, TARIFF_TEXTS } from '../support/every-tariff.ts';
import { NOTHING_KNOWN } from './cause-bills.ts';

// Causes inspect the structure of a tariff. Whatever they make of one has to be a tariff again, which bills: else a
// mistake would be passed over in silence wherever a tariff is built otherwise than the one of the examples.

const FROM_TARIFF = CAUSES.filter((cause) => stageAt(cause) > stageAt({ stage: 'readings' }));

/** A bill that shows lines of its own, so that causes have something to solve for. */
const CONTEXT: CauseContext = {
  ...NOTHING_KNOWN,
  printed: new Map([
    ['line.energy', { numerator: 500, denominator: 1 }],
    ['units.billed', { numerator: 100, denominator: 1 }],
    ['line.credit-for-export', { numerator: -87, denominator: 1 }],
  ]),
};

/** Variants of a cause that are no tariff any more, or that cannot be billed although the right bill can. */
function broken(cause: Cause, facts: BillFacts): readonly string[] {
  const isBilled = (own: BillFacts): boolean => runBill(own, BASIS) !== null;
  const canBill = isBilled(facts);
  return cause.variants(facts, CONTEXT).flatMap(({ id, facts: own }) => {
    const name = `${cause.id}: ${id}`;
    const { findings, value } = readTariff(JSON.stringify(own.tariff));
    if (value === null) return [`${name}: ${findings.map(({ code }) => code).join(', ')}`];
    return canBill && !isBilled(own) ? [`${name}: not billed`] : [];
  });
}

describe('causes of netting, credit, slabs, charges and the account', () => {
  it.each(Object.entries(TARIFF_TEXTS))('make a tariff that bills of %s', (_path, text) => {
    const facts = factsOf(documentOf(text));
    expect(FROM_TARIFF.flatMap((cause) => broken(cause, facts))).toEqual([]);
  });

  it('are tried on a right bill of every tariff', () => {
    const without = Object.entries(TARIFF_TEXTS)
      .filter(([, text]) => runBill(factsOf(documentOf(text)), BASIS) === null)
      .map(([path]) => path.split('/').slice(-3, -1).join('/'));
    expect(without).toEqual([]);
  });

  it('are each possible under one of the examples at least', () => {
    const all = Object.values(TARIFF_TEXTS).map((text) => factsOf(documentOf(text)));
    // A wrong category needs a second tariff, several months a longer period; arrears, a bill that shows some.
    const own = ['wrong-category', 'months-billed-as-one', 'arrears-mixed-in'];
    const never = FROM_TARIFF.filter(
      (cause) => !own.includes(cause.id) && all.every((facts) => cause.variants(facts, CONTEXT).length === 0),
    );
    expect(never.map(({ id }) => id)).toEqual([]);
  });
});
