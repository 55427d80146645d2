import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { quoteText } from './blank-quote.ts';
import { readQuoteFile } from './read-quote-file.ts';

const demo = readFileSync(
  new URL('../../../../../tariffs-examples/quotes/rooftop-4-kilowatt.json', import.meta.url),
  'utf8',
);

const reason = (text: string): string => {
  const file = readQuoteFile(text);
  return file.kind === 'refused'
    ? `${file.reason} ${file.findings.map(({ found }) => found).join('; ')}`
    : '';
};

it('opens a quote with all that is in it, and writes the same', () => {
  const file = readQuoteFile(demo);
  if (file.kind !== 'quote') throw new Error(file.reason);
  expect(JSON.parse(quoteText(file.quote))).toEqual(JSON.parse(demo));
});

it('opens numbers that are half typed', () => {
  expect(readQuoteFile(demo.replace('"kWp": "4"', '"kWp": "4o"')).kind).toBe('quote');
});

it('says why a text is no quote', () => {
  expect(reason('{')).toContain('not JSON');
  expect(reason('[]')).toContain('does not say what it is');
  expect(reason('{"format":"unitbook-tariff-1"}')).toContain('It is a tariff, not a quote');
  expect(reason('{"format":"unitbook-quote-2"}')).toContain('unitbook-quote-2');
});

it('lists everything that is not of the right form', () => {
  const text = demo.replace('"years": "25"', '"years": 25').replace('"kind": "reducing"', '"kind": "rising"');
  expect(reason(text)).toContain('years: 25');
  expect(reason(text)).toContain('"rising"');
});
