import { PROMISE_CAUSES, type PromiseCause } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { writingFor } from '../../writing/writing.ts';
import { quoteWriting } from '../view/quote-writing.ts';
import { billSentence, keptSentence, signed, unitsOf, type Compared } from './promise-words.ts';

const writing = quoteWriting(writingFor('en-IN', 'INR'), { locale: 'en-IN', grid: 100 });

const side = (after: number, saving: number) => ({
  use: 430_000,
  generation: 380_000,
  selfUse: 144_000,
  before: after + saving,
  after,
  surplus: 0,
  saving,
});

/** Bills in hundredths of a rupee, with what explains them. */
function compared(came: number, bills: Partial<Record<PromiseCause, number>>): Compared {
  return {
    promised: side(34_400, 279_670),
    actual: { ...side(came, 279_670), use: 610_000, generation: 352_500 },
    parts: PROMISE_CAUSES.map((cause) => ({ cause, bill: bills[cause] ?? 0, saving: 0 })),
  };
}

it('says what explains a bill that is higher, each cause with its units', () => {
  const higher = compared(168_012, { use: 113_200, generation: 20_412 });
  expect(billSentence(higher, 'The bill', writing)).toBe(
    'The bill came to ₹1,680.12, ₹1,336.12 more than quoted: use +180 units explains ₹1,132.00, generation −27.5 units explains ₹204.12.',
  );
});

it('turns the parts round where a bill is lower, so that they sum to what is said', () => {
  const lower = compared(24_400, { use: -13_000, tariff: 3_000 });
  expect(billSentence(lower, 'The bill', writing)).toBe(
    'The bill came to ₹244.00, ₹100.00 less than quoted: use +180 units explains ₹130.00, the charges of the tariff explain −₹30.00.',
  );
});

it('says that a bill came as quoted, and what outweighs itself in it', () => {
  expect(billSentence(compared(34_400, {}), 'The bill', writing)).toBe(
    'The bill came to ₹344.00, as quoted.',
  );
  expect(billSentence(compared(34_400, { use: 500, scheme: -500 }), 'The bill', writing)).toBe(
    'The bill came to ₹344.00, as quoted: use +180 units explains ₹5.00, the rules of the settlement explain −₹5.00.',
  );
});

it('says whether the saving was kept', () => {
  const base = compared(34_400, {});
  const saved = (saving: number): string =>
    keptSentence({ ...base, actual: { ...base.actual, saving } }, writing);
  expect(saved(279_670)).toBe('The promise was kept: quoted were ₹2,796.70.');
  expect(saved(279_671)).toBe('The promise was kept: quoted were ₹2,796.70, ₹0.01 more.');
  expect(saved(279_669)).toBe('Less was saved than promised: quoted were ₹2,796.70, ₹0.01 less.');
});

it('counts units only of causes that have them', () => {
  expect(unitsOf('use', compared(0, {}))).toEqual({ quoted: 430_000, came: 610_000, by: 180_000 });
  expect(unitsOf('tariff', compared(0, {}))).toBe(null);
});

it('puts a sign before what is more, none before nothing', () => {
  expect(['180', '−28', '0.00', '0'].map(signed)).toEqual(['+180', '−28', '0.00', '0']);
});
