import { readFileSync } from 'node:fs';
import {
  checkAccountBills,
  exactText,
  readCheck,
  readPrintedBill,
  readTariff,
  type CheckedBill,
  type PrintedBillDocument,
} from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { writingFor } from '../../writing/writing.ts';
import { causeRows, evidenceOf, sumRows } from './cause-words.ts';
import { figuresBehind } from './figure-behind.ts';
import { verdictWords } from './verdict-words.ts';

// Two acceptance scenarios, in an invented place (project reference, 2025), section 6.1: Rs 230 is right for May.

const EXAMPLES = new URL('../../../../../tariffs-examples/', import.meta.url);
const textOf = (path: string): string => readFileSync(new URL(path, EXAMPLES), 'utf8');
const writing = writingFor('en-IN', 'INR');
const { account, readings } = readCheck(textOf('checks/two-bills.json')).value;
const tariff = readTariff(textOf('tarumira/taresco-domestic/tariff.json')).value;

function checkMay(printed: Partial<PrintedBillDocument>, isOpeningKnown = true): CheckedBill {
  const bill = readPrintedBill({ from: '2025-05-01', to: '2025-06-01', ...printed }, ['bills', 0]).value;
  if (account === null || readings === null || tariff === null || bill === null)
    throw new Error('the example cannot be read');
  const rows = isOpeningKnown ? readings : readings.slice(1);
  const [checked] = checkAccountBills({
    account,
    tariff,
    readings: rows,
    bills: [bill],
    isOpeningKnown,
  }).bills;
  if (checked === undefined) throw new Error('the bill was not checked');
  return checked;
}

describe('the verdict', () => {
  it.each<[string, Partial<PrintedBillDocument>, string, string]>([
    ['too much', { payable: '460' }, '₹230 too much.', 'It should be ₹230.'],
    ['too little', { payable: '180' }, '₹50 too little.', 'keep the money aside'],
    ['right', { payable: '230' }, 'Your bill looks right.', 'as computed'],
    ['only its days', {}, 'It cannot be told yet.', 'It should be ₹230. Add what the bill prints'],
    [
      'a line alone',
      { lines: [{ charge: 'fuel', amount: '119.20' }] },
      'Something on this bill is wrong.',
      '₹230',
    ],
    [
      'the amount right and a line wrong',
      { lines: [{ charge: 'fuel', amount: '9.61' }], payable: '230' },
      'The amount is right, but something else on this bill is not.',
      '₹230',
    ],
  ])('of a bill that is %s', (_, printed, verdict, more) => {
    const words = verdictWords(checkMay(printed), writing);
    expect(words.verdict).toBe(verdict);
    expect(words.more).toContain(more);
  });

  it.each<[string, Partial<PrintedBillDocument>, string]>([
    ['right', { payable: '230' }, 'Every other printed figure is as computed.'],
    ['not known', {}, 'It should be ₹230.'],
  ])('is never that a bill looks right where a figure cannot be read: %s', (_, printed, more) => {
    const words = verdictWords(checkMay(printed), writing, ['Fuel surcharge']);
    expect(words.verdict).toBe('It cannot be told yet: a figure cannot be read (“Fuel surcharge”).');
    expect(words.more).toContain(more);
    expect(words.short).toBe('not known');
  });

  it('stays that a bill is wrong by what can be read', () => {
    const words = verdictWords(checkMay({ payable: '460' }), writing, ['Fuel surcharge', 'Days']);
    expect([words.verdict, words.short]).toEqual(['₹230 too much.', '₹230 too much']);
  });

  it('gives each amount where nobody knows the credit brought forward', () => {
    const { verdict, short } = verdictWords(checkMay({ opening: { credit: '58' } }, false), writing);
    expect(verdict).toContain('₹460 if nothing was brought forward, ₹230 if 58 units were brought forward');
    expect(short).toBe('not known');
  });
});

it('puts a difference down to causes, rounding and their sum', () => {
  const checked = checkMay({ opening: { credit: '0' }, units: { billed: '82' }, payable: '460' });
  const [explanation] = checked.explanations;
  if (explanation === undefined) throw new Error('the bill was not explained');
  // 459.62 − 229.92 = 229.70; 460 − 230 = 230.
  expect(causeRows(explanation, writing).map(({ name, adds }) => [name, adds])).toEqual([
    ['Credit not brought forward', '+₹229.70'],
  ]);
  expect(sumRows(explanation, checked, writing).map(({ label, adds }) => [label, adds])).toEqual([
    ['Credit not brought forward', '+₹229.70'],
    ['Rounding of the total', '+₹0.30'],
    ['Together', '+₹230'],
  ]);
  expect(evidenceOf(explanation)).toContain('the closing credit of the bill before');
});

it('finds the figure behind each line, and none behind what is given', () => {
  const { right } = checkMay({});
  if (right === null) throw new Error('the bill cannot be made');
  const value = (name: string): readonly string[] =>
    figuresBehind(name, right).map(({ numerator, denominator }) => exactText(numerator, denominator));
  expect(value('payable')).toEqual(['230']);
  expect(value('units.billed')).toEqual(['24']);
  expect(value('opening.credit')).toEqual(['58']);
  expect(value('line.fixed')).toEqual(['180']);
  expect(value('reading.import.present')).toEqual([]);
  expect(value('line.rent')).toEqual([]);
});
