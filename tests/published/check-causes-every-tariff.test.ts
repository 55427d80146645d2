import {
  addDays,
  CAUSES,
  parseDay,
  readTariff,
  runBill,
  stageAt,
  type BillFacts,
  type Cause,
  type CauseContext,
  type DayNumber,
  type TariffDocument,
} from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { FROM_NOTHING, NOTHING_KNOWN } from './cause-bills.ts';

// Causes inspect the structure of a tariff. Whatever they make of one has to be a tariff again, which bills: else a
// mistake would be passed over in silence wherever a tariff is built otherwise than the one of the examples.

const TARIFFS = import.meta.glob<string>('../../tariffs-examples/*/*/tariff.json', {
  query: '?raw',
  import: 'default',
  eager: true,
});

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

/** 412 taken, 278 given and 580 made in 38 days, shared among time blocks; 35 in every ledger. */
function factsOf(document: TariffDocument): BillFacts {
  const blocks = (document.timeBlocks?.blocks ?? []).map(({ id }) => id);
  const units: Record<string, number> = { import: 412_000, export: 278_000, generation: 580_000 };
  blocks.forEach((block, at) => {
    const others = blocks.length - 1;
    units[`import@${block}`] = at === 0 ? 412_000 - 100_000 * others : 100_000;
    units[`export@${block}`] = at === 0 ? 278_000 - 50_000 * others : 50_000;
  });
  for (const measure of Object.keys(document.measures ?? {})) units[measure] = 100_000;
  const ledgers = document.settlements.flatMap((rule) =>
    rule.scheme === 'unit-netting' ? ['credit'] : (rule.ledgers ?? []).map(({ id }) => id),
  );
  const begin = parseDay(document.versions.at(-1)?.from ?? '') as DayNumber;
  return {
    tariff: document,
    period: { from: addDays(begin, 60), to: addDays(begin, 98) },
    registers: {},
    units,
    powers: { 'sanctioned-load': 4000, 'plant-capacity': 5000 },
    opening: Object.fromEntries(ledgers.map((id) => [id, 35_000])),
    surplus: { kind: 'as-due' },
    accountLines: [],
    shown: {},
  };
}

function documentOf(text: string): TariffDocument {
  const { value } = readTariff(text);
  if (value === null) throw new Error('an example tariff cannot be read');
  return value.document;
}

/** Variants of a cause that are no tariff any more, or that cannot be billed although the right bill can. */
function broken(cause: Cause, facts: BillFacts): readonly string[] {
  const isBilled = (own: BillFacts): boolean => runBill(own, FROM_NOTHING) !== null;
  const canBill = isBilled(facts);
  return cause.variants(facts, CONTEXT).flatMap(({ id, facts: own }) => {
    const name = `${cause.id}: ${id}`;
    const { findings, value } = readTariff(JSON.stringify(own.tariff));
    if (value === null) return [`${name}: ${findings.map(({ code }) => code).join(', ')}`];
    return canBill && !isBilled(own) ? [`${name}: not billed`] : [];
  });
}

describe('causes of netting, credit, slabs, charges and the account', () => {
  it.each(Object.entries(TARIFFS))('make a tariff that bills of %s', (_path, text) => {
    const facts = factsOf(documentOf(text));
    expect(FROM_TARIFF.flatMap((cause) => broken(cause, facts))).toEqual([]);
  });

  it('are each possible under one of the examples at least', () => {
    const all = Object.values(TARIFFS).map((text) => factsOf(documentOf(text)));
    // A wrong category needs a second tariff, several months a longer period; arrears, a bill that shows some.
    const own = ['wrong-category', 'months-billed-as-one', 'arrears-mixed-in'];
    const never = FROM_TARIFF.filter(
      (cause) => !own.includes(cause.id) && all.every((facts) => cause.variants(facts, CONTEXT).length === 0),
    );
    expect(never.map(({ id }) => id)).toEqual([]);
  });
});
