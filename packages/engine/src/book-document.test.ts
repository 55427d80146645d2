import { describe, expect, it } from 'vitest';
import { accountOf, changed, demoTariff, goodTariff } from '../../../tests/support/demo.ts';
import { LEDGER_READINGS, LEDGER_TARIFF } from '../../../tests/support/ledgers.ts';
import { bookDocument } from './book-document.ts';
import { keepBook } from './book.ts';
import type { ReadingRow } from './readings/index.ts';

const OPENING: ReadingRow = { date: '2025-03-02', import: '12480', export: '8310', generation: '15225' };
const CLOSING: ReadingRow = { date: '2025-04-01', import: '12580', export: '8588', generation: '15805' };

function documentOf(
  readings: readonly ReadingRow[] = [OPENING, CLOSING],
  parts: Parameters<typeof accountOf>[0] = {},
) {
  const { value, findings } = keepBook({ account: accountOf(parts), tariff: demoTariff(), readings });
  return bookDocument(value, findings);
}

describe('an account book as JSON', () => {
  it('has every number as exact text, a fraction where a decimal does not end', () => {
    const [month] = documentOf().months;
    expect(month).toMatchObject({
      from: '2025-03-02',
      to: '2025-04-01',
      days: '30',
      isEstimated: false,
      passbook: {
        opening: '0',
        imported: '100',
        exported: '278',
        setOff: '100',
        creditUsed: '0',
        billed: '0',
        paid: '178',
        lapsed: '0',
        closing: '0',
        isClosed: true,
      },
      bill: { currency: 'INR', sum: '240', payable: { id: 'payable', value: '240', unit: 'money' } },
    });
    // 302 of 580 units, 302 of 402 units, 580 units of 5 kWp in 30 days
    expect(month?.energy.selfConsumptionShare?.value).toBe('151/290');
    expect(month?.energy.selfSufficiency?.value).toBe('151/201');
    expect(month?.energy.specificYield?.value).toBe('58/15');
    // 402 units without solar: 240 + 2421.00 + 160.80 + 145.26 − 75 = 2892.06
    // 100 units without export: 240 + 390.00 + 40.00 + 23.40 − 75 = 618.40
    expect(month?.savings).toEqual({ saving: '2652', fromSelfConsumption: '2274', fromExport: '378' });
  });

  it('has the payment that the next bill makes', () => {
    expect(documentOf()).toMatchObject({
      format: 'unitbook-book-1',
      account: 'TAR-1',
      tariff: 'tarumira-domestic',
      paymentsDue: [{ units: '178', rate: '2.60', clause: 'NMR-2021 r. 7.3' }],
      findings: [],
    });
  });

  it('has lines with their clause, their inputs and their rounding', () => {
    const [month] = documentOf([OPENING, { ...CLOSING, import: '12859', export: '8590' }]).months;
    // 379 − 280 = 99 units
    const tax = month?.bill.lines.find((line) => line.id === 'tax');
    expect(tax).toMatchObject({
      version: 'TO-2024',
      counts: true,
      id: 'tax',
      label: 'Electricity tax',
      value: '23.11',
      unit: 'money',
      operation: 'share',
      clause: 'TO-2024 cl. 5.2',
      parameters: [{ name: 'percent', value: '6', unit: 'percent', clause: 'TO-2024 cl. 5.2' }],
      rounding: { from: '23.112', step: '0.01', mode: 'half-up', clause: 'TO-2024 cl. 6' },
      inputs: [{ id: 'energy', value: '385.2' }],
    });
    expect(month?.bill.roundingDifference).toMatchObject({ value: '0.09', label: 'Rounding to the rupee' });
  });

  it('has null for what is not known', () => {
    const grid = [OPENING, CLOSING].map((row) => ({ ...row, generation: undefined }));
    const [month] = documentOf(grid, { generationMeter: false }).months;
    expect(month?.energy).toMatchObject({
      generation: null,
      selfConsumption: null,
      totalUse: null,
      selfConsumptionShare: null,
      selfSufficiency: null,
      specificYield: null,
    });
    expect([month?.withoutSolar, month?.savings]).toEqual([null, null]);
  });

  it('has ledgers and quantities where there is no passbook', () => {
    const input = { account: accountOf(), tariff: goodTariff(LEDGER_TARIFF), readings: LEDGER_READINGS };
    const { months } = bookDocument(keepBook(input).value, []);
    const march = months[1];
    expect(march?.passbook).toBeNull();
    expect(march?.ledgers).toEqual([
      {
        id: 'bank',
        label: 'Bank of units',
        unit: 'kWh',
        opening: '60',
        added: '0',
        used: '40',
        paid: '20',
        lapsed: '0',
        closing: '0',
        isClosed: true,
      },
      {
        id: 'rewards',
        label: 'Rewards',
        unit: 'money',
        opening: '80',
        added: '35',
        used: '0',
        paid: '0',
        lapsed: '0',
        closing: '115',
        isClosed: false,
      },
    ]);
    expect(march?.quantities).toMatchObject({
      import: '110',
      export: '70',
      bank: '60',
      net: '110',
      'net.import': '0',
      'net.export': '0',
      'net.bank': '20',
      days: '31',
    });
    expect(documentOf().months[0]).toMatchObject({ ledgers: [], quantities: {} });
  });

  it('has no rate where the next bill pays money out', () => {
    const rewards = '"unit": "money", "clause": "TR 5.5"';
    const paid =
      `${rewards}, "close": { "clause": "TR 5.6", "on": ["02-28"], "surplus": "paid" }, ` +
      '"payment": { "clause": "TR 5.7", "label": "Rewards paid out", "inBill": "next" }';
    const tariff = goodTariff(changed(LEDGER_TARIFF, rewards, paid));
    const input = { account: accountOf(), tariff, readings: LEDGER_READINGS.slice(0, 2) };
    expect(bookDocument(keepBook(input).value, []).paymentsDue).toEqual([
      {
        units: '80',
        rate: null,
        clause: 'TR 5.7',
      },
    ]);
  });

  it('survives JSON', () => {
    const book = documentOf();
    expect(JSON.parse(JSON.stringify(book))).toEqual(book);
  });
});
