import { describe, expect, it } from 'vitest';
import {
  evaluate,
  preparedFor,
  prepareTariff,
  QUANTITY_ORDER,
  quantityVector,
  type Bill,
  type Figure,
} from '@unitbook/engine';
import { figureOf, periodOf, tryBill, valueOf } from '../support/make.ts';
import { makeRandom, type Random } from '../support/random.ts';
import { unexplained } from '../support/recompute.ts';
import { randomTariff } from './random-tariff.ts';
import { readDocumentText } from './twin-comparison.ts';

const TARIFFS = 250;
const BILLS = 4;

/** Ids of the figures below one that do not follow from what they show. */
const idsOf = (figure: Figure): string[] =>
  unexplained(figure).map((one) => `${one.id} ${one.operation} ${valueOf(one)}`);

const sumText = (bill: Bill): string => valueOf(bill.sum);

/** Quantities as text, mostly whole units. */
function randomTexts(random: Random): Record<string, string> {
  const entries = QUANTITY_ORDER.filter((name) => name !== 'one').map((name) => {
    const isPower = name === 'sanctioned-load' || name === 'plant-capacity';
    const whole = String(random.below(isPower ? 12 : 700));
    return [name, random.chance(25) ? `${whole}.${String(1 + random.below(9))}` : whole] as const;
  });
  return Object.fromEntries(entries);
}

function forRandomBills(check: (bill: Bill, random: Random) => void): number {
  const random = makeRandom(8);
  let bills = 0;
  for (let at = 0; at < TARIFFS; at += 1) {
    const tariff = readDocumentText(randomTariff(random, random.chance(15)));
    const period = random.chance(50)
      ? periodOf('2025-04-01', '2025-05-01')
      : periodOf('2024-12-20', '2025-02-09');
    for (let count = 0; count < BILLS; count += 1) {
      const { value } = tryBill(tariff, { ...randomTexts(random), period });
      if (value === null) continue;
      check(value, random);
      bills += 1;
    }
  }
  return bills;
}

describe('a generated bill', () => {
  it('has figures that follow from what they show, down to what was given', () => {
    const bills = forRandomBills((bill) => {
      const roots = [bill.payable, ...bill.lines.map((line) => line.figure)];
      expect(roots.flatMap(idsOf)).toEqual([]);
    });
    // Some are refused: for want of digits, or for credit left over that no ledger takes.
    expect(bills).toBeGreaterThan(800);
  });

  it('has lines that sum to its total, and a rounding that makes up the rest', () => {
    forRandomBills((bill) => {
      const counted = bill.lines.filter((line) => line.counts).map((line) => line.figure);
      expect(bill.sum.inputs).toEqual(counted);
      expect(idsOf(bill.sum)).toEqual([]);
      if (bill.roundingDifference === null) expect(valueOf(bill.payable)).toBe(sumText(bill));
      else expect(idsOf(bill.roundingDifference)).toEqual([]);
    });
  });
});

describe('the short cuts of the evaluator', () => {
  it('give the amounts that every line explains for itself', () => {
    const random = makeRandom(9);
    const period = periodOf('2025-01-10', '2025-03-01');
    for (let at = 0; at < TARIFFS; at += 1) {
      const prepared = prepareTariff(readDocumentText(randomTariff(random, false)));
      const [version] = prepared.tariff.versions;
      if (version === undefined) throw new Error('no version');
      const { constants } = preparedFor(prepared, { version, period }, period, { energyScale: 1 });
      const texts = randomTexts(random);
      const vector = quantityVector(constants);
      QUANTITY_ORDER.forEach((name, index) => {
        vector[index] = name === 'one' ? 1000 : (figureOf(name, texts[name] ?? '0').numerator as number);
      });
      const amounts = new Float64Array(constants.lines.length);
      const general = { ...constants, steps: constants.steps.map((step) => ({ ...step, kind: 9 })) };
      const generalAmounts = new Float64Array(constants.lines.length);
      const total = evaluate(constants, vector, amounts);
      expect(evaluate(general, vector, generalAmounts)).toBe(total);
      expect([...amounts]).toEqual([...generalAmounts]);
    }
  });
});

describe('a bill', () => {
  it('does not depend on the order in which its quantities are named', () => {
    const random = makeRandom(10);
    const tariff = readDocumentText(randomTariff(random, false));
    const texts = randomTexts(random);
    const backwards = Object.fromEntries(Object.entries(texts).reverse());
    const one = tryBill(tariff, texts).value;
    const other = tryBill(tariff, backwards).value;
    expect(one?.lines.map((line) => valueOf(line.figure))).toEqual(
      other?.lines.map((line) => valueOf(line.figure)),
    );
  });
});
