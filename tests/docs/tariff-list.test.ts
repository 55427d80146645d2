import { expect, it } from 'vitest';
import { page } from './pages.ts';
import { tariffList } from './tariff-list.ts';

it('docs/tariffs.md is up to date: node tests/support/run.mjs tests/support/write-tariff-list.ts', () => {
  expect(page('tariffs.md')).toBe(tariffList());
});
