import { readFileSync } from 'node:fs';
import { readTariff, type PrintedBillDocument } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { addBill, inOrder, putBill, putInBill, takeBill } from './edit-bills.ts';
import { lineFields, typeLine } from './line-fields.ts';
import { BLANK_CHECK, isBlankBill, type TypedCheck } from './typed-check.ts';

const path = '../../../../../tariffs-examples/tarumira/taresco-domestic/tariff.json';
const tariff = readTariff(readFileSync(new URL(path, import.meta.url), 'utf8')).value;

const billOf = (from: string, to: string): PrintedBillDocument => ({ from, to });
const CHECK: TypedCheck = {
  ...BLANK_CHECK,
  bills: [
    { key: '1', bill: billOf('2025-04-01', '2025-05-01') },
    { key: '2', bill: { ...billOf('2025-05-01', '2025-06-01'), account: 'TAR-1', payable: '546' } },
  ],
};

it('makes lists and objects on the way', () => {
  const bill = putInBill(billOf('', ''), ['readings', 'import', 'present'], '4640.3');
  expect(bill.readings).toEqual({ import: { present: '4640.3' } });
  expect(putInBill(bill, ['slabs', 1, 'units'], '5').slabs).toEqual([{}, { units: '5' }]);
  expect(putInBill(bill, ['readings'], undefined)).toEqual(billOf('', ''));
  // Nothing is changed in place.
  expect(bill.readings).toEqual({ import: { present: '4640.3' } });
});

it('orders bills by their days, those without one last', () => {
  const bills = [
    { key: '1', bill: billOf('', '') },
    { key: '2', bill: billOf('1 June 2025', '') },
    { key: '3', bill: billOf('2025-05-01', '') },
  ];
  expect(inOrder(bills).map(({ key }) => key)).toEqual(['3', '2', '1']);
});

it('goes on with the account and the days of the last bill, and with no figure of it', () => {
  const { check, key } = addBill(CHECK);
  expect(check.bills.at(-1)).toEqual({ key, bill: { from: '2025-06-01', to: '', account: 'TAR-1' } });
});

it('takes a bill out and puts it back in its place; the last one leaves a blank one', () => {
  const taken = takeBill(CHECK, '1');
  expect(taken?.check.bills.map(({ key }) => key)).toEqual(['2']);
  const back = taken?.putBack(taken.check);
  expect(back?.bills.map(({ bill }) => bill.from)).toEqual(['2025-04-01', '2025-05-01']);
  const last = takeBill({ ...CHECK, bills: CHECK.bills.slice(0, 1) }, '1');
  expect(last?.check.bills.every(({ bill }) => isBlankBill(bill))).toBe(true);
  expect(takeBill(CHECK, '9')).toBe(null);
});

it('puts a bill back under its old key, which nothing has taken meanwhile', () => {
  const taken = takeBill(CHECK, '2');
  const { check: added, key } = addBill(taken?.check ?? CHECK, ['2']);
  expect(key).toBe('3');
  expect(taken?.putBack(added).bills.map((one) => one.key)).toEqual(['1', '3', '2']);
});

it('puts the only bill back in the place of the blank one, unless something was typed in that', () => {
  const taken = takeBill({ ...CHECK, bills: CHECK.bills.slice(0, 1) }, '1');
  if (taken === null) throw new Error('there is a bill to take');
  expect(taken.putBack(taken.check).bills.map(({ key }) => key)).toEqual(['1']);
  const [stead] = taken.check.bills;
  const typed = putBill(taken.check, stead?.key ?? '', billOf('2025-03-01', ''));
  expect(taken.putBack(typed).bills.map(({ bill }) => bill.from)).toEqual(['2025-03-01', '2025-04-01']);
});

it('moves a bill to its days as they are typed', () => {
  const moved = putBill(CHECK, '2', billOf('2025-03-01', ''));
  expect(moved.bills.map(({ key }) => key)).toEqual(['2', '1']);
});

describe('lines', () => {
  const form = (bill: PrintedBillDocument) => ({ bill, tariff, registers: [] });
  const find = (bill: PrintedBillDocument, charge: string) => {
    const line = lineFields(form(bill)).find((one) => one.charge === charge);
    if (line === undefined) throw new Error(`no line is of ${charge}`);
    return line;
  };

  it('come in where their charge stands in the tariff', () => {
    let bill: PrintedBillDocument = { ...billOf('', ''), lines: [{ charge: 'Meter rent', amount: '20' }] };
    for (const [charge, amount] of [
      ['tax', '4.32'],
      ['fixed', '180'],
      ['fuel', '9.60'],
    ] as const)
      bill = typeLine(form(bill), find(bill, charge), amount);
    expect(bill.lines?.map(({ charge }) => charge)).toEqual(['fixed', 'fuel', 'tax', 'Meter rent']);
    bill = typeLine(form(bill), find(bill, 'fuel'), '9.6');
    expect(bill.lines?.[1]).toEqual({ charge: 'fuel', amount: '9.6' });
  });

  it('have inputs of their own, blank or not', () => {
    const ids = lineFields(form(billOf('', ''))).map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids[0]).toBe('check-line-fixed');
  });

  it('that are printed twice are set beside the sum once', () => {
    const lines = [
      { charge: 'fuel', amount: '1' },
      { charge: 'fuel', amount: '2' },
    ];
    const fuel = lineFields(form({ ...billOf('', ''), lines })).filter(({ charge }) => charge === 'fuel');
    expect(fuel.map(({ figure }) => figure)).toEqual([undefined, 'line.fuel']);
  });
});
