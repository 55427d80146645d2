import {
  CAUSES,
  type Cause,
  type CauseContext,
  type CheckedBill,
  type PrintedBillDocument,
} from '@unitbook/engine';
import fc from 'fast-check';
import { HABITS, printBill } from '../../bench/causes/paper.ts';
import { figuresWith, type Ground } from '../../bench/causes/plant.ts';
import { makeRandom, type Random } from '../../support/random.ts';
import { EXAMPLES, type Example, type Papers } from './examples.ts';
import { printed, randomPapers, rightBills, type Draw } from './random-papers.ts';

/** Papers of which the last bill was made wrong by known mistakes. */
export interface Planted {
  readonly papers: Papers;
  readonly causes: readonly Cause[];
}

const PERIODS = 3;
/** How often mistakes are tried in a bill in which those before cannot be made. */
const TRIES = 40;

/** A tariff of another category of the same place. */
const SHOP = EXAMPLES.filter(({ name }) => name === 'tarumira/taresco-shop').map(({ tariff }) => tariff);

function contextOf([before, own]: readonly [CheckedBill, CheckedBill], papers: Papers): CauseContext {
  return {
    printed: own.right?.figures ?? new Map(),
    status: null,
    before: before.facts,
    printedBefore: before.right?.figures ?? null,
    closingBefore: own.facts.opening,
    otherTariffs: (papers.otherTariffs ?? []).map(({ document }) => document),
    connected: null,
    paidBefore: true,
    serials: {},
  };
}

/** The last bill of papers, ready to be made wrong; null: there are no two bills. */
function groundOf(bills: readonly CheckedBill[], papers: Papers): Ground | null {
  const [before, own] = bills.slice(-2);
  if (before?.right == null || own?.right == null) return null;
  const { since = '', settlementDay = '' } = papers.account.document;
  return {
    facts: own.facts,
    basis: { account: { since, settlementDay }, carried: before.right.carried },
    figures: own.right.figures,
    context: contextOf([before, own], papers),
  };
}

/** One or two causes in the order of their stages. */
function someCauses(random: Random): readonly Cause[] {
  const picked = new Set([random.pick(CAUSES), ...(random.chance(50) ? [random.pick(CAUSES)] : [])]);
  return CAUSES.filter((cause) => picked.has(cause));
}

function plantedIn(draw: Draw, seed: number): Planted | null {
  const random = makeRandom(seed);
  const bills = rightBills(draw);
  const papers = printed({ ...draw, habit: HABITS[0] ?? draw.habit }, bills);
  const ground = groundOf(bills, papers);
  if (ground === null) return null;
  for (let tried = 0; tried < TRIES; tried += 1) {
    const causes = someCauses(random);
    const wrong = figuresWith(causes, ground, random);
    if (wrong === null) continue;
    const own = bills.at(-1)?.printed.document;
    const document: PrintedBillDocument = printBill(ground.facts, wrong.figures, HABITS[0] ?? draw.habit);
    // Units by time blocks are what the bill is made of: they are printed right.
    const documents = papers.documents.with(-1, { ...document, units: { ...own?.units, ...document.units } });
    return { papers: { ...papers, documents }, causes };
  }
  return null;
}

function draws(example: Example): fc.Arbitrary<Draw> {
  const otherTariffs = example.name.startsWith('tarumira/') ? SHOP : [];
  return randomPapers(example, PERIODS).map((draw) => ({
    ...draw,
    papers: { ...draw.papers, otherTariffs },
  }));
}

/** Papers with mistakes planted into the last bill; null where none that were tried can be made. */
export const planted: fc.Arbitrary<Planted | null> = fc
  .tuple(fc.constantFrom(...EXAMPLES).chain(draws), fc.nat())
  .map(([draw, seed]) => plantedIn(draw, seed));
