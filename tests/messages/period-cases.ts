import { keepBook, type Finding, type Tariff } from '@unitbook/engine';
import { accountOf, demoTariff, type AccountParts } from '../support/demo.ts';
import { tariffOf, tryBill } from '../support/make.ts';
import type { MessageCase } from './message-case.ts';

/** A book of one period that begins with 0 on every register. */
const book = (
  units: Readonly<Record<'import' | 'export', string>> & { readonly generation?: string },
  parts: AccountParts = {},
  { tariff = demoTariff(), from = '2025-04-01', to = '2025-05-01' } = {},
): readonly Finding[] => {
  const generation = units.generation === undefined ? {} : { generation: '0' };
  const readings = [
    { date: from, import: '0', export: '0', ...generation },
    { date: to, ...units },
  ];
  return keepBook({ account: accountOf(parts), tariff, readings }).findings;
};

const capOnUse = (): Tariff =>
  demoTariff([
    '"scheme": "unit-netting",',
    '"scheme": "unit-netting",\n      "cap": { "clause": "NMR-2021 r. 7.9", "percent": "90", "of": "total-use", "excess": "carried" },',
  ]);

/** The demo, with another settlement rule from 1 April 2025. */
const ruleChangesInApril = (): Tariff =>
  demoTariff([
    '"settlements": [\n    {\n      "from": "2021-04-01",',
    '"settlements": [\n    { "from": "2025-04-01", "scheme": "unit-netting", "clause": "NMR-2021 r. 7.9", ' +
      '"close": { "clause": "NMR-2021 r. 7.9", "on": "every-period", "surplus": "lapses" } },\n' +
      '    {\n      "from": "2021-04-01",\n      "through": "2025-03-31",',
  ]);

const perUnit = { label: 'Network charge', clause: 'T 1', kind: 'per-unit' } as const;

/** Everything that can be said of a period: its energy, its settlement and its bill. */
export const PERIOD_CASES: readonly MessageCase[] = [
  {
    code: 'energy/export-above-generation',
    when: 'more was given than made',
    make: () => book({ import: '412', export: '598', generation: '580' }),
    severity: 'question',
    at: 'readings.1.export',
    found: '598 units given to the grid and 580 made in the same days',
    expected: 'no more given than made, unless a battery was filled from the grid',
    remedy:
      'Likely reasons: import and export swapped; the generation meter misses a phase or has the wrong ' +
      'multiplying factor; the readings are of different days. What the house used itself cannot be known.',
  },
  {
    code: 'energy/export-about-generation',
    when: 'a little more was given than made',
    make: () => book({ import: '412', export: '581', generation: '580' }),
    severity: 'note',
    at: 'readings.1.export',
    found: '581 units given to the grid and 580 made in the same days',
    expected: 'a difference within 3 %, which two meters of their classes can have',
    remedy: 'Hardly anything was used in the house directly; how much cannot be known.',
  },
  {
    code: 'energy/yield-low',
    when: '5 kWp made 44 units in 30 days',
    make: () => book({ import: '412', export: '10', generation: '44' }),
    severity: 'question',
    at: 'readings.1.generation',
    found: '0.29 units per kWp and day',
    expected: 'at least 0.3, even in a dull month',
    remedy:
      'Check the generation reading and the plant capacity. A low month is a finding, not a diagnosis: ' +
      'outage, shade, dirt or a meter error come before faulty panels. Do not open anything: the DC side ' +
      'is live in daylight. Keep it if it is right.',
  },
  {
    code: 'energy/self-consumption-unknown',
    when: 'there is no generation meter',
    make: () => book({ import: '412', export: '278' }, { generationMeter: false }),
    severity: 'note',
    at: 'readings.1',
    found: 'no generation meter',
    expected: 'one, to know what the house used straight from the roof',
    remedy: 'The bill does not need it. What solar saved cannot be said without it.',
  },
  {
    code: 'settlement/no-rule-in-force',
    when: 'the settlement rules begin later',
    make: () =>
      book(
        { import: '412', export: '278', generation: '580' },
        {},
        {
          tariff: demoTariff(['"from": "2021-04-01"', '"from": "2025-05-01"']),
        },
      ),
    at: 'readings.1',
    found: 'no settlement rule on 2025-04-30, the last day of the period',
    expected: 'a day that the tariff covers: from 2025-05-01 on',
    remedy: 'Add the rule of that time to the tariff, or bill only the periods it covers.',
  },
  {
    code: 'settlement/two-rules',
    when: 'the bank closes in the part of a period that is under the older rule',
    make: () =>
      book(
        { import: '412', export: '278', generation: '580' },
        {},
        { tariff: ruleChangesInApril(), from: '2025-03-15', to: '2025-04-15' },
      ),
    at: 'readings.1',
    found:
      'the bank closes on 03-31 by the settlement rule from 2021-04-01, ' +
      'but this period ends under the one from 2025-04-01',
    expected: 'a period that one rule settles, or no closing day in the part before the change',
    remedy: 'Add the reading of 2025-04-01, and ask the supplier how it settled the days on each side.',
  },
  {
    code: 'settlement/quantity-unknown',
    when: 'a cap on the use meets a house without a generation meter',
    make: () => book({ import: '412', export: '278' }, { generationMeter: false }, { tariff: capOnUse() }),
    at: 'readings.1',
    found: 'a cap on total-use, which is not known for this period',
    expected: 'the reading it follows from',
    remedy: 'Add the generation readings, or clear up the balance of the period.',
    isAmongOthers: true,
  },
  {
    code: 'bill/no-tariff-in-force',
    when: 'the period is before the charges',
    make: () =>
      book({ import: '412', export: '278', generation: '580' }, {}, { from: '2023-02-01', to: '2023-03-01' }),
    at: 'versions',
    found: 'no charges in force from 2023-02-01 through 2023-02-28',
    expected: 'days that the tariff covers: from 2023-04-01 on',
    remedy: 'Choose the tariff of that time, or bill only the periods it covers.',
  },
  {
    code: 'bill/quantity-unknown',
    when: 'a charge is on generation that is not known',
    make: () => tryBill(tariffOf([{ ...perUnit, id: 'net', on: 'generation', rate: '0.5' }]), {}).findings,
    at: 'readings.1',
    found: '"Network charge" is charged on generation, which is not known for this period',
    expected: 'the readings it follows from',
    remedy: 'Add the generation readings, or clear up the balance of the period.',
  },
  {
    code: 'bill/too-large',
    when: 'a rate makes more coins than can be counted',
    make: () =>
      tryBill(tariffOf([{ ...perUnit, id: 'net', on: 'billed', rate: '1000000' }]), {
        billed: '99999999.999',
      }).findings,
    at: 'readings.1',
    found: 'an amount in "Network charge" that needs more than 15 digits on the way',
    expected: 'amounts that can be counted exactly, with what the day rules and percentages add',
    remedy:
      'Check the readings and the rates. Where lines are not rounded, exact fractions pile up: ' +
      'round the lines in the tariff as the bill does.',
  },
];
