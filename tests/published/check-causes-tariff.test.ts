import { CAUSES, type CheckedBill } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { checkLast, DOMESTIC, explainedBy, paper, SHOP, textOf, type Case } from './cause-bills.ts';

// Examples of "Why a net-metered bill is wrong, or right but surprising" (project reference, 2025), sections 2.4 and
// 2.5: units billed, what is to be paid and the difference are those printed there. Lines are worked out here from the
// tariff of its section 2.1. Right in the base month: fixed 4 × 60 = 240, energy 50 × 3.00 + 49 × 4.80 = 385.20,
// fuel 99 × 0.40 = 39.60, tax 6 % of 385.20 = 23.11, subsidy 50 × 1.50 = 75; 612.91, so 613.

const RIGHT = { fixed: '240.00', energy: '385.20', fuel: '39.60', tax: '23.11', subsidy: '-75.00' };

/** The same tariff with something changed in the charges of every version. */
function withCharges(change: (charges: Record<string, unknown>[]) => Record<string, unknown>[]): string {
  const document = JSON.parse(DOMESTIC) as { versions: { charges: Record<string, unknown>[] }[] };
  const versions = document.versions.map((version) => ({ ...version, charges: change(version.charges) }));
  return JSON.stringify({ ...document, versions });
}

/** Rs 60 per kW up to 500 units imported, Rs 75 above. */
const FIXED_BY_IMPORT = withCharges((charges) =>
  charges.map((charge) =>
    charge['id'] === 'fixed'
      ? {
          ...charge,
          rate: undefined,
          bands: [{ upTo: '500', rate: '60.00' }, { rate: '75.00' }],
          method: 'whole',
          chosenBy: 'import',
        }
      : charge,
  ),
);

/** With a network charge of Rs 0.50 for each unit made. */
const WITH_NETWORK = withCharges((charges) => [
  ...charges,
  {
    id: 'network',
    label: 'Network charge',
    kind: 'per-unit',
    clause: 'TO-2024 cl. 4.1',
    on: 'generation',
    rate: '0.50',
  },
]);

interface Example extends Case {
  readonly code: string;
  readonly says: string;
  readonly cause: string;
  readonly variant: string;
  readonly billed: string;
  readonly payable: string;
  readonly difference: string;
}

const monthOf38 = { to: '2025-06-08', units: { import: '370', export: '200' }, opening: '0', billed: '170' };
const twoMonths = { to: '2025-07-01', units: { import: '468', export: '200' }, opening: '0', billed: '268' };
const halfOld = { from: '2024-03-17', to: '2024-04-16', billed: '99' };
const OLD = { fixed: '200.00', energy: '360.50', fuel: '24.75', tax: '21.63', subsidy: '-75.00' };

const EXAMPLES: readonly Example[] = [
  {
    code: 'C27',
    says: '38 days, slabs, fixed and subsidy all unscaled',
    cause: 'slabs-not-scaled',
    variant: 'slabs+fixed+first-units',
    opening: '0',
    // 150.00 + 480.00 + 20 × 6.50 = 760.00; 6 % = 45.60; 170 × 0.40 = 68.00.
    bills: [
      paper({
        ...monthOf38,
        lines: { fixed: '240.00', energy: '760.00', fuel: '68.00', tax: '45.60', subsidy: '-75.00' },
        sum: '1038.60',
        payable: '1039',
      }),
    ],
    billed: '170',
    payable: '1039',
    difference: '18',
  },
  {
    code: 'C27',
    says: '38 days, fixed scaled but slabs and subsidy not',
    cause: 'slabs-not-scaled',
    variant: 'slabs+first-units',
    opening: '0',
    bills: [
      paper({
        ...monthOf38,
        lines: { fixed: '304.00', energy: '760.00', fuel: '68.00', tax: '45.60', subsidy: '-75.00' },
        sum: '1102.60',
        payable: '1103',
      }),
    ],
    billed: '170',
    payable: '1103',
    difference: '82',
  },
  {
    code: 'C28',
    says: '61 days with the slabs and the subsidy of one month',
    cause: 'months-billed-as-one',
    variant: 'slabs+first-units',
    opening: '0',
    // 150.00 + 480.00 + 118 × 6.50 = 1,397.00; fixed 240 × 61/30 = 488.00; 268 × 0.40 = 107.20; 6 % = 83.82.
    bills: [
      paper({
        ...twoMonths,
        lines: { fixed: '488.00', energy: '1397.00', fuel: '107.20', tax: '83.82', subsidy: '-75.00' },
        sum: '2001.02',
        payable: '2001',
      }),
    ],
    billed: '268',
    payable: '2001',
    difference: '389',
  },
  {
    code: 'C29',
    says: 'D-1 billed as C-1',
    cause: 'wrong-category',
    variant: 'tarumira-shop',
    others: [SHOP],
    // 4 × 110 = 440.00; 99 × 7.00 = 693.00; 6 % = 41.58; no subsidy.
    bills: [
      paper({
        billed: '99',
        lines: { fixed: '440.00', energy: '693.00', fuel: '39.60', tax: '41.58' },
        sum: '1214.18',
        payable: '1214',
      }),
    ],
    billed: '99',
    payable: '1214',
    difference: '601',
  },
  {
    code: 'C30',
    says: 'old rates',
    cause: 'rates-out-of-date',
    variant: 'version 2023-04-01',
    // 4 × 50 = 200.00; 50 × 2.80 + 49 × 4.50 = 360.50; 99 × 0.25 = 24.75; 6 % = 21.63.
    bills: [paper({ billed: '99', lines: OLD, sum: '531.88', payable: '532' })],
    billed: '99',
    payable: '532',
    difference: '-81',
  },
  {
    code: 'C30',
    says: 'half old, half new, billed all new',
    cause: 'rates-out-of-date',
    variant: 'version 2024-04-01',
    bills: [paper({ ...halfOld, lines: RIGHT, sum: '612.91', payable: '613' })],
    billed: '99',
    payable: '613',
    // 613 − 572.
    difference: '41',
  },
  {
    code: 'C30',
    says: 'half old, half new, billed all old',
    cause: 'rates-out-of-date',
    variant: 'version 2023-04-01',
    bills: [paper({ ...halfOld, lines: OLD, sum: '531.88', payable: '532' })],
    billed: '99',
    payable: '532',
    // 532 − 572.
    difference: '-40',
  },
  {
    code: 'C31',
    says: 'first slab of 30 in place of 50',
    cause: 'slab-limits-wrong',
    variant: 'limit 1 30',
    // 30 × 3.00 + 69 × 4.80 = 421.20; 6 % = 25.27.
    bills: [
      paper({
        billed: '99',
        lines: { ...RIGHT, energy: '421.20', tax: '25.27' },
        sum: '651.07',
        payable: '651',
      }),
    ],
    billed: '99',
    payable: '651',
    difference: '38',
  },
  {
    code: 'C31',
    says: 'all 99 at 4.80',
    cause: 'slab-limits-wrong',
    variant: 'whole',
    // 99 × 4.80 = 475.20; 6 % = 28.51.
    bills: [
      paper({
        billed: '99',
        lines: { ...RIGHT, energy: '475.20', tax: '28.51' },
        sum: '708.31',
        payable: '708',
      }),
    ],
    billed: '99',
    payable: '708',
    difference: '95',
  },
  {
    code: 'C31',
    says: '151 units, all at 6.50',
    cause: 'slab-limits-wrong',
    variant: 'whole',
    opening: '0',
    // 151 × 6.50 = 981.50 in place of 636.50, as printed there; 6 % = 58.89; 60.40; right 900, as printed there.
    bills: [
      paper({
        units: { import: '151', export: '0' },
        opening: '0',
        billed: '151',
        lines: { fixed: '240.00', energy: '981.50', fuel: '60.40', tax: '58.89', subsidy: '-75.00' },
        sum: '1265.79',
        payable: '1266',
      }),
    ],
    billed: '151',
    payable: '1266',
    difference: '366',
  },
  {
    code: 'C32',
    says: 'slabs on import, less 313 × 3.00, in one line',
    cause: 'slabs-on-import',
    variant: 'one-line',
    // 2,501.00 − 939.00 = 1,562.00; 6 % = 93.72.
    bills: [
      paper({
        billed: '99',
        lines: { ...RIGHT, energy: '1562.00', tax: '93.72' },
        sum: '1860.32',
        payable: '1860',
      }),
    ],
    billed: '99',
    payable: '1860',
    difference: '1247',
  },
  {
    code: 'C32',
    says: 'slabs on import, less 313 × 3.00, in two lines',
    cause: 'slabs-on-import',
    variant: 'solar-credit',
    bills: [
      paper({
        billed: '99',
        lines: { ...RIGHT, energy: '2501.00', 'solar-credit': '-939.00', tax: '93.72' },
        sum: '1860.32',
        payable: '1860',
      }),
    ],
    billed: '99',
    payable: '1860',
    difference: '1247',
  },
  {
    code: 'C33',
    says: 'fixed charge on 5 kW of plant',
    cause: 'fixed-on-plant-capacity',
    variant: 'plant-capacity',
    bills: [paper({ billed: '99', lines: { ...RIGHT, fixed: '300.00' }, sum: '672.91', payable: '673' })],
    billed: '99',
    payable: '673',
    difference: '60',
  },
  {
    code: 'C34',
    says: 'fixed charge by total use of 714 in place of import of 412',
    cause: 'fixed-by-other-units',
    variant: 'total-use',
    tariff: FIXED_BY_IMPORT,
    bills: [paper({ billed: '99', lines: { ...RIGHT, fixed: '300.00' }, sum: '672.91', payable: '673' })],
    billed: '99',
    payable: '673',
    // 300 − 240.
    difference: '60',
  },
  {
    code: 'C35',
    says: 'minimum charge on top of a fixed charge that exceeds it',
    cause: 'minimum-on-top',
    variant: 'added',
    opening: '0',
    bills: [
      paper({
        units: { import: '100', export: '100' },
        opening: '0',
        billed: '0',
        lines: { fixed: '240.00', energy: '0.00', minimum: '150.00' },
        sum: '390.00',
        payable: '390',
      }),
    ],
    billed: '0',
    payable: '390',
    difference: '150',
  },
  {
    code: 'C36',
    says: 'tax on gross import',
    cause: 'tax-base-wrong',
    variant: 'tax gross',
    // 6 % × 2,501.00 = 150.06.
    bills: [paper({ billed: '99', lines: { ...RIGHT, tax: '150.06' }, sum: '739.86', payable: '740' })],
    billed: '99',
    payable: '740',
    difference: '127',
  },
  {
    code: 'C36',
    says: 'tax on all lines',
    cause: 'tax-base-wrong',
    variant: 'tax with fixed+minimum+fuel',
    // 6 % × (240.00 + 385.20 + 39.60) = 39.888.
    bills: [paper({ billed: '99', lines: { ...RIGHT, tax: '39.89' }, sum: '629.69', payable: '630' })],
    billed: '99',
    payable: '630',
    difference: '17',
  },
  {
    code: 'C37',
    says: 'fuel surcharge on gross import',
    cause: 'surcharge-on-import',
    variant: 'fuel',
    // 412 × 0.40 = 164.80.
    bills: [paper({ billed: '99', lines: { ...RIGHT, fuel: '164.80' }, sum: '738.11', payable: '738' })],
    billed: '99',
    payable: '738',
    difference: '125',
  },
  {
    code: 'C38',
    says: 'network charge on 19 % of 5 kW in place of 580 units',
    cause: 'network-on-assumed-factor',
    variant: '19',
    tariff: WITH_NETWORK,
    // 5 × 24 × 30 × 19 % × 0.50 = 342.00; right 612.91 + 290.00 = 902.91, so 903.
    bills: [paper({ billed: '99', lines: { ...RIGHT, network: '342.00' }, sum: '954.91', payable: '955' })],
    billed: '99',
    payable: '955',
    difference: '52',
  },
  {
    code: 'C38',
    says: 'network charge on a factor that only the line tells, 17.5 %',
    cause: 'network-on-assumed-factor',
    variant: '17.5',
    tariff: WITH_NETWORK,
    // 5 × 24 × 30 × 17.5 % × 0.50 = 315.00.
    bills: [paper({ billed: '99', lines: { ...RIGHT, network: '315.00' }, sum: '927.91', payable: '928' })],
    billed: '99',
    payable: '928',
    difference: '25',
  },
  {
    code: 'C39',
    says: 'subsidy dropped',
    cause: 'subsidy-dropped',
    variant: 'subsidy',
    bills: [paper({ billed: '99', lines: { ...RIGHT, subsidy: '0.00' }, sum: '687.91', payable: '688' })],
    billed: '99',
    payable: '688',
    difference: '75',
  },
  {
    code: 'K1',
    says: 'a duty of 0.15 for each unit made that the tariff does not have',
    cause: 'charge-not-in-tariff',
    variant: 'own-generation-duty',
    // "Billing mistakes on record" (project reference, 2025), K1: 15 paise a unit; 580 × 0.15 = 87.00.
    bills: [
      paper({
        billed: '99',
        lines: { ...RIGHT, 'own-generation-duty': '87.00' },
        sum: '699.91',
        payable: '700',
      }),
    ],
    billed: '99',
    payable: '700',
    difference: '87',
  },
  {
    code: 'C40',
    says: 'Rs 540 that were paid, with a late fee of 1 %',
    cause: 'arrears-mixed-in',
    variant: 'bill-before+0.01',
    opening: '0',
    bills: [
      {
        from: '2025-04-01',
        to: '2025-05-01',
        units: { import: '100', export: '135', generation: '300' },
        payable: '540',
        paid: { on: '2025-05-12', amount: '540' },
      },
      {
        ...paper({ billed: '99', lines: RIGHT, sum: '1158.31', payable: '1158' }),
        arrears: '540.00',
        lateFee: '5.40',
      },
    ],
    billed: '99',
    payable: '1158',
    // 1,158 − 613.
    difference: '545',
  },
  {
    code: 'C40',
    says: 'an amount of 545.40 in the sum and in no line',
    cause: 'arrears-mixed-in',
    variant: 'hidden',
    bills: [paper({ billed: '99', lines: RIGHT, sum: '1158.31', payable: '1158' })],
    billed: '99',
    payable: '1158',
    difference: '545',
  },
  {
    code: 'C41',
    says: '34 days in place of 30, with readings that follow each other',
    cause: 'days-counted-otherwise',
    variant: '34 days',
    // k = 34/30: 56.67 × 3.00 + 42.33 × 4.80 = 170.00 + 203.20; fixed 272.00; 6 % = 22.39; subsidy 85.00.
    bills: [
      {
        ...paper({
          billed: '99',
          lines: { fixed: '272.00', energy: '373.20', fuel: '39.60', tax: '22.39', subsidy: '-85.00' },
          sum: '622.19',
          payable: '622',
        }),
        days: '34',
      },
    ],
    billed: '99',
    payable: '622',
    difference: '9',
  },
  {
    code: 'C42',
    says: 'every line rounded up',
    cause: 'rounded-otherwise',
    variant: 'line-up',
    bills: [
      paper({
        billed: '99',
        lines: { fixed: '240', energy: '386', fuel: '40', tax: '24', subsidy: '-75' },
        sum: '615',
        payable: '615',
      }),
    ],
    billed: '99',
    payable: '615',
    difference: '2',
  },
];

const figureOf = (bill: CheckedBill, name: string): string =>
  textOf(bill.explanations[0]?.attempt.figures.get(name));

describe('causes of slabs, charges and the account', () => {
  it.each(EXAMPLES)('$code makes the figures of its example: $says', (example) => {
    const cause = CAUSES.filter(({ id }) => id === example.cause);
    const alone = checkLast(example, cause);
    const variants = alone.explanations.map(({ attempt }) => attempt.steps[0]?.variant.id);
    expect([alone.verdict, variants]).toEqual(['wrong', [example.variant]]);
    expect([figureOf(alone, 'units.billed'), figureOf(alone, 'payable')]).toEqual([
      example.billed,
      example.payable,
    ]);
    expect(textOf(alone.difference)).toBe(example.difference);
  });

  it.each(EXAMPLES)('$code is found among all causes: $says', (example) => {
    const all = checkLast(example);
    expect(explainedBy(all)).toContain(example.cause);
    expect(all.explanations.every(({ attempt }) => attempt.steps.length === 1)).toBe(true);
  });
});
