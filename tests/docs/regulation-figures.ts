import type { WorkedCase } from '@unitbook/engine';

type Expected = NonNullable<WorkedCase['periods'][number]['expected']>;

/**
 * What rows of the table come to in March and April 2026, worked out by hand.
 *
 * March: import 100 peak + 200 off = 300, export 50 peak + 450 off = 500, generation 700, 5 kW, demand 6 kW.
 * April: the same, but import 900 off-peak: 1,000 in all.
 *
 * So `net` sets off 300 in March and leaves 200, which `bank` carries; in April 200 + 500 = 700 are set off and
 * 300 × 6 = 1,800 billed. `fixed` is 60 × 31 ÷ 30 = 62, then 60. `feed-in` is 500 × 3 = 1,500 in both.
 */
export const FIGURES: readonly (readonly [says: string, march: Expected, april: Expected])[] = [
  [
    'The value of units given is set off in money; what is left is carried as money (net billing)',
    { lines: { 'own-0': '0' }, ledgers: { credit: { added: '1500', closing: '1500' } } },
    // The balance of 1,500 is used first, then 300 of April's 1,500.
    { lines: { 'own-0': '-1800' }, ledgers: { credit: { used: '1500', added: '1200', closing: '1200' } } },
  ],
  [
    'Units go to a bank, a bonus in money to an account beside it',
    // 700 × 0.20 = 140, of which 62 meet the fixed charge.
    { lines: { 'own-1': '-62' }, ledgers: { bonus: { closing: '78' } } },
    // 78 + 140 − 60 = 158.
    { lines: { 'own-1': '-60' }, ledgers: { bonus: { used: '60', added: '140', closing: '158' } } },
  ],
  [
    'An off-peak unit counts for 80 % of a peak unit, a peak unit for 120 % of an off-peak unit',
    // 100 ÷ 0.8 = 125 off-peak units meet the peak; 50 × 1.2 = 60 of off-peak import are met.
    {
      quantities: {
        blocks: '160',
        'blocks.export@off': '325',
        'blocks.export@peak': '0',
        'blocks.import@off': '140',
      },
    },
    {},
  ],
  [
    'By the ratio of the prices, such as 5 to 8',
    // 100 ÷ 0.625 = 160.
    { quantities: { blocks: '100', 'blocks.export@off': '290' } },
    {},
  ],
  [
    'Peak units may help off-peak hours, never the other way',
    // Peak: 50 of 100 met, none left to help. Off-peak: 200 met.
    { quantities: { 'blocks.import@peak': '50', 'blocks.import@off': '0', 'blocks.export@off': '250' } },
    // Off-peak: 450 of 900 met, and off-peak units never help the peak.
    { quantities: { 'blocks.import@peak': '50', 'blocks.import@off': '450' } },
  ],
  [
    'In the same block first, then in others',
    // 50 + 200 inside, then 50 of the 250 left off-peak meet the rest of the peak.
    { quantities: { blocks: '300', 'blocks.export@off': '200' } },
    { quantities: { 'blocks.import@peak': '50', 'blocks.import@off': '450' } },
  ],
  [
    'At most 90 % of the units taken are set off in a period',
    // 270 of 300; 500 − 270 = 230 are banked.
    { lines: { energy: '180' }, ledgers: { bank: { closing: '230' } } },
    // At most 900, and 230 + 500 = 730 are there.
    { lines: { energy: '1620' }, ledgers: { bank: { closing: '0' } } },
  ],
  [
    'Over a year that is billed month by month: all taken less all given since 1 April, not below 0',
    { quantities: { now: '-200', charged: '0' }, lines: { 'own-0': '0' } },
    // A new year begins: 1,000 − 500.
    { quantities: { now: '500', before: '0', charged: '500' }, lines: { 'own-0': '3000' } },
  ],
  [
    'Over the last 36 periods',
    { quantities: { 'three-years': '500' } },
    { quantities: { 'three-years': '1000' } },
  ],
  [
    'At most 10 % of what the plant made is paid, the rest lapses',
    { ledgers: { bank: { paid: '70', lapsed: '130', closing: '0' } } },
    // 70 × 3 = 210: 60 + 1,500 + (1,000 − 500) × 6 − 210.
    { payable: '4350' },
  ],
  [
    'The energy charge of the same block',
    // 50 × 5 of 100 × 8; the rest of the block is charged.
    { lines: { peak: '800', 'own-2': '-250' } },
    {},
  ],
  [
    'Everything, tax too',
    // 5 % of 62 = 3.10; 65.10 are met.
    { lines: { tax: '3.10', 'own-1': '-65.10' }, ledgers: { credit: { closing: '1434.90' } }, payable: '0' },
    // 5 % of 1,860 = 93; 1,953 are met of 1,434.90 + 1,500.
    { lines: { tax: '93', 'own-1': '-1953' }, ledgers: { credit: { closing: '981.90' } }, payable: '0' },
  ],
  [
    'At most 80 % of the energy charge',
    { ledgers: { credit: { closing: '1500' } } },
    // 80 % of 1,800 = 1,440, from the balance.
    { lines: { 'own-0': '-1440' }, ledgers: { credit: { used: '1440', added: '1500', closing: '1560' } } },
  ],
  [
    'A demand charge: the highest demand, at least 85 % of the load, and double above the load',
    // 6 kW × 150, and once more on 6 − 5 = 1.
    { lines: { 'own-0': '900', 'own-1': '150' } },
    {},
  ],
  [
    'A tax whose percentage rises with use',
    { lines: { 'own-0': '0' } },
    // 6 % of 1,800.
    { lines: { 'own-0': '108' } },
  ],
  ['A price for the units from 100 to 300', { lines: { 'own-0': '0' } }, { lines: { 'own-0': '1000' } }],
  [
    'Slabs of summer and slabs of winter',
    {},
    // April is summer: 300 × 3.
    { lines: { 'summer-energy': '900' } },
  ],
  [
    'A connection that becomes three-phase inside a period',
    // 40 × 15 ÷ 30 + 75 × 16 ÷ 30.
    { lines: { service: '60' } },
    { lines: { service: '40' } },
  ],
  [
    '… on every second 31 March, first on the one after the connection',
    { ledgers: { bank: { lapsed: '200', closing: '0' } } },
    {},
  ],
  [
    'It is settled when a year since the connection has gone by',
    { ledgers: { bank: { lapsed: '0', closing: '200' } } },
    {},
  ],
  [
    'A dearer summer',
    {},
    // From 1 April: 300 × 0.80.
    { lines: { 'own-0': '240' } },
  ],
  [
    'Tax on what the credit leaves',
    {},
    // 5 % of 1,800 − 1,500 = 300.
    { lines: { 'own-1': '15' } },
  ],
  ['Tax before the credit', {}, { lines: { 'own-1': '90' } }],
  [
    'In a cycle of more than 30 days only the units of 30 days are set off; the rest is carried',
    // 500 × 30 ÷ 31 = 483.87, cut down 483; 183 left and 17 late.
    { quantities: { counted: '483', late: '17', banked: '200' }, ledgers: { bank: { closing: '200' } } },
    { quantities: { counted: '500', late: '0' } },
  ],
];
