import { describe, expect, it } from 'vitest';
import { demoTariff } from '../../../../tests/support/demo.ts';
import { periodOf } from '../../../../tests/support/make.ts';
import { closesBefore } from './closes-before.ts';

/** Until 31 March 2025 the bank closes on that day, then on the day given. */
function changing(on: string) {
  const clause = '"clause": "NMR-2021 r. 7.9"';
  const later =
    `{ "from": "2025-04-01", "scheme": "unit-netting", ${clause}, "carry": { ${clause} }, ` +
    `"close": { ${clause}, "on": "${on}", "surplus": "lapses" } },\n    `;
  return demoTariff([
    '{\n      "from": "2021-04-01",',
    `${later}{\n      "from": "2021-04-01",\n      "through": "2025-03-31",`,
  ]).settlements;
}

describe('a change of the settlement rules', () => {
  it.each([
    ['the day before the change is in the period', '2025-03-15', '2025-04-15', '2021-04-01'],
    ['the closing day opens the period', '2025-03-31', '2025-05-01', '2021-04-01'],
    ['the period ends with the older rule', '2025-03-01', '2025-04-01', null],
    ['the period begins with the newer rule', '2025-04-01', '2025-05-01', null],
    ['a whole year holds both closing days', '2024-06-01', '2025-06-01', '2021-04-01'],
  ])('leaves a closing day to the older rule or not: %s', (_, from, to, rule) => {
    for (const on of ['09-30', '03-31']) {
      expect(closesBefore(changing(on), periodOf(from, to))?.item.from ?? null).toBe(rule);
    }
  });

  it('does not matter where the older rule closes in another part of the year', () => {
    const rules = demoTariff().settlements;
    expect(closesBefore(rules, periodOf('2025-03-15', '2025-04-15'))).toBeNull();
  });
});
