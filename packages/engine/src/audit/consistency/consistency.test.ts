import { describe, expect, it } from 'vitest';
import type { TariffDocument } from '../../tariff/index.ts';
import { readAccount, type Account } from '../../readings/index.ts';
import type { PrintedBillDocument } from '../printed-document.ts';
import { readPrintedBill, type PrintedBill } from '../printed.ts';
import { CONSISTENCY_CHECKS, consistencyFindings, unknownLineFindings } from './index.ts';

// The base month of the project reference "causes", 2.1 (2026), with all its lines: a bill with nothing to ask about.
const RIGHT: PrintedBillDocument = {
  number: '17',
  account: 'TAR-40-00001',
  from: '2025-05-01',
  to: '2025-05-31',
  days: '30',
  factor: '1',
  serials: { grid: 'PB-77120', generation: 'GN-40316' },
  readings: {
    import: { previous: '12480', present: '12892' },
    export: { previous: '8310', present: '8588' },
    generation: { previous: '15225', present: '15805' },
  },
  units: { import: '412', export: '278', generation: '580', billed: '99' },
  opening: { credit: '35' },
  closing: { credit: '0' },
  slabs: [
    { units: '50', rate: '3.00', amount: '150.00' },
    { units: '49', rate: '4.80', amount: '235.20' },
  ],
  lines: [
    { charge: 'fixed', units: '4', rate: '60', amount: '240.00' },
    { charge: 'energy', amount: '385.20' },
    { charge: 'fuel', units: '99', rate: '0.40', amount: '39.60' },
    { charge: 'tax', amount: '23.11' },
    { charge: 'subsidy', units: '50', rate: '-1.50', amount: '-75.00' },
  ],
  sum: '612.91',
  rounding: '0.09',
  payable: '613',
};

function bill(changes: Partial<PrintedBillDocument> = {}): PrintedBill {
  const { value, findings } = readPrintedBill({ ...RIGHT, ...changes }, ['bills', 1]);
  if (value === null) throw new Error(findings[0]?.found ?? '');
  return value;
}

const register = { digits: '5', decimals: '0' };

function account(changes: object = {}): Account {
  const document = {
    format: 'unitbook-account-1',
    id: 'TAR-40-00001',
    sanctionedLoad: '4',
    plantCapacity: '5',
    openingCredit: '35',
    meters: {
      grid: { serial: 'PB-77120', multiplyingFactor: '1', import: register, export: register },
      generation: { serial: 'GN-40316', multiplyingFactor: '1', generation: register },
    },
    ...changes,
  };
  const { value } = readAccount(JSON.stringify(document));
  if (value === null) throw new Error('the account cannot be read');
  return value;
}

const codes = (
  changes: Partial<PrintedBillDocument>,
  before: PrintedBill | null = null,
  own: Account | null = null,
): readonly string[] =>
  consistencyFindings(bill(changes), before, own).map(({ code }) => code.replace('check/', ''));

/** The bill before: April, that left 35 units. */
const APRIL = bill({
  number: '16',
  from: '2025-04-01',
  to: '2025-05-01',
  readings: { import: { present: '12480' }, export: { present: '8310' }, generation: { present: '15225' } },
  units: {},
  opening: {},
  closing: { credit: '35' },
});

describe('a right bill', () => {
  it('raises no question, alone, after another and with its account', () => {
    expect(codes({})).toEqual([]);
    expect(codes({}, APRIL, account())).toEqual([]);
  });

  it('is looked at by sixteen checks, its total before all else', () => {
    expect(CONSISTENCY_CHECKS[0]?.id).toBe('lines-sum-to-total');
    expect(new Set(CONSISTENCY_CHECKS.map(({ id }) => id)).size).toBe(16);
  });
});

describe('the total', () => {
  it('comes first of several findings', () => {
    expect(codes({ days: '34', sum: '1612.91', rounding: '0.09', payable: '1613' })).toEqual([
      'lines-off-sum',
      'days-off-dates',
    ]);
  });

  it('takes in arrears, fees and corrections', () => {
    // 612.91 + 545.40 = 1,158.31: cause C40 of the same reference.
    const arrears = { arrears: '540', lateFee: '5.40', sum: '1158.31', rounding: '-0.31', payable: '1158' };
    expect(codes(arrears)).toEqual(['arrears-inside']);
    expect(codes({ ...arrears, adjustment: '-1' })).toEqual(['lines-off-sum', 'arrears-inside']);
  });

  it('without a printed rounding may be less than 1 off, and no more', () => {
    const rest = { rounding: undefined };
    expect(codes({ ...rest, payable: '613.90' })).toEqual([]);
    expect(codes({ ...rest, payable: '613.91' })).toEqual(['payable-far-from-sum']);
    expect(codes({ ...rest, payable: '611.91' })).toEqual(['payable-far-from-sum']);
  });

  it('without lines is not added up', () => {
    expect(codes({ lines: [], slabs: [] })).toEqual([]);
  });

  it('of numbers beyond any double is still added up exactly', () => {
    const lines = [
      { charge: 'energy', amount: '999999999999' },
      { charge: 'fuel', amount: '0.00000001' },
    ];
    const payable = { rounding: undefined, payable: '999999999999' };
    expect(codes({ lines, sum: '999999999999', ...payable })).toEqual(['lines-off-sum']);
  });
});

describe('an amount', () => {
  const fuel = (amount: string, units = '99', rate = '0.40'): Partial<PrintedBillDocument> => ({
    lines: [{ charge: 'fuel', units, rate, amount }],
    sum: undefined,
    rounding: undefined,
    payable: undefined,
  });

  it('may be rounded at its last digit, either way', () => {
    // 39.60: a whole rupee up or down is a rounding of whole rupees (C42), a paisa off is no rounding of paise.
    expect(codes(fuel('40'))).toEqual([]);
    expect(codes(fuel('39'))).toEqual([]);
    expect(codes(fuel('39.61'))).toEqual(['rate-off-amount']);
    expect(codes(fuel('41'))).toEqual(['rate-off-amount']);
  });

  it('of a long rate is multiplied exactly', () => {
    expect(codes(fuel('0.30', '0.1', '3.0000000000000000000000000001'))).toEqual([]);
    expect(codes(fuel('-75', '50', '-1.50'))).toEqual([]);
  });

  it('of a part of the energy charge is looked at too', () => {
    const slabs = [
      { units: '50', rate: '3.00', amount: '150.00' },
      { units: '49', rate: '4.80', amount: '236.20' },
    ];
    expect(codes({ slabs })).toEqual(['rate-off-amount']);
  });
});

describe('units', () => {
  const only = (
    previous: string,
    present: string,
    units: string,
    factor = '1',
  ): Partial<PrintedBillDocument> => ({
    readings: { import: { previous, present } },
    units: { import: units },
    opening: {},
    closing: {},
    slabs: [],
    factor,
  });

  it('of whole readings are their difference, to the last one', () => {
    expect(codes(only('12480', '12892', '412'))).toEqual([]);
    expect(codes(only('12480', '12892', '413'))).toEqual(['units-off-readings']);
  });

  it('of decimal readings may be rounded, and no more', () => {
    // Project reference "scenarios", 6.1 (2026): 4120.6 → 4342.1 is billed as 222, decimals cut at each reading.
    expect(codes(only('4120.6', '4342.1', '222'))).toEqual([]);
    expect(codes(only('4120.6', '4342.1', '221'))).toEqual([]);
    expect(codes(only('4120.6', '4342.1', '223'))).toEqual(['units-off-readings']);
  });

  it('go by the factor', () => {
    // Cause C03 of the reference "causes": 1,210.5 → 1,236.0 times 20 are 510, and 25.5 without.
    expect(codes(only('1210.5', '1236.0', '510', '20'))).toEqual([]);
    expect(codes(only('1210.5', '1236.0', '25.5', '20'))).toEqual(['units-off-readings']);
  });

  it('given may be 3 % more than made, and no more', () => {
    const given = (value: string): Partial<PrintedBillDocument> => ({
      readings: {},
      opening: {},
      units: { export: value, generation: '200' },
      slabs: [],
    });
    expect(codes(given('206'))).toEqual([]);
    expect(codes(given('207'))).toEqual(['export-above-generation']);
    // A battery gives what it took before.
    expect(codes(given('207'), null, account({ batteryCapacity: '5' }))).toEqual([]);
  });

  it('made are 0.3 to 7.5 for each kWp and day', () => {
    const made = (generation: string): Partial<PrintedBillDocument> => ({
      readings: {},
      opening: {},
      units: { generation },
      slabs: [],
    });
    // 5 kWp and 30 days: 45 to 1,125.
    for (const [value, wanted] of [
      ['44.9', ['yield-implausible']],
      ['45', []],
      ['1125', []],
      ['1125.1', ['yield-implausible']],
    ] as const)
      expect(codes(made(value), null, account())).toEqual(wanted);
  });

  it('behind a full scale are not asked about', () => {
    // Cause C09 of the same reference: 5 digits, 99,870 → 00,212.
    const passed = { ...only('99870', '212', '342') };
    expect(codes(passed, null, account())).toEqual([]);
    // Where nobody knows the digits, and where the register is far from its full scale (C10), they are.
    expect(codes(passed)).toEqual(['reading-back']);
    expect(codes(only('12960', '12892', '0'), null, account())).toEqual(['reading-back']);
  });
});

describe('credit', () => {
  it('carried forward is what came in less what was set off', () => {
    // 35 + 310 − 180 = 165.
    const surplus = { readings: {}, slabs: [], units: { import: '180', export: '310', billed: '0' } };
    expect(codes({ ...surplus, closing: { credit: '165' } })).toEqual([]);
    expect(codes({ ...surplus, closing: { credit: '166' } })).toEqual(['credit-made-up']);
    expect(codes({ ...surplus, closing: { credit: '164' } })).toEqual(['credit-gone']);
    expect(codes({ ...surplus, closing: { credit: '-165' } })).toEqual(['credit-below-zero', 'credit-gone']);
  });

  it('is worked out where the bill does not print what it bills', () => {
    const units = { import: '412', export: '278' };
    expect(codes({ units, slabs: [] })).toEqual([]);
    expect(codes({ units, slabs: [], closing: { credit: '1' } })).toEqual(['credit-made-up']);
  });
});

describe('a bill after another', () => {
  it('begins with its readings and its credit', () => {
    const readings = { ...RIGHT.readings, import: { previous: '12060', present: '12472' } };
    expect(codes({ readings }, APRIL)).toEqual(['reading-not-handed-on']);
    expect(codes({ opening: { credit: '0' }, units: { billed: '134' }, slabs: [] }, APRIL)).toEqual([
      'credit-not-handed-on',
    ]);
  });

  it('behind a gap is asked about its days alone', () => {
    const earlier = bill({ number: '15', from: '2025-03-01', to: '2025-04-01', closing: { credit: '7' } });
    expect(codes({}, earlier)).toEqual(['days-missing']);
  });

  it('of another meter is asked about its number alone', () => {
    const readings = { import: { previous: '7', present: '209' } };
    const changes = { readings, units: { billed: '99' }, serials: { grid: 'PB-90001' } };
    expect(codes(changes, APRIL)).toEqual(['serial-changed']);
    expect(codes({ serials: { grid: 'pb 77120' } }, APRIL, account())).toEqual([]);
  });

  it('of the meter that the account says came later is not asked about', () => {
    const grid = { multiplyingFactor: '1', import: register, export: register };
    const meters = {
      grid: { serial: 'PB-77120', ...grid, later: [{ from: '2025-05-10', serial: 'PB-90001', ...grid }] },
    };
    const changes = { serials: { grid: 'PB-90001' } };
    expect(codes(changes, null, account({ meters }))).toEqual([]);
    expect(codes(changes, null, account())).toEqual(['other-meter']);
  });

  it('that asks for arrears of one that is paid is asked for them', () => {
    const arrears = { arrears: '540', sum: '1152.91', rounding: '0.09', payable: '1153' };
    const paid = (amount: string): PrintedBill =>
      bill({ ...APRIL.document, payable: '613', paid: { on: '2025-05-12', amount } });
    expect(codes(arrears, paid('613'))).toEqual(['arrears-though-paid']);
    expect(codes(arrears, paid('73'))).toEqual(['arrears-inside']);
    expect(codes(arrears, APRIL)).toEqual(['arrears-inside']);
  });
});

describe('a line', () => {
  const tariff = {
    versions: [
      { from: '2020-01-01', through: '2025-03-31', charges: [{ id: 'old' }] },
      { from: '2025-04-01', charges: [{ id: 'energy' }] },
    ],
  } as unknown as TariffDocument;
  const unknown = (charge: string): number =>
    unknownLineFindings(bill({ lines: [{ charge, amount: '1' }] }), tariff).length;

  it('is of a charge in force on the days of the bill, or pays for surplus', () => {
    expect([unknown('energy'), unknown('surplus'), unknown('old'), unknown('tithe')]).toEqual([0, 0, 1, 1]);
  });

  it('of days that no version covers is not asked about: there is no tariff to compare it with', () => {
    const days = { from: '2019-05-01', to: '2019-05-31' };
    expect(unknownLineFindings(bill({ ...days, lines: [{ charge: 'tithe', amount: '1' }] }), tariff)).toEqual(
      [],
    );
  });
});
