import { expect, it } from 'vitest';
import tariffText from '../../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';
import disputeText from '../../../tariffs-examples/disputes/tarumira.json?raw';
import { dayOf } from '../../../tests/support/make.ts';
import { ACCOUNT, APRIL, MAY, READINGS } from '../../../tests/support/scenario-1.ts';
import {
  billsLetter,
  billsMemo,
  checkFinding,
  readDispute,
  readPrintedBill,
  type PrintedBillDocument,
  type SheetPart,
} from './audit/index.ts';
import { checkAccountBills } from './check-account.ts';
import { effectsOf } from './check-chain.ts';
import { reportBills, type ReportInput } from './check-report.ts';
import { readAccount } from './readings/index.ts';
import { readTariff } from './tariff/index.ts';

/** Writes every number, amount and day so that one that went past it is seen. */
const NOTATION = { number: () => '#', money: () => '¤', moneyPlaces: 2, day: () => '§' };

const words = (part: SheetPart): readonly string[] => {
  if (part.kind === 'paragraph') return [part.text];
  return part.kind === 'list' ? part.items : part.rows.map((row) => row.join(' | '));
};

function report(bills: readonly PrintedBillDocument[], more: Partial<ReportInput> = {}) {
  const account = readAccount(JSON.stringify(ACCOUNT)).value;
  const tariff = readTariff(tariffText).value;
  if (account === null || tariff === null) throw new Error('the example cannot be read');
  const read = bills.flatMap((bill, at) => readPrintedBill(bill, ['bills', at]).value ?? []);
  const checked = checkAccountBills({ account, tariff, readings: READINGS, bills: read });
  const dispute = readDispute(disputeText).value;
  const effects = effectsOf(checked.bills);
  return reportBills({ account, tariff, checked, effects, on: dayOf('2025-08-17'), dispute, ...more });
}

const memoLines = (
  bills: readonly PrintedBillDocument[],
  more: Partial<ReportInput> = {},
): readonly string[] =>
  billsMemo(report(bills, more), NOTATION).flatMap(({ title, parts }) => [title, ...parts.flatMap(words)]);

const UNEXPLAINED = { ...MAY, payable: '777.77', sum: '777.77' };
const CONTRADICTORY = { ...APRIL, days: '29', issued: '2025-05-03', arrears: '12345.67' };

it.each([
  ['explained', [APRIL, MAY]],
  ['not explained', [APRIL, UNEXPLAINED]],
  ['contradictory', [CONTRADICTORY, MAY]],
  ['without figures', [APRIL, { from: '2025-05-01', to: '2025-06-01' }]],
] as const)('a memo about bills that are %s writes as the household does', (_, bills) => {
  const { paragraphs, asks, encloses, date } = billsLetter(report(bills), NOTATION);
  const all = [...memoLines(bills), ...paragraphs, ...asks, ...encloses, date]
    .join('\n')
    .replace(/TAR-30-00417|PB-77120/g, '');
  expect(all).not.toMatch(/\d{4}-\d{2}-\d{2}/);
  expect(all).not.toContain('INR');
  // Amounts and units have decimals or thousands; clauses and counts of days have neither, years no point.
  expect(all).not.toMatch(/\d\.\d\d|\d{5}/);
  // Names of figures and of the tariff as documents have them.
  expect(all).not.toContain('tarumira-domestic');
  expect(all).not.toMatch(/\b(?:line|units|opening|closing|reading)\.[a-z]/);
});

it('says of a surprise what it comes to in the currency of the household', () => {
  const lines = [{ charge: 'fixed', amount: '180.00' }];
  expect(memoLines([{ ...APRIL, lines }]).join('\n')).toContain(
    '¤ with no unit billed: Fixed charge ¤ stays whatever is billed',
  );
});

it('never calls a bill right of which a figure cannot be read', () => {
  const values = { value: '5 l 8', what: 'credit carried forward' };
  const finding = checkFinding('check/not-a-number', { path: ['closing', 'credit'] }, values);
  const { closing, ...rest } = APRIL;
  expect(closing).toBeDefined();
  const unread = [[{ label: 'Credit carried forward', finding }]];
  const own = report([rest], { unread });
  expect([own.right.length, own.undecided.length]).toEqual([0, 1]);
  const lines = memoLines([rest], { unread });
  expect(lines.some((line) => line.startsWith('Found right'))).toBe(false);
  expect(lines).toContain(
    'Bill from § to §: by what is known, ¤ is to be paid; “Credit carried forward” cannot be read: "5 l 8" for credit carried forward; expected: a number, such as 1234.5',
  );
  // A bill that is wrong by what can be read stays so.
  expect(report([APRIL, MAY], { unread: [[], unread[0] ?? []] }).findings).toHaveLength(1);
});
