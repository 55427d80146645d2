import { readFileSync } from 'node:fs';
import { readTariff, usualCases, workOutCase, type QuoteDocument } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { writingFor } from '../../writing/writing.ts';
import { putAt } from '../document/edit-quote.ts';
import { sensitivityOf } from '../view/chart-views.ts';
import { quoteWriting } from '../view/quote-writing.ts';
import { QuoteBench } from '../work/quote-bench.ts';
import { caseTable } from './tables.ts';

const text = (path: string): string =>
  readFileSync(new URL(`../../../../../tariffs-examples/${path}`, import.meta.url), 'utf8');
const demo = JSON.parse(text('quotes/rooftop-4-kilowatt.json')) as QuoteDocument;
const { value: tariff } = readTariff(text('tarumira/taresco-domestic/tariff.json'));
if (tariff === null) throw new Error('The tariff cannot be read.');

it('writes a case in its own parts of a coin: a rule may pay in finer ones than the tariff has', () => {
  const payment = ['policies', 0, 'settlement', 'ledgers', 0, 'payment'];
  const finer = putAt(demo, [...payment, 'rounding'], { step: '0.0001', mode: 'half-up' });
  const { quote, prepared } = new QuoteBench().workOut(finer, { tariff, profile: null }, null);
  if (quote === null || prepared === null) throw new Error('The demo cannot be worked out.');
  const { input } = prepared;
  const cases = usualCases(input)
    .filter(({ id }) => id === 'policy-1')
    .map((one) => workOutCase(input, tariff, one));
  expect(cases[0]?.quote?.grid).toBe(10_000);
  const writing = quoteWriting(writingFor('en-IN', 'INR'), { locale: 'en-IN', grid: quote.grid });
  // The rule holds from year 8 on: the first year saves what it saves without it.
  expect(caseTable(quote, cases, writing).lines.map(([, saving]) => saving)).toEqual([
    '36,673.88',
    '36,673.88',
  ]);
  const { base, inputs } = sensitivityOf(quote, cases, writing);
  expect(inputs.map(({ low }) => low.result.at < base.at)).toEqual([true]);
});
