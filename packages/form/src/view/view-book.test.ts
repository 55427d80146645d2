import { prepareTariff, readTariff, type PreparedTariff } from '@unitbook/engine';
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { BLANK_ROW, emptyHousehold, type Household } from '../household/household.ts';
import { readHousehold } from '../household/read-household.ts';
import { viewBook } from './view-book.ts';

const examples = new URL('../../../../tariffs-examples/', import.meta.url);
const read = readHousehold(readFileSync(new URL('households/demo.json', examples), 'utf8'));
const demo: Household = read.kind === 'household' ? read.household : emptyHousehold('en-IN');
const opened = readTariff(
  readFileSync(new URL('tarumira/taresco-domestic/tariff.json', examples), 'utf8'),
).value;
const tariff: PreparedTariff | null = opened === null ? null : prepareTariff(opened);
const today = '2026-05-01';

it('gives each reading after the first its month', () => {
  const view = viewBook({ household: demo, tariff, today });
  expect(view.rows.map(({ month }) => month !== null)).toEqual([false, ...Array<boolean>(12).fill(true)]);
  expect(view.blocked).toBeNull();
});

it('takes no blank row for a reading, and places findings on the row that was typed', () => {
  const [first, second, third] = demo.readings;
  const rows = [first, BLANK_ROW, second, third === undefined ? undefined : { ...third, import: 'x' }];
  const readings = rows.filter((row) => row !== undefined);
  const view = viewBook({ household: { ...demo, readings }, tariff, today });
  expect(view.rows.map(({ month }) => month !== null)).toEqual([false, false, true, false]);
  expect(view.rows.map(({ findings }) => findings.map(({ code }) => code))).toEqual([
    [],
    [],
    [],
    ['reading/not-a-number'],
  ]);
  expect(view.blocked?.index).toBe(3);
});

it('echoes numbers and days before the account is filled in', () => {
  const blank = emptyHousehold('en-IN');
  const row = { ...BLANK_ROW, date: '3/4/2025', import: '012,892.4' };
  const view = viewBook({ household: { ...blank, readings: [row] }, tariff: null, today });
  expect(view.rows).toHaveLength(2);
  expect(view.rows[0]?.read.import).toBe('12892.4');
  expect(view.book).toBeNull();
  expect(view.account.findings.map(({ code }) => code)).toEqual([
    'account/number-missing',
    'account/number-missing',
  ]);
});

it('reads the numbers of the account as those of a meter, and fills blanks that have a meaning', () => {
  const { meters } = demo.account;
  const account = {
    ...demo.account,
    sanctionedLoad: '3,0 kW',
    openingCredit: '',
    meters: { ...meters, grid: { ...meters.grid, multiplyingFactor: ' ' } },
  };
  const view = viewBook({ household: { ...demo, account }, tariff, today });
  expect(view.account.account?.sanctionedLoad).toBe(3000);
  expect(view.account.account?.openingCredit).toBe(0);
  expect(view.account.findings).toEqual([]);
});

it('leaves generation readings out for an account without the meter', () => {
  const { grid } = demo.account.meters;
  const household = { ...demo, account: { ...demo.account, meters: { grid } } };
  const view = viewBook({ household, tariff, today });
  expect(view.rows[12]?.month?.savings).toBeNull();
  expect(view.rows.flatMap(({ findings }) => findings).every(({ severity }) => severity === 'note')).toBe(
    true,
  );
});
