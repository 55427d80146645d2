import { parseDay, type DayNumber, type ReadingRow } from '@unitbook/engine';
import {
  accountOf,
  DOMESTIC,
  SHOP,
  type Known,
  type Paper,
  type ReferenceTariff,
} from './readings-cause-bills.ts';

// Every example of "Why a net-metered bill is wrong, or right but surprising" (project reference, 2025), section 2.2:
// units billed, what is to be paid and the difference are typed from there, or worked out in a comment where it gives
// none.

/** Before the base month: 420 taken, 455 given, so that 35 are brought forward. */
const APRIL: ReadingRow = { date: '2025-04-01', import: '12060', export: '7855', generation: '14625' };
const OPENED: ReadingRow = { date: '2025-05-01', import: '12480', export: '8310', generation: '15225' };
const CLOSED: ReadingRow = { date: '2025-05-31', import: '12892', export: '8588', generation: '15805' };
/** The base month: what the meters showed. */
export const BASE: Known = {
  tariff: DOMESTIC.text,
  account: accountOf(DOMESTIC),
  readings: [APRIL, OPENED, CLOSED],
};

const IMPORT = ['12480', '12892'] as const;
const EXPORT = ['8310', '8588'] as const;
const GENERATION = ['15225', '15805'] as const;
const READ = { import: IMPORT, export: EXPORT, generation: GENERATION };
/** The base month as it should be printed. */
export const RIGHT: Paper = { readings: READ, imported: 412, exported: 278, generation: 580, opening: 35 };

const SHOP_KNOWN: Known = {
  tariff: SHOP.text,
  account: accountOf(SHOP),
  readings: [
    { date: '2025-05-01', import: '1210.5', export: '402.0', generation: '900' },
    { date: '2025-05-31', import: '1236.0', export: '410.5', generation: '1200' },
  ],
};
const SHOP_READ = { import: ['1210.5', '1236'], export: ['402', '410.5'] } as const;
const SHOP_RIGHT: Paper = { readings: SHOP_READ, imported: 510, exported: 170, opening: 0 };

const REPLACED: Known = {
  ...BASE,
  account: accountOf(DOMESTIC, { later: '2025-05-16' }),
  readings: [
    APRIL,
    OPENED,
    { date: '2025-05-16', import: '12690', export: '8450', event: 'final' },
    { date: '2025-05-16', import: '7', export: '0', event: 'first' },
    { date: '2025-05-31', import: '209', export: '138', generation: '15805' },
  ],
};
const REPLACED_RIGHT: Paper = {
  ...RIGHT,
  readings: { import: ['12480', '209'], export: ['8310', '138'], generation: GENERATION },
};

/** An example: what is known, what is printed, and what the reference says of it. */
export interface Example {
  readonly code: string;
  readonly cause: string;
  readonly variant: string;
  readonly known?: Known;
  readonly tariff?: ReferenceTariff;
  readonly paper: Paper;
  /** Units billed, what is to be paid, and by how much that is too much. */
  readonly says: readonly [billed: string, payable: string, difference: string];
  /** Other causes that make the same bill, in order. */
  readonly ties?: readonly string[];
}

const day = (value: string): DayNumber => parseDay(value) as DayNumber;
/** Some registers of the base month as printed otherwise. */
export const withReadings = (readings: Paper['readings']): Pick<Paper, 'readings'> => ({
  readings: { ...READ, ...readings },
});

/** The examples, in the order of the reference. */
export const EXAMPLES: readonly Example[] = [
  {
    code: 'C01 export not read',
    cause: 'export-not-read',
    variant: 'all',
    paper: { ...RIGHT, exported: 0, ...withReadings({ export: ['8310', '8310'] }) },
    says: ['377', '2670', '2057'],
  },
  {
    code: 'C02 import and export swapped',
    cause: 'registers-swapped',
    variant: 'both',
    paper: { ...RIGHT, imported: 278, exported: 412, ...withReadings({ import: EXPORT, export: IMPORT }) },
    says: ['0', '240', '-373'],
  },
  {
    code: 'C02 swapped in a home with a surplus',
    cause: 'registers-swapped',
    variant: 'both',
    known: {
      ...BASE,
      readings: [
        { date: '2025-05-01', import: '1000', export: '2000', generation: '5000' },
        { date: '2025-05-31', import: '1180', export: '2310', generation: '5400' },
      ],
    },
    paper: {
      readings: { import: ['2000', '2310'], export: ['1000', '1180'] },
      imported: 310,
      exported: 180,
      opening: 0,
    },
    says: ['130', '783', '543'],
  },
  {
    code: 'C03 factor ignored',
    cause: 'factor-ignored',
    variant: 'both',
    known: SHOP_KNOWN,
    tariff: SHOP,
    paper: { ...SHOP_RIGHT, imported: 25.5, exported: 8.5 },
    says: ['17', '1453', '-2526'],
  },
  {
    code: 'C03 factor ignored though printed',
    cause: 'factor-ignored',
    variant: 'both',
    known: SHOP_KNOWN,
    tariff: SHOP,
    paper: { ...SHOP_RIGHT, imported: 25.5, exported: 8.5, factor: '20' },
    says: ['17', '1453', '-2526'],
  },
  {
    code: 'C04 factor applied twice',
    cause: 'factor-squared',
    variant: 'both',
    known: SHOP_KNOWN,
    tariff: SHOP,
    paper: { ...SHOP_RIGHT, imported: 10_200, exported: 3400 },
    says: ['6800', '54496', '50517'],
  },
  {
    code: 'C05 factor on import only',
    cause: 'factor-on-one-register',
    variant: 'import',
    known: SHOP_KNOWN,
    tariff: SHOP,
    paper: { ...SHOP_RIGHT, exported: 8.5 },
    says: ['501.5', '5242', '1263'],
  },
  {
    code: 'C06 stale opening',
    cause: 'stale-opening',
    variant: 'import',
    paper: { ...RIGHT, imported: 832, ...withReadings({ import: ['12060', '12892'] }) },
    says: ['519', '3931', '3318'],
  },
  {
    code: 'C06 gap',
    cause: 'stale-opening',
    variant: 'printed',
    // 392 − 278 − 35 = 79: 150 + 29 × 4.80 = 289.20; 240 + 289.20 + 31.60 + 17.35 − 75 = 503.15.
    paper: { ...RIGHT, imported: 392, ...withReadings({ import: ['12500', '12892'] }) },
    says: ['79', '503', '-110'],
  },
  {
    code: 'C07 estimate of import only',
    cause: 'estimated-reading',
    variant: 'import-only',
    paper: {
      ...RIGHT,
      imported: 430,
      exported: 0,
      status: 'estimated',
      ...withReadings({ import: ['12480', '12910'], export: ['8310', '8310'] }),
    },
    says: ['395', '2830', '2217'],
  },
  {
    code: 'C07 estimate of both registers',
    cause: 'estimated-reading',
    variant: 'both',
    // Rule 7.6. 397 − 265 − 35 = 97: 150 + 47 × 4.80 = 375.60; 240 + 375.60 + 38.80 + 22.54 − 75 = 601.94.
    paper: {
      ...RIGHT,
      imported: 397,
      exported: 265,
      status: 'estimated',
      ...withReadings({ import: ['12480', '12877'], export: ['8310', '8575'] }),
    },
    says: ['97', '602', '-11'],
  },
  {
    code: 'C08 two digits transposed',
    cause: 'digit-error',
    variant: 'import present transposed 129820',
    paper: { ...RIGHT, imported: 502, ...withReadings({ import: ['12480', '12982'] }) },
    says: ['189', '1177', '564'],
  },
  {
    code: 'C08 red digit taken for a unit',
    cause: 'digit-error',
    variant: 'import present decimal',
    known: { ...BASE, readings: [APRIL, OPENED, { ...CLOSED, import: '12892.4' }] },
    paper: { ...RIGHT, imported: 116_444, ...withReadings({ import: ['12480', '128924'] }) },
    says: ['116131', '1030566', '1029953'],
  },
  {
    code: 'C08 a 0 too many',
    cause: 'digit-error',
    variant: 'import units zero',
    // 4,120 − 313 = 3,807: 1,605 + 3,507 × 8 = 29,661; 240 + 29,661 + 1,522.80 + 1,779.66 − 75 = 33,128.46.
    paper: { ...RIGHT, imported: 4120 },
    says: ['3807', '33128', '32515'],
  },
  {
    code: 'C08 one digit wrong',
    cause: 'digit-error',
    variant: 'import present digit',
    // 1,412 − 313 = 1,099: 1,605 + 799 × 8 = 7,997; 240 + 7,997 + 439.60 + 479.82 − 75 = 9,081.42.
    paper: { ...RIGHT, imported: 1412, ...withReadings({ import: ['12480', '13892'] }) },
    says: ['1099', '9081', '8468'],
  },
  {
    code: 'C08 a digit too many inside',
    cause: 'digit-error',
    variant: 'import present longer',
    // 123,892 − 12,480 = 111,412; less 313: 111,099. 1,605 + 110,799 × 8 = 887,997; tax 53,279.82; fuel 44,439.60;
    // 240 + 887,997 + 44,439.60 + 53,279.82 − 75 = 985,881.42.
    paper: { ...RIGHT, imported: 111_412, ...withReadings({ import: ['12480', '123892'] }) },
    says: ['111099', '985881', '985268'],
  },
  {
    code: 'C08 last digit of the units lost',
    cause: 'digit-error',
    variant: 'import units shorter',
    // 41 − 278 − 35 < 0: the fixed charge alone.
    paper: { ...RIGHT, imported: 41 },
    says: ['0', '240', '-373'],
  },
  {
    code: 'C09 rollover as a difference',
    cause: 'rollover-as-difference',
    variant: 'import',
    known: {
      ...BASE,
      readings: [
        { ...APRIL, import: '99450' },
        { ...OPENED, import: '99870' },
        { ...CLOSED, import: '212' },
      ],
    },
    paper: { ...RIGHT, imported: 99_658, ...withReadings({ import: ['99870', '212'] }) },
    says: ['99345', '881506', '881206'],
  },
  {
    code: 'C10 step back as a rollover',
    cause: 'step-back-as-rollover',
    variant: 'import',
    // The opening was an estimate: nothing but the bill itself is known of it. Right: −68, the fixed charge alone.
    known: { ...BASE, account: accountOf(DOMESTIC, { opening: '35' }), readings: [] },
    paper: { ...RIGHT, imported: 99_932, ...withReadings({ import: ['12960', '12892'] }) },
    says: ['99619', '883939', '883699'],
  },
  {
    code: 'C11 old part dropped',
    cause: 'meter-replaced',
    variant: 'old-part',
    known: REPLACED,
    paper: { ...REPLACED_RIGHT, imported: 202, exported: 138 },
    says: ['29', '300', '-313'],
  },
  {
    code: 'C11 old export dropped',
    cause: 'meter-replaced',
    variant: 'old-export',
    known: REPLACED,
    paper: { ...REPLACED_RIGHT, exported: 138 },
    says: ['239', '1542', '929'],
  },
  {
    code: 'C11 start of the new meter ignored',
    cause: 'meter-replaced',
    variant: 'import-start',
    known: REPLACED,
    // 419 − 278 − 35 = 106: 150 + 56 × 4.80 = 418.80; 240 + 418.80 + 42.40 + 25.13 − 75 = 651.33.
    paper: { ...REPLACED_RIGHT, imported: 419 },
    says: ['106', '651', '38'],
  },
  {
    code: 'C11 new reading less the old one',
    cause: 'meter-replaced',
    variant: 'across-import-old-export',
    known: REPLACED,
    // 209 + 100,000 − 12,480 = 87,729; the figure of the reference is that of 138 given, by the new meter alone.
    paper: { ...REPLACED_RIGHT, imported: 87_729, exported: 138 },
    says: ['87556', '776820', '776207'],
  },
  {
    code: 'C12 generation as import',
    cause: 'generation-billed-as-import',
    variant: 'instead',
    paper: { ...RIGHT, imported: 580, ...withReadings({ import: GENERATION }) },
    says: ['267', '1746', '1133'],
  },
  {
    code: 'C12 generation added to import',
    cause: 'generation-billed-as-import',
    variant: 'added',
    paper: { ...RIGHT, imported: 992 },
    says: ['679', '5352', '4739'],
  },
  {
    code: 'C13 export added to import',
    cause: 'export-added-to-import',
    variant: 'added',
    paper: {
      ...RIGHT,
      imported: 690,
      exported: 0,
      ...withReadings({ import: ['12480', '13170'], export: ['8310', '8310'] }),
    },
    says: ['655', '5139', '4526'],
    // 690 is a round number, and nothing is given: it could be an estimate too.
    ties: ['estimated-reading'],
  },
  {
    code: 'C14 phases one by one',
    cause: 'phase-wise-registers',
    variant: 'both',
    paper: {
      ...RIGHT,
      imported: 532,
      exported: 398,
      ...withReadings({ import: ['12480', '13012'], export: ['8310', '8708'] }),
    },
    says: ['99', '613', '0'],
  },
  {
    code: 'C15 a third of generation',
    cause: 'generation-meter-wrong',
    variant: 'third',
    paper: { ...RIGHT, generation: 193, ...withReadings({ generation: ['15225', '15418.3'] }) },
    says: ['99', '613', '0'],
  },
  {
    code: 'C16 another meter',
    cause: 'another-meter',
    variant: 'printed',
    // 587 − 35 = 552: 1,605 + 252 × 8 = 3,621; 240 + 3,621 + 220.80 + 217.26 − 75 = 4,224.06.
    paper: {
      ...RIGHT,
      imported: 587,
      exported: 0,
      serial: 'PB-31807',
      readings: { import: ['20411', '20998'] },
    },
    says: ['552', '4224', '3611'],
  },
  {
    code: 'C17 net register as import',
    cause: 'net-register-as-import',
    variant: 'net',
    paper: { ...RIGHT, imported: 134, ...withReadings({ import: ['4170', '4304'] }) },
    says: ['0', '240', '-373'],
  },
  {
    code: 'C18 total and rates added',
    cause: 'total-and-rates-added',
    variant: 'import',
    paper: { ...RIGHT, imported: 824 },
    says: ['511', '3860', '3247'],
  },
  {
    code: 'C19 last-bill register',
    cause: 'frozen-register',
    variant: 'import',
    paper: { ...RIGHT, imported: 0, ...withReadings({ import: ['12480', '12480'] }) },
    says: ['0', '240', '-373'],
  },
  {
    code: 'C25 export counted late',
    cause: 'export-counted-late',
    variant: 'none',
    known: {
      ...BASE,
      connected: day('2025-05-10'),
      readings: [
        { ...OPENED, export: '0', generation: '0' },
        { ...CLOSED, export: '205', generation: '300' },
      ],
    },
    paper: { readings: { import: IMPORT }, imported: 412, exported: 0, opening: 0 },
    says: ['412', '2981', '1673'],
    // The same figures: the day of the connection tells them apart.
    ties: ['export-not-read'],
  },
];
