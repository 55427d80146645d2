import { quoteGround, usualCases, type CaseResult } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { preparedQuote, workedQuote } from '../../../../../tests/support/demo-quote.ts';
import { writingFor } from '../../writing/writing.ts';
import { quoteWriting } from '../view/quote-writing.ts';
import { ENGLISH } from '../words/english.ts';
import { GERMAN } from '../words/german.ts';
import { caseLines, caseName } from './case-lines.ts';
import type { PaperView } from './paper-view.ts';

const quote = workedQuote();
const ground = quoteGround(preparedQuote());

function paperIn(locale: string, words = ENGLISH, cases: readonly CaseResult[] = []): PaperView {
  const writing = quoteWriting(writingFor(locale, 'INR'), { locale, grid: quote.grid });
  return {
    quote,
    kept: null,
    ground,
    words,
    writing,
    draws: null,
    cases,
    charges: [],
    tariff: '',
    isTrial: false,
  };
}

const german = (id: string, name: string): string => caseName({ id, name }, paperIn('de-DE', GERMAN));

it('calls every usual case in English as the engine does', () => {
  const cases = usualCases(quote.input);
  expect(cases.map((one) => caseName(one, paperIn('en-IN')))).toEqual(cases.map(({ name }) => name));
  const named = cases.map(({ id }) => id).filter((id) => !id.startsWith('policy-'));
  expect(named).toEqual(Object.keys(ENGLISH.cases.names));
});

it('has how much is changed from the engine, written as the quote is', () => {
  expect(german('rise-twice', 'Rates rise 2.5 % a year')).toBe('Preise steigen um 2,5\u00a0% pro Jahr');
  expect(german('use-less', '30 % less use')).toBe('30\u00a0% weniger Verbrauch');
});

it('keeps the names of rules that somebody wrote, and says in words that they hold from the first year', () => {
  expect(german('policy-1', 'Net billing from year 8')).toBe('Net billing from year 8');
  expect(german('policy-1-now', 'Net billing from year 8: already from year 1')).toBe(
    'Net billing from year 8: schon ab dem 1. Jahr',
  );
});

it('leaves the name of a case that it does not know', () => {
  expect(german('hail', 'Hail every year')).toBe('Hail every year');
  expect(german('policy-9-now', 'Others: already from year 1')).toBe('Others: already from year 1');
});

it('has the quote itself first, and a line without figures for a case that cannot be billed', () => {
  const unbilled = { id: 'subsidy-refused', name: 'Subsidy not received', quote: null, findings: [] };
  expect(caseLines(paperIn('de-DE', GERMAN, [unbilled]))).toEqual([
    ['Wie angeboten', '36.673,88', '4,6 Jahre', '5,9 Jahre', '838.507,01', '240.574,80', '22,01 %'],
    ['Zuschuss nicht erhalten', 'nicht abrechenbar', '', '', '', '', ''],
  ]);
});

it('never gives one of several rates of return, nor a first payback as the last word', () => {
  const { measures } = quote;
  const twice = { ...measures.simple, first: 2.5, last: 7 };
  const odd = {
    ...quote,
    measures: {
      ...measures,
      simple: twice,
      discounted: { ...twice, last: null },
      rates: { rates: [0.25, 4] },
    },
  };
  const [, line] = caseLines(paperIn('en-IN', ENGLISH, [{ id: 'x', name: 'Odd', quote: odd, findings: [] }]));
  expect([line?.[2], line?.[3], line?.[6]]).toEqual([
    '2.5 years at first, for good after 7.0 years',
    '2.5 years at first, owed again at the end',
    'several: 25.00 %, 400.00 %',
  ]);
});
