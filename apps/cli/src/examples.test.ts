import { expect, it } from 'vitest';
import { DEMO_HOUSEHOLD, EXAMPLE_IDS, exampleTariff } from './examples.ts';
import { householdFrom } from './read/household.ts';

it('has every example under the id that it gives itself', () => {
  expect(EXAMPLE_IDS).toContain('tarumira-domestic');
  for (const id of EXAMPLE_IDS) expect(exampleTariff(id)?.document.id).toBe(id);
});

it('has no other', () => {
  expect(exampleTariff('nowhere')).toBeNull();
});

it('lists the ids where a household names another', () => {
  const text = DEMO_HOUSEHOLD.replace('"tarumira-domestic"', '"nowhere"');
  const { tariff, findings } = householdFrom(text, 'household.json');
  expect(tariff).toBeNull();
  expect(findings.map(({ finding }) => [finding.code, finding.expected, finding.position])).toEqual([
    [
      'command/unknown-tariff',
      `an id that comes with unitbook: ${EXAMPLE_IDS.join(', ')}`,
      { line: 3, column: 13 },
    ],
  ]);
});
