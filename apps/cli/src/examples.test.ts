import { expect, it } from 'vitest';
import { DEMO_HOUSEHOLD, EXAMPLE_IDS, exampleTariff, idsLike } from './examples.ts';
import { householdFrom } from './read/household.ts';

it('has every example under the id that it gives itself', () => {
  expect(EXAMPLE_IDS).toContain('tarumira-domestic');
  for (const id of EXAMPLE_IDS) expect(exampleTariff(id)?.document.id).toBe(id);
});

it('has no other', () => {
  expect(exampleTariff('nowhere')).toBeNull();
});

it('offers ids that share a word with one that none has, else those of the demo', () => {
  expect(idsLike('Tarumira-domestik')).toEqual(['tarumira-domestic', 'tarumira-shop']);
  expect(idsLike('nowhere')).toEqual(['tarumira-domestic', 'tarumira-shop']);
  expect(idsLike('my-shop')).toContain('tarumira-shop');
  expect(idsLike('taresco').length).toBe(6);
});

it('lists ids where a household names another', () => {
  const text = DEMO_HOUSEHOLD.replace('"tarumira-domestic"', '"nowhere"');
  const { tariff, findings } = householdFrom(text, 'household.json');
  expect(tariff).toBeNull();
  expect(findings.map(({ finding }) => [finding.code, finding.expected, finding.position])).toEqual([
    [
      'command/unknown-tariff',
      'an id that comes with unitbook, such as tarumira-domestic, tarumira-shop',
      { line: 3, column: 13 },
    ],
  ]);
});
