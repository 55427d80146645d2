import { readFileSync } from 'node:fs';
import { readTariff, type DrawSummary, type Quote, type QuoteDocument } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { writingFor } from '../../writing/writing.ts';
import { QuoteBench } from '../work/quote-bench.ts';
import { answerOf, paybackRange } from './answer-view.ts';
import { assumptionsOf } from './assumptions.ts';
import { billsOf, cashFlowOf } from './chart-views.ts';
import { quoteWriting } from './quote-writing.ts';

const text = (path: string): string =>
  readFileSync(new URL(`../../../../../tariffs-examples/${path}`, import.meta.url), 'utf8');
const demo = JSON.parse(text('quotes/rooftop-4-kilowatt.json')) as QuoteDocument;
const { value: tariff } = readTariff(text('tarumira/taresco-domestic/tariff.json'));
if (tariff === null) throw new Error('The tariff cannot be read.');
const { quote } = new QuoteBench().workOut(demo, { tariff, profile: null }, null);
if (quote === null) throw new Error('The demo cannot be worked out.');
const writing = quoteWriting(writingFor('en-IN', 'INR'), { locale: 'en-IN', grid: quote.grid });

const draws = (p50: number, p90: number): DrawSummary =>
  ({
    count: 1000,
    payback: { p10: 0, p25: 0, p50, p75: 5.02, p90 },
    saving: { p10: 0, p25: 0, p50: 36_512.3, p75: 34_871.9, p90: 33_000.4 },
  }) as unknown as DrawSummary;

const ALONE = { draws: null, mostOwnUse: null };

it('answers with the figures of the scenario', () => {
  expect(answerOf(quote, ALONE, writing).map(({ key, value }) => `${key} ${value}`)).toEqual([
    'payback 4.6 years',
    'saving ₹36,673.88',
    'smallest ₹240.00',
    'cash ₹96,000.00',
    'instalment ₹2,520.22',
  ]);
});

it('says a range, also where it has no end', () => {
  expect(paybackRange(draws(4.62, 5.44), writing)).toBe('4.6 to 5.4 years');
  expect(paybackRange(draws(24, Infinity), writing)).toBe('24.0 years, or not within the life');
  expect(paybackRange(draws(Infinity, Infinity), writing)).toBe('not within the life');
});

it('groups money as the household does', () => {
  const german = quoteWriting(writingFor('de-DE', 'EUR'), { locale: 'de-DE', grid: 100 });
  expect(german.column(123_456_78)).toBe('123.456,78');
  expect(writing.column(-127_726_12)).toBe('−1,27,726.12');
  expect(writing.percent(0.22014)).toBe('22.01 %');
  expect(writing.about(838_507.4)).toBe('₹8,38,507');
});

it('puts exact amounts into the charts', () => {
  const cash = cashFlowOf(quote, null, writing);
  expect(cash.years[5]?.value).toEqual({ at: 14_659.81, text: '₹14,659.81', decimal: '14659.81' });
  expect(cash.payback?.label).toBe('paid back after 4.6 years');
  expect(billsOf(quote, writing).months[3]).toMatchObject({ label: 'July 2025', short: 'Jul' });
});

it('says what the figures hang on', () => {
  const charges = [{ id: 'energy', label: 'Energy charge', follows: '' }];
  const said = Object.fromEntries(assumptionsOf(demo, { charges, tariff: 'D-1' }, writing));
  expect(said['Rates rise']).toBe('2 % a year (energy charge, fixed, fuel, minimum)');
  expect(said['Upkeep']).toBe('₹2,400.00 a year, +4 % each year; inverter in year 11 for ₹32,000.00');
  expect(said['Wear']).toBe('0.6 % a year');
});

const lineOf = (key: string, of = quote, drawn: DrawSummary | null = draws(4.62, 5.44)) =>
  answerOf(of, { draws: drawn, mostOwnUse: null }, writing).find((line) => line.key === key);

it('says P75 of the payback, and the range of the saving', () => {
  expect(lineOf('payback')?.note).toBe(
    'P50 to P90 of 1,000 draws; P75: 5.0 years. As quoted, without chance: 4.6 years. Discounted at 8 %: 5.9 years.',
  );
  expect(lineOf('saving')?.note).toContain(
    'Of the draws half save ₹36,512 or more (P50), three in four ₹34,872 (P75), nine in ten ₹33,000 (P90).',
  );
});

it('never says a first payback as the last word, with draws or without', () => {
  const { measures } = quote;
  const twice = { ...quote, measures: { ...measures, simple: { ...measures.simple, first: 2.5, last: 7 } } };
  expect(lineOf('payback', twice, null)).toMatchObject({
    value: '2.5 years at first, for good after 7.0 years',
    note: 'Discounted at 8 %: 5.9 years. It is owed again once something is replaced.',
  });
  expect(lineOf('payback', twice)?.value).toBe('4.6 to 5.4 years at first');
  expect(cashFlowOf(twice, null, writing).payback?.label).toBe(
    'paid back after 2.5 years at first, for good after 7.0 years',
  );
});

it('says both ends where own use is not known', () => {
  const notes = (mostOwnUse: Quote): readonly string[] =>
    answerOf(quote, { draws: null, mostOwnUse }, writing)
      .slice(0, 2)
      .map(({ note }) => note);
  // Netting without a limit: a unit is worth the same at home and in the grid.
  for (const note of notes(quote)) expect(note).toContain(' However much is used at home as it is made.');
  const [first, ...others] = quote.years;
  if (first === undefined) throw new Error('The quote has no year.');
  const { measures } = quote;
  const better: Quote = {
    ...quote,
    years: [{ ...first, saving: 40_000_00 }, ...others],
    measures: { ...measures, simple: { ...measures.simple, first: 4, last: 4 } },
  };
  const range = (most: string): string =>
    ` With nothing used at home as it is made; with as much as use and generation allow: ${most}.`;
  expect(notes(better)[0]).toContain(range('4.0 years'));
  expect(notes(better)[1]).toContain(range('₹40,000.00'));
});
