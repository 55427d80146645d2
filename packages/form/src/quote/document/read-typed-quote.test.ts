import { readFileSync } from 'node:fs';
import type { QuoteDocument } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { blankQuote } from './blank-quote.ts';
import { putAt } from './edit-quote.ts';
import { allFields } from './money-fields.ts';
import { readTypedQuote } from './read-typed-quote.ts';

const demo = JSON.parse(
  readFileSync(
    new URL('../../../../../tariffs-examples/quotes/rooftop-4-kilowatt.json', import.meta.url),
    'utf8',
  ),
) as QuoteDocument;

const read = (document: QuoteDocument) =>
  readTypedQuote(document, allFields({ document, charges: [], powers: ['sanctioned-load'] }));

it('leaves a whole quote as it is', () => {
  const { document, findings } = read(demo);
  expect(document).toEqual(demo);
  expect(findings).toEqual([]);
});

it('reads numbers and days as people type them', () => {
  const typed = putAt(putAt(demo, ['price', 0, 'amount'], '2,08,000'), ['start'], '1 April 2025');
  const { document } = read(typed);
  expect(document.price[0]?.amount).toBe('208000');
  expect(document.start).toBe('2025-04-01');
});

it('leaves out what is blank and may be', () => {
  const { document, findings } = read(putAt(demo, ['selfUse', 'share'], ' '));
  expect(document.selfUse).toEqual({ basis: demo.selfUse?.basis });
  expect(findings).toEqual([]);
});

it('keeps a source that is blank: the engine wants it said', () => {
  expect(read(putAt(demo, ['use', 'source'], '')).document.use.source).toBe('');
});

it('tells of everything that cannot be read, at once', () => {
  const typed = putAt(putAt(putAt(demo, ['plant', 'kWp'], '4o'), ['years'], '2.5'), ['loan', 'rate'], '');
  const { findings, unread, document } = read(typed);
  expect(findings.map(({ code, path }) => `${code} ${path.join('.')}`)).toEqual([
    'reading/letter plant.kWp',
    'account/number-missing loan.rate',
    'quote/number-out-of-range years',
  ]);
  expect(unread.size).toBe(3);
  // So that the engine can look at the rest.
  expect(document.years).toBe('2');
});

it('asks for what a blank quote lacks', () => {
  const { findings } = read(blankQuote('en-IN', ''));
  expect(findings.length > 8).toBe(true);
  expect(findings.every(({ code }) => code === 'account/number-missing')).toBe(true);
});
