import { readFileSync } from 'node:fs';
import {
  CAUSES,
  checkAccountBills,
  readCheck,
  readTariff,
  type CheckedBill,
  type CheckInput,
} from '@unitbook/engine';
import { expect, it } from 'vitest';
import { causesForBill } from './one-bill.ts';

const EXAMPLES = new URL('../../../../../tariffs-examples/', import.meta.url);
const textOf = (path: string): string => readFileSync(new URL(path, EXAMPLES), 'utf8');

function input(): CheckInput {
  const { account, readings, bills } = readCheck(textOf('checks/two-bills.json')).value;
  const tariff = readTariff(textOf('tarumira/taresco-domestic/tariff.json')).value;
  if (account === null || readings === null || bills === null || tariff === null)
    throw new Error('the example cannot be read');
  return { account, tariff, readings, bills };
}

/** The causes of every explanation, and how sure each is. */
const told = (checked: CheckedBill | undefined) =>
  checked?.explanations.map(({ attempt, confidence }) => [
    confidence,
    ...attempt.steps.map(({ cause, variant }) => `${cause.id} ${variant.id}`),
  ]);

it('explains a bill as the whole check does, and no other', () => {
  const own = input();
  const [first, may] = own.bills;
  if (first === undefined || may === undefined) throw new Error('two bills are needed');
  const whole = checkAccountBills(own).bills;
  const ofMay = checkAccountBills(own, { causes: causesForBill(CAUSES, may) }).bills;
  expect(told(ofMay[1])).toEqual(told(whole[1]));
  // Two acceptance scenarios, in an invented place (project reference, 2025), section 6.1.
  expect(told(ofMay[1])?.[0]?.[0]).toBe('proven');
  const ofApril = checkAccountBills(own, { causes: causesForBill(CAUSES, first) }).bills;
  expect(told(ofApril[1])).toEqual([]);
});
