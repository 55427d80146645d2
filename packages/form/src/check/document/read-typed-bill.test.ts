import { readFileSync } from 'node:fs';
import { readTariff, type PrintedBillDocument } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import type { BillField } from './bill-fields.ts';
import { allFields } from './line-fields.ts';
import { plainOf, readTypedBill } from './read-typed-bill.ts';

const path = '../../../../../tariffs-examples/tarumira/taresco-domestic/tariff.json';
const tariff = readTariff(readFileSync(new URL(path, import.meta.url), 'utf8')).value;

const read = (bill: PrintedBillDocument) =>
  readTypedBill(bill, allFields({ bill, tariff, registers: [] }), 0);

const MAY = { from: '1 May 2025', to: '2025-06-01' } as const;
const MONEY: BillField = { path: ['payable'], label: 'To be paid', is: 'number', places: 2 };
const READING: BillField = { path: ['readings', 'import', 'present'], label: 'Now', is: 'number', places: 3 };
const CREDIT: BillField = { path: ['opening', 'credit'], label: 'Credit', is: 'credit', places: 2 };

describe('what people write', () => {
  it.each([
    ['Rs 546/-', '546'],
    ['1,158.31', '1158.31'],
    ['−75.00', '-75.00'],
    ['₹1,16,444', '116444'],
    ['५४६', '546'],
    ['1,158', '1158'],
  ])('reads %s as money', (typed, plain) => {
    expect(plainOf(MONEY, typed)).toBe(plain);
  });

  it('asks about a comma that may mark thousandths', () => {
    expect(plainOf(READING, '12,892')).toBe('12,892');
    expect(plainOf({ ...READING, places: 1 }, '12,892')).toBe('12892');
  });

  it('takes credit with a minus as credit', () => {
    expect(plainOf(CREDIT, '−58')).toBe('58');
    expect(plainOf(CREDIT, '58')).toBe('58');
  });
});

it('reads days as people write them, and needs both', () => {
  expect(read(MAY).plain.from).toBe('2025-05-01');
  expect(read(MAY).printed?.document).toEqual({ from: '2025-05-01', to: '2025-06-01' });
  const half = read({ from: '2025-05-01', to: '' });
  expect(half.printed).toBe(null);
  expect(half.findings.map(({ code, path: at }) => [code, at])).toEqual([['account/number-missing', ['to']]]);
});

it('checks the rest of a bill of which one number cannot be read, and keeps that one as typed', () => {
  const { plain, printed, findings } = read({
    ...MAY,
    payable: '5l6',
    lines: [{ charge: 'fuel', amount: '119.20 or so' }],
    sum: '546.02',
  });
  expect(findings.map(({ code }) => code)).toEqual(['reading/letter', 'check/not-a-number']);
  expect(findings.map(({ path: at }) => at)).toEqual([['payable'], ['lines', 0, 'amount']]);
  expect([plain.payable, plain.lines]).toEqual(['5l6', [{ charge: 'fuel', amount: '119.20 or so' }]]);
  expect([...(printed?.figures.keys() ?? [])]).toEqual(['sum']);
});

it('takes out the fields that the engine refuses, and no others', () => {
  const { plain, printed, findings } = read({
    ...MAY,
    sum: '546.123456789',
    lines: [
      { charge: 'fixed', amount: '' },
      { charge: 'fuel', amount: '119.123456789' },
      { charge: 'tax', amount: '18.22' },
    ],
    payable: '546',
  });
  // A bill has at most 8 decimals. The blank line stands in the form all the same: the next is the second.
  expect(findings.map(({ code, path: at, values }) => [code, at.join('.'), values['what']])).toEqual([
    ['check/number-too-fine', 'lines.1.amount', 'fuel surcharge'],
    ['check/number-too-fine', 'sum', 'sum of the lines'],
  ]);
  expect([...(printed?.figures.keys() ?? [])]).toEqual(['line.tax', 'payable']);
  expect(plain.sum).toBe('546.123456789');
});

it('finds the places of later findings among lines of which some are blank or refused', () => {
  const { placeOf } = read({
    ...MAY,
    lines: [
      { charge: 'fixed', amount: '' },
      { charge: 'fuel', amount: '119.20 or so' },
      { charge: 'tax', amount: '18.22' },
    ],
  });
  expect(placeOf(['lines', 0, 'amount'])).toEqual(['lines', 2, 'amount']);
  expect(placeOf(['payable'])).toEqual(['payable']);
});

it('tells to look at the meter where a reading is meant, and nowhere else', () => {
  const { findings } = read({
    ...MAY,
    payable: 'about 546',
    issued: '31 June 2025',
    readings: { import: { present: 'about 4640' } },
  });
  const remedies = new Map(findings.map(({ path: at, remedy }) => [at.join('.'), remedy]));
  expect(remedies.get('payable')).toBe('Type the number as it is printed.');
  expect(remedies.get('issued')).toBe('Type the day as it is printed.');
  expect(findings.map(({ code }) => code).sort()).toEqual([
    'check/no-such-day',
    'check/not-a-number',
    'reading/not-a-number',
  ]);
});

it('leaves out what is blank, down to lists', () => {
  const { plain } = read({
    ...MAY,
    number: ' ',
    serials: { grid: '' },
    lines: [{ charge: 'fuel', amount: '' }],
    slabs: [{ units: '' }],
    paid: { on: '', amount: '5' },
  });
  expect(plain).toEqual({ from: '2025-05-01', to: '2025-06-01' });
});

it('gives a line a name that has none', () => {
  const { plain } = read({ ...MAY, lines: [{ charge: '', amount: '20' }] });
  expect(plain.lines).toEqual([{ charge: 'a line without a name', amount: '20' }]);
});

it('tells of days that end before they begin, at the field', () => {
  const { printed, findings } = read({ from: '2025-06-01', to: '2025-05-01' });
  expect(printed).toBe(null);
  expect(findings.map(({ code, path: at }) => [code, at])).toEqual([['check/ends-before-it-begins', ['to']]]);
});
