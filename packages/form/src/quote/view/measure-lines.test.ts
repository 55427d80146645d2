import { expect, it } from 'vitest';
import { workedQuote } from '../../../../../tests/support/demo-quote.ts';
import { writingFor } from '../../writing/writing.ts';
import { measureLines } from './measure-lines.ts';
import { quoteWriting } from './quote-writing.ts';

const quote = workedQuote();
const writing = quoteWriting(writingFor('en-IN', 'INR'), { locale: 'en-IN', grid: 100 });
const linesOf = (of = quote) => Object.fromEntries(measureLines(of, writing).map((line) => [line.key, line]));

it('gives what the quote comes to, in single figures', () => {
  const { measures } = quote;
  // The scenario: a present value of 2,40,574.80 and a rate of 22.01 %.
  expect(linesOf()['present']?.value).toBe('₹2,40,574.80');
  expect(linesOf()['return']?.value).toBe('22.01 %');
  // Shown as the engine has them, rounded to two decimals.
  expect(linesOf()['modified']?.value).toBe(`${((measures.modifiedRate ?? 0) * 100).toFixed(2)} %`);
  expect(linesOf()['levelised']?.value).toBe(`₹${(measures.levelisedCost ?? 0).toFixed(2)}`);
  expect(linesOf()['benefit']?.value).toBe((measures.benefitCost ?? 0).toFixed(2));
});

it('says beside none or several rates of return what they do not say', () => {
  const rated = (...rates: readonly number[]) =>
    linesOf({ ...quote, measures: { ...quote.measures, rates: { rates } } })['return'];
  expect(rated()).toMatchObject({ value: 'none', note: 'At no rate is the present value 0.' });
  expect(rated(0.25, 4)).toMatchObject({
    value: 'several: 25.00 %, 400.00 %',
    note: 'Of several rates of return none says whether it pays; the present value does.',
  });
});

it('says what is not defined as that, and names the factor of CO2', () => {
  const { measures } = quote;
  const none = { ...measures, modifiedRate: null, levelisedCost: null, benefitCost: null };
  const told = linesOf({ ...quote, measures: none, carbon: null });
  expect(['modified', 'levelised', 'benefit'].map((key) => told[key]?.value)).toEqual(
    Array<string>(3).fill('not defined'),
  );
  expect(told['carbon']).toBeUndefined();
  const { carbon } = quote.input.document;
  // 5,520 units × 0.71 or whatever factor the demo names: its name stands beside it.
  expect(linesOf()['carbon']?.note).toContain(`${carbon?.version ?? '?'}; ${carbon?.variant ?? '?'}`);
});
