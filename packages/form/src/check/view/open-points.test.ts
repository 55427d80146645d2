import { readFileSync } from 'node:fs';
import { readTariff, type PrintedBillDocument } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { writingFor } from '../../writing/writing.ts';
import { allFields } from '../document/line-fields.ts';
import { readTypedBill } from '../document/read-typed-bill.ts';
import { foundText } from './finding-words.ts';
import { openPoints, unreadPoints } from './open-points.ts';
import { wantedOfBill } from './wanted-words.ts';

const path = '../../../../../tariffs-examples/tarumira/taresco-domestic/tariff.json';
const tariff = readTariff(readFileSync(new URL(path, import.meta.url), 'utf8')).value;
const writing = writingFor('en-IN', 'INR');

function typed(bill: PrintedBillDocument) {
  const form = { bill, tariff, registers: [] };
  return { form, findings: readTypedBill(bill, allFields(form), 0).findings };
}

const labels = (points: ReturnType<typeof unreadPoints>): readonly string[] =>
  points.map(({ label, finding }) => `${label}: ${foundText(finding, writing)}`);

it('lists the figures that cannot be read in the order of paper', () => {
  const bill = typed({
    from: '2025-05-01',
    to: '2025-06-01',
    payable: 'about 546',
    closing: { credit: '0.1234' },
    lines: [{ charge: 'fuel', amount: '119.20 or so' }],
  });
  // Lines stand last among the fields.
  expect(labels(unreadPoints(bill))).toEqual([
    'Credit carried forward: 0.1234 for credit carried forward.',
    'To be paid: "about 546" for to be paid.',
    'Fuel surcharge: "119.20 or so" for fuel surcharge.',
  ]);
});

it('takes neither a day nor a receipt for a figure of the bill', () => {
  const bill = typed({
    from: '2025-05-01',
    to: '2025-06-01',
    issued: '31 June 2025',
    paid: { on: '2025-06-18', amount: 'about 546' },
  });
  expect(unreadPoints(bill)).toEqual([]);
  expect(labels(openPoints(bill, bill.findings))).toEqual([
    'Day of the bill: "31 June 2025", which is no day of the calendar.',
    'Amount that was paid: "about 546" for amount that was paid.',
  ]);
});

it('asks for both reading dates only where one is missing', () => {
  expect(wantedOfBill(typed({ from: '2025-05-01', to: '' }), writing)).toEqual([
    'Type both reading dates of this bill.',
  ]);
  const backwards = wantedOfBill(typed({ from: '2025-06-01', to: '2025-05-01' }), writing);
  expect(backwards).toHaveLength(1);
  expect(backwards[0]).toMatch(/^A bill from 1 June 2025 to 1 May 2025\. Expected: a day of the reading now/);
  const unread = wantedOfBill(typed({ from: '2025-05-01', to: '31 June 2025' }), writing);
  expect(unread).toHaveLength(1);
  expect(unread[0]).toContain('31 June 2025');
  expect(unread[0]).not.toContain('both reading dates');
});
