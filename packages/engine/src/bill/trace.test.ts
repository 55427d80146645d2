import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoTariff } from '../../../../tests/support/demo.ts';
import { billOf, periodOf, tariffOf, type BillParts } from '../../../../tests/support/make.ts';
import { unexplained } from '../../../../tests/support/recompute.ts';
import { addDays, wholeToDecimal } from '../quantity/index.ts';
import type { Charge, Tariff } from '../tariff/index.ts';
import type { Bill } from './index.ts';

/** What of a bill does not follow from what it shows. */
function unexplainedOf(bill: Bill): readonly string[] {
  const figures = [
    bill.sum,
    bill.payable,
    ...(bill.roundingDifference === null ? [] : [bill.roundingDifference]),
  ];
  return [...bill.lines.map((line) => line.figure), ...figures]
    .flatMap(unexplained)
    .map((figure) => figure.id);
}

const DEMO = demoTariff();
const WHOLE_UNITS = demoTariff(['"units": "exact"', '"units": "whole"']);

/** One charge of every kind and method that the demo has not. */
const OTHER_CHARGES: readonly Charge[] = [
  {
    id: 'bands',
    label: 'Fixed charge',
    clause: 'T 1',
    kind: 'per-kilowatt',
    on: 'sanctioned-load',
    bands: [{ upTo: '2', rate: '40' }, { upTo: '5', rate: '75.5' }, { rate: '110.25' }],
    method: 'telescopic',
    scaledBy: 'month',
  },
  {
    id: 'steps',
    label: 'Meter rent',
    clause: 'T 2',
    kind: 'fixed',
    chosenBy: 'billed',
    steps: [{ upTo: '50', amount: '20' }, { amount: '45.55' }],
    scaledBy: 'month',
  },
  {
    id: 'whole',
    label: 'Energy charge',
    clause: 'T 3',
    kind: 'slabs',
    on: 'billed',
    method: 'whole',
    chosenBy: 'import',
    slabs: [{ upTo: '100', rate: '3.15' }, { rate: '4.25' }],
    scaledBy: 'month',
  },
  {
    id: 'tables',
    label: 'Network charge',
    clause: 'T 4',
    kind: 'slab-tables',
    on: 'import',
    tables: [
      { upTo: '200', slabs: [{ upTo: '30', rate: '0.10' }, { rate: '0.20' }] },
      { slabs: [{ upTo: '100', rate: '0.30' }, { rate: '0.40' }] },
    ],
    scaledBy: 'month',
  },
  {
    id: 'duty',
    label: 'Duty',
    clause: 'T 5',
    kind: 'percentage',
    chosenBy: 'billed',
    steps: [{ upTo: '100', percent: '5' }, { percent: '9' }],
    of: ['whole', { line: 'tables', recomputedOn: 'billed' }],
  },
  {
    id: 'rebate',
    label: 'Rebate',
    clause: 'T 6',
    kind: 'percentage',
    percent: '-2.5',
    of: ['bands', 'duty'],
  },
  {
    id: 'floor',
    label: 'Minimum',
    clause: 'T 7',
    kind: 'minimum',
    amount: '300',
    of: ['steps', 'whole'],
    as: 'floor',
    scaledBy: 'month',
  },
];

/** Exact lines only so far as whole numbers can count them: no percentage of a percentage. */
const otherTariff = (line: 'none' | 'rounded'): Tariff =>
  tariffOf(line === 'none' ? OTHER_CHARGES.filter(({ id }) => id !== 'rebate') : OTHER_CHARGES, {
    rounding: {
      clause: 'T 8',
      line: line === 'none' ? 'none' : { step: '0.05', mode: 'half-even' },
      total: { step: '1', mode: 'up' },
    },
    dayRules: { month: { rule: 'days-over', clause: 'T 9', divisor: '30' } },
  });

const anyParts = fc.record({
  billed: fc.nat(600_000).map((value) => wholeToDecimal(value, 3)),
  import: fc.nat(600_000).map((value) => wholeToDecimal(value, 3)),
  load: fc.integer({ min: 0, max: 8000 }).map((value) => wholeToDecimal(value, 3)),
  days: fc.integer({ min: 1, max: 70 }),
  offset: fc.integer({ min: -80, max: 40 }),
});

describe('a bill explains itself', () => {
  it.each([
    ['the demo tariff', DEMO],
    ['whole units split', WHOLE_UNITS],
    ['every other kind of charge', otherTariff('rounded')],
    ['lines that are not rounded', otherTariff('none')],
  ])('in every figure, down to what was given: %s', (_, tariff) => {
    fc.assert(
      fc.property(anyParts, ({ billed, import: taken, load, days, offset }) => {
        // From 80 days before the change of the charges to 40 after it.
        const from = addDays(periodOf('2024-04-01', '2024-05-01').from, offset);
        const period = { from, to: addDays(from, days) };
        // Whole units are split as they are counted: without decimals.
        const whole = tariff === WHOLE_UNITS ? billed.replace(/\..*/, '') : billed;
        const parts: BillParts = {
          billed: whole,
          import: taken.replace(/\..*/, ''),
          'sanctioned-load': load,
          period,
        };
        expect(unexplainedOf(billOf(tariff, parts))).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });

  it('shows the parts of slabs with their scaled limits and where they stand', () => {
    const long = billOf(DEMO, {
      billed: '170',
      'sanctioned-load': '4',
      period: periodOf('2025-04-01', '2025-05-09'),
    });
    const energy = long.lines.find((line) => line.figure.id === 'energy')?.figure;
    expect(energy?.clause).toBe('TO-2024 cl. 4.2');
    expect(energy?.inputs.map((part) => part.inputs[0]?.parameters)).toEqual([
      [
        { name: 'above', text: '0', unit: 'kWh', clause: 'TO-2024 cl. 4.2' },
        { name: 'up to (50 × 19/15)', text: '190/3', unit: 'kWh', clause: 'TO-2024 cl. 4.2' },
      ],
      [
        { name: 'above (50 × 19/15)', text: '190/3', unit: 'kWh', clause: 'TO-2024 cl. 4.2' },
        { name: 'up to (150 × 19/15)', text: '190', unit: 'kWh', clause: 'TO-2024 cl. 4.2' },
      ],
    ]);
    const fixed = long.lines.find((line) => line.figure.id === 'fixed')?.figure;
    expect(fixed?.inputs[1]).toMatchObject({
      label: 'Day factor "month"',
      unit: 'ratio',
      numerator: 19,
      denominator: 15,
      clause: 'TO-2024 cl. 4.3',
    });
  });
});
