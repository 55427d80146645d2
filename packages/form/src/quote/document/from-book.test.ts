import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readHousehold } from '../../household/read-household.ts';
import { viewBook } from '../../view/view-book.ts';
import { openTariffText } from '../../view/tariff-view.ts';
import { useFromBook } from './from-book.ts';

const text = (path: string): string =>
  readFileSync(new URL(`../../../../../tariffs-examples/${path}`, import.meta.url), 'utf8');

it('takes the use of the last twelve periods, by calendar month', () => {
  const read = readHousehold(text('households/demo.json'));
  const tariff = openTariffText(text('tarumira/taresco-domestic/tariff.json'));
  if (read.kind !== 'household' || tariff.kind !== 'open') throw new Error('The demo cannot be opened.');
  const { book } = viewBook({ household: read.household, tariff: tariff.tariff, today: '2026-05-01' });
  const use = useFromBook(book);
  expect(Object.keys(use?.months ?? {}).length).toBe(12);
  expect(use?.fill).toBe(undefined);
});

it('knows of no use without a book', () => {
  expect(useFromBook(null)).toBe(null);
});
