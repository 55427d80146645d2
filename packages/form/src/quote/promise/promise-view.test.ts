import { readFileSync } from 'node:fs';
import { readTariff, type QuoteDocument } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { readHousehold } from '../../household/read-household.ts';
import { openTariffText } from '../../view/tariff-view.ts';
import { promiseCsv } from './promise-tables.ts';
import { viewPromise, type PromiseViewInput } from './promise-view.ts';

const EXAMPLES = new URL('../../../../../tariffs-examples/', import.meta.url);
const textOf = (path: string): string => readFileSync(new URL(path, EXAMPLES), 'utf8');
const tariffText = textOf('tarumira/taresco-domestic/tariff.json');
const opened = readHousehold(textOf('households/demo.json'));
if (opened.kind !== 'household') throw new Error('The demo household cannot be read.');
const { household } = opened;

const viewOf = (change: Partial<PromiseViewInput> = {}) =>
  viewPromise({
    quoteDocument: JSON.parse(textOf('quotes/rooftop-4-kilowatt.json')) as QuoteDocument,
    tariff: readTariff(tariffText).value,
    profile: null,
    household,
    bookTariff: openTariffText(tariffText),
    billsBy: 'book',
    today: '2026-05-01',
    locale: 'en-IN',
    ...change,
  });

it('splits every month of a whole year so that the parts sum to the difference', () => {
  const { report } = viewOf();
  expect(report?.periods).toHaveLength(12);
  for (const { promised, actual, parts } of [
    ...(report?.periods ?? []),
    ...(report === null ? [] : [report]),
  ]) {
    expect(parts.map(({ cause }) => cause)).toEqual(['use', 'generation', 'self-use', 'tariff', 'scheme']);
    expect(parts.reduce((sum, { bill }) => sum + bill, 0)).toBe(actual.after - promised.after);
    expect(parts.reduce((sum, { saving }) => sum + saving, 0)).toBe(actual.saving - promised.saving);
  }
});

it('writes as many cells in each line of the sheet as it has heads', () => {
  const { report } = viewOf();
  const lines = report === null ? [] : promiseCsv(report).trimEnd().split('\n');
  expect(lines).toHaveLength(13);
  expect(new Set(lines.map((line) => line.split(',').length))).toEqual(new Set([24]));
  expect(lines[1]).toMatch(/^2025-04-01,2025-05-01,520,/);
});

it('bills by the tariff of the quote where that of the readings is not open, and says so', () => {
  const { report, notes, tariffs } = viewOf({ bookTariff: { kind: 'unknown', id: 'elsewhere' } });
  expect(report?.periods).toHaveLength(12);
  expect(tariffs).toBe(null);
  expect(notes.at(-1)).toContain('their bills are made by that of the quote');
});

it('waits while the tariff of the readings is fetched', () => {
  const { report, wanted } = viewOf({ bookTariff: { kind: 'opening' } });
  expect(report).toBe(null);
  expect(wanted).toContain('Opening the tariff');
});

it('tells from which reading on nothing is billed, and of questions that are open', () => {
  const broken = household.readings.map((row, at) => (at === 4 ? { ...row, import: '' } : row));
  const { notes, report } = viewOf({ household: { ...household, readings: broken } });
  expect(report?.periods).toHaveLength(3);
  expect(notes.join(' ')).toContain('From the reading of 2025-08-01 on nothing can be billed yet');
});
