import { describe, expect, it } from 'vitest';
import { accountOf, changed, demoTariff, goodTariff } from '../../../tests/support/demo.ts';
import { LEDGER_READINGS, LEDGER_TARIFF } from '../../../tests/support/ledgers.ts';
import { dayOf, valueOf } from '../../../tests/support/make.ts';
import { passbookOf } from '../../../tests/support/passbook.ts';
import { unexplained } from '../../../tests/support/recompute.ts';
import { bookDocument } from './book-document.ts';
import { keepBook, type Book, type BookMonth } from './book.ts';
import { prepareTariff } from './bill/index.ts';
import type { Figure } from './quantity/index.ts';
import type { ReadingRow } from './readings/index.ts';
import type { Tariff } from './tariff/index.ts';
import { workedOut } from './worked-out.ts';

const row = (date: string, taken: string, given: string, generation: string): ReadingRow => ({
  date,
  import: taken,
  export: given,
  generation,
});

/** A house of 3 kW with 3.3 kWp, April and May 2025. */
const SMALL_HOUSE = accountOf({ sanctionedLoad: '3', plantCapacity: '3.3' });
const APRIL_AND_MAY = [
  row('2025-04-01', '4120.6', '2655.2', '6890.4'),
  row('2025-05-01', '4342.1', '2935.8', '7318.0'),
  row('2025-06-01', '4640.3', '3151.0', '7689.7'),
];

function keep(readings: readonly ReadingRow[], { account = accountOf(), tariff = demoTariff() } = {}): Book {
  return keepBook({ account, tariff, readings }).value;
}

const energy = ({
  energy: { import: taken, export: given, generation, selfConsumption, totalUse },
}: BookMonth) =>
  [taken, given, generation, selfConsumption, totalUse].map((figure) =>
    figure === null ? null : valueOf(figure),
  );

const payable = ({ bill }: BookMonth): string => valueOf(bill.payable);

describe('an account book', () => {
  it('bills two months and carries 58 units from the first into the second', () => {
    const { months, paymentsDue } = keep(APRIL_AND_MAY, { account: SMALL_HOUSE });
    expect(months.map(energy)).toEqual([
      ['222', '280', '428', '148', '370'],
      ['298', '216', '371', '155', '453'],
    ]);
    expect(months.map(passbookOf).map(({ billed, closing }) => [billed, closing].map(valueOf))).toEqual([
      ['0', '58'],
      ['24', '0'],
    ]);
    expect(months.map(payable)).toEqual(['180', '230']);
    expect(paymentsDue).toEqual([]);
  });

  it('says what solar saved in them', () => {
    const { months } = keep(APRIL_AND_MAY, { account: SMALL_HOUSE });
    // April without solar, 370 units: 180 + 2165.00 + 148.00 + 129.90 − 75 = 2547.90
    // May without solar, 453 units: 180 + 2829.00 + 181.20 + 169.74 − 75 = 3284.94
    expect(months.map(({ savings }) => (savings === null ? null : valueOf(savings.saving)))).toEqual([
      '2368', // 2548 − 180
      '3055', // 3285 − 230
    ]);
  });

  it('begins with the credit that the account brings', () => {
    const account = accountOf({ openingCredit: '35' });
    const readings = [
      row('2025-04-01', '12480', '8310', '15225'),
      row('2025-05-01', '12892', '8588', '15805'),
    ];
    const [month] = keep(readings, { account }).months;
    const figures = month === undefined ? [] : [passbookOf(month).billed, month.bill.payable];
    expect(figures.map(valueOf)).toEqual(['99', '613']);
  });

  it('explains every figure of every month, down to what was read', () => {
    for (const month of keep(APRIL_AND_MAY).months) {
      const { bill, energy: measured, ratios, savings } = month;
      const { opening, setOff, creditUsed, billed, paid, lapsed, closing } = passbookOf(month);
      const figures: readonly (Figure | null | undefined)[] = [
        ...bill.lines.map((line) => line.figure),
        ...[bill.payable, bill.roundingDifference],
        ...[opening, setOff, creditUsed, billed, paid, lapsed, closing],
        ...[
          measured.import,
          measured.export,
          measured.generation,
          measured.selfConsumption,
          measured.totalUse,
        ],
        ...[ratios.selfConsumptionShare, ratios.selfSufficiency, ratios.specificYield],
        ...[savings?.saving, savings?.fromExport, savings?.fromSelfConsumption],
      ];
      const known = figures.filter((figure) => figure !== null && figure !== undefined);
      expect(known.flatMap(unexplained).map(({ id }) => id)).toEqual([]);
    }
  });

  it('is the same with a tariff that was prepared before', () => {
    const tariff = demoTariff();
    const input = { account: SMALL_HOUSE, readings: APRIL_AND_MAY };
    const prepared = prepareTariff(tariff);
    const documentOf = (book: Book) => JSON.stringify(bookDocument(book, []));
    const plain = documentOf(keepBook({ ...input, tariff }).value);
    expect(documentOf(keepBook({ ...input, tariff: prepared }).value)).toBe(plain);
    expect(documentOf(keepBook({ ...input, tariff: prepared }).value)).toBe(plain);
  });
});

describe('surplus of the settlement year', () => {
  const MARCH_AND_APRIL = [
    row('2025-03-01', '0', '0', '0'),
    row('2025-04-01', '100', '740', '900'),
    row('2025-05-01', '512', '1018', '1480'),
  ];
  const sameBill = demoTariff(['"inBill": "next"', '"inBill": "same"']);

  it('is due after the last month', () => {
    const { months, paymentsDue } = keep(MARCH_AND_APRIL.slice(0, 2));
    expect(months.map(payable)).toEqual(['240']);
    expect(paymentsDue[0]).toMatchObject({ rate: '2.60', clause: 'NMR-2021 r. 7.3', inBill: 'next' });
    expect(paymentsDue.map(({ units }) => valueOf(units))).toEqual(['640']);
  });

  it('is paid in the next bill, once, and the bank begins again at 0', () => {
    const { months, paymentsDue } = keep(MARCH_AND_APRIL);
    // April: 134 units are 804.99; 640 × 2.60 = 1664.00
    expect(months.map(payable)).toEqual(['240', '-859']);
    expect(months.map((month) => valueOf(passbookOf(month).closing))).toEqual(['0', '0']);
    expect(
      months.map(({ bill }) => bill.lines.filter(({ figure }) => figure.id === 'surplus').length),
    ).toEqual([0, 1]);
    expect(paymentsDue).toEqual([]);
    const may = row('2025-06-01', '600', '1100', '1800');
    // 88 − 82 = 6 units: 240 + 18.00 + 2.40 + 1.08 − 9.00 = 252.48
    expect(keep([...MARCH_AND_APRIL, may]).months.map(payable)).toEqual(['240', '-859', '252']);
  });

  it('is paid in the same bill where the rule says so', () => {
    const { months, paymentsDue } = keep(MARCH_AND_APRIL, { tariff: sameBill });
    expect(months.map(payable)).toEqual(['-1424', '805']);
    expect(paymentsDue).toEqual([]);
  });
});

describe('a book with ledgers in place of the passbook', () => {
  const tariff = goodTariff(LEDGER_TARIFF);
  const columns = ({ ledgers }: BookMonth, id: string) =>
    ledgers
      .filter((ledger) => ledger.id === id)
      .flatMap(({ opening, added, used, paid, lapsed, closing }) =>
        [opening, added, used, paid, lapsed, closing].map(valueOf),
      );

  it('carries units and money from month to month', () => {
    const { months } = keep(LEDGER_READINGS, { tariff });
    expect(months.map(({ passbook }) => passbook)).toEqual([null, null, null]);
    // 160 given, 100 taken: 60 banked. 70 given, 110 taken: 40 of the bank, and 20 are paid on 31 March.
    expect(months.map((month) => columns(month, 'bank'))).toEqual([
      ['0', '60', '0', '0', '0', '60'],
      ['60', '0', '40', '20', '0', '0'],
      ['0', '0', '0', '0', '0', '0'],
    ]);
    // 160 × 0.50 and 70 × 0.50 with no energy charge to meet; then 30 × 0.50 and all before it meet 300.00.
    expect(months.map((month) => columns(month, 'rewards'))).toEqual([
      ['0', '80', '0', '0', '0', '80'],
      ['80', '35', '0', '0', '0', '115'],
      ['115', '0', '115', '0', '0', '0'],
    ]);
    // 60; 60 − 20 × 2.50; 60 + (90 − 30) × 5.00 − 115.00 − 15.00
    expect(months.map(payable)).toEqual(['60', '10', '230']);
  });

  it('says what solar saved in them', () => {
    const { months } = keep(LEDGER_READINGS, { tariff });
    // Without solar 190, 240 and 210 units: 1010, 1260, 1110. Without export 100, 110, 90: 560, 610, 510.
    const split = months.map(({ savings }) =>
      savings === null
        ? null
        : [savings.saving, savings.fromSelfConsumption, savings.fromExport].map(valueOf),
    );
    expect(split).toEqual([
      ['950', '450', '500'],
      ['1250', '650', '600'],
      ['880', '600', '280'],
    ]);
  });

  it('explains every figure of every ledger and every quantity', () => {
    for (const { ledgers, quantities, bill, savings } of keep(LEDGER_READINGS, { tariff }).months) {
      const figures = [
        ...ledgers.flatMap(({ opening, added, used, paid, lapsed, closing }) => [
          ...[opening, added, used],
          ...[paid, lapsed, closing],
        ]),
        ...Object.values(quantities),
        ...bill.lines.map((line) => line.figure),
        ...[bill.payable, savings?.saving].filter((figure) => figure !== undefined),
      ];
      expect(figures.flatMap(unexplained).map(({ id }) => id)).toEqual([]);
    }
  });

  it('has what was worked out and is used, and nothing that was given', () => {
    const [, march] = keep(LEDGER_READINGS, { tariff }).months;
    const figures = march === undefined ? [] : workedOut(tariff, march);
    expect(figures.map((figure) => [figure.label, valueOf(figure)])).toEqual([
      ['Units given to the grid, left by: Units set off', '0'],
      ['Bank of units, brought forward, left by: Units set off', '20'],
      ['Units taken from the grid, left by: Units set off', '0'],
    ]);
    const [april] = keep(APRIL_AND_MAY).months;
    expect(april === undefined ? null : workedOut(demoTariff(), april)).toEqual([]);
  });

  it('ends with everything that the next bill pays', () => {
    const next = goodTariff(changed(LEDGER_TARIFF, '"inBill": "same"', '"inBill": "next"'));
    const { paymentsDue } = keep(LEDGER_READINGS.slice(0, 3), { tariff: next });
    expect(paymentsDue[0]).toMatchObject({ rate: '2.50', label: 'Surplus units', clause: 'TR 5.4' });
    expect(paymentsDue.map(({ units }) => valueOf(units))).toEqual(['20']);
  });
});

describe('a book that cannot go on', () => {
  const codes = (readings: readonly ReadingRow[], tariff: Tariff = demoTariff()) => {
    const { value, findings } = keepBook({ account: accountOf(), tariff, readings });
    return { months: value.months.length, codes: findings.map(({ code }) => code) };
  };

  it('ends before the first reading that cannot be used', () => {
    const readings = [
      ...APRIL_AND_MAY,
      row('2025-07-01', 'abc', '3200', '8000'),
      row('2025-08-01', '5000', '3300', '8300'),
    ];
    expect(codes(readings)).toEqual({ months: 2, codes: ['reading/not-a-number'] });
  });

  it('ends before the first period that no charges cover', () => {
    const ended = demoTariff([
      '"from": "2024-04-01",\n      "clause"',
      '"from": "2024-04-01",\n      "through": "2025-05-31",\n      "clause"',
    ]);
    const readings = [
      ...APRIL_AND_MAY,
      row('2025-07-01', '4900', '3300', '8000'),
      row('2025-08-01', '5200', '3500', '8300'),
    ];
    expect(codes(readings, ended)).toEqual({ months: 2, codes: ['bill/no-tariff-in-force'] });
  });

  it('ends before the first period that no settlement rule covers', () => {
    const later = demoTariff(['"from": "2021-04-01"', '"from": "2025-05-01"']);
    expect(codes(APRIL_AND_MAY, later)).toEqual({ months: 0, codes: ['settlement/no-rule-in-force'] });
  });

  it('looks for future days where it is told what day it is', () => {
    const input = { account: accountOf(), tariff: demoTariff(), readings: APRIL_AND_MAY };
    expect(keepBook(input, { today: dayOf('2025-05-31') }).value.months).toHaveLength(1);
    expect(keepBook(input, { today: dayOf('2025-06-01') }).value.months).toHaveLength(2);
  });

  it('is empty without readings', () => {
    expect(codes([])).toEqual({ months: 0, codes: ['reading/none'] });
  });
});
