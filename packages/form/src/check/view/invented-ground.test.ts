import { readFileSync } from 'node:fs';
import { readTariff } from '@unitbook/engine';
import { expect, it } from 'vitest';
import type { CheckDesk } from '../check-desk.ts';
import { BLANK_CHECK } from '../document/typed-check.ts';
import { emptyHousehold } from '../../household/household.ts';
import { inventedWords } from './invented-ground.ts';

const path = '../../../../../tariffs-examples/tarumira/taresco-domestic/tariff.json';
const { value } = readTariff(readFileSync(new URL(path, import.meta.url), 'utf8'));
const { account } = emptyHousehold('en-IN');

interface Given {
  readonly slot?: 'demo' | 'own';
  readonly hasGround?: boolean;
  readonly isDemoBook?: boolean;
  readonly invented?: boolean;
}

function told({ slot = 'own', hasGround = false, isDemoBook = false, invented = true }: Given): string {
  if (value === null) throw new Error('the example cannot be read');
  const ground = hasGround ? { tariff: '', account, readings: [] } : null;
  const tariff = { ...value, document: { ...value.document, invented } };
  const desk = {
    store: { slot, check: { ...BLANK_CHECK, ground } },
    tariff: { kind: 'open', tariff: { tariff } },
    isDemoBook,
  };
  return inventedWords(desk as unknown as CheckDesk);
}

it('tells of own bills beside the household of the demo', () => {
  expect(told({ isDemoBook: true })).toContain('invented household of the demo');
});

it('tells of own bills beside a tariff of an invented place', () => {
  expect(told({})).toContain('tariff of an invented place');
});

it.each<[string, Given]>([
  ['the demo itself', { slot: 'demo', isDemoBook: true }],
  ['what came with a file', { hasGround: true, isDemoBook: true }],
  ['an own book with a tariff of its place', { invented: false }],
])('is silent about %s', (_, given) => {
  expect(told(given)).toBe('');
});
