import { prepareTariff, readTariff, type PreparedTariff } from '@unitbook/engine';
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { BLANK_ROW, emptyHousehold, type Household } from '../household/household.ts';
import { changeAccount } from '../household/edit-household.ts';
import { addChange, dateEvent } from '../household/meter-change.ts';
import { readHousehold } from '../household/read-household.ts';
import { closingOf, monthRows, usualRows } from './month-rows.ts';
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

/** The demo with its meter changed on 16 April 2025, and the first two bills. */
function changedDemo(date: string, given: string): Household {
  const [first, second, third] = demo.readings;
  const { grid } = demo.account.meters;
  const later = [
    { ...grid, serial: 'PB-2', from: '2025-04-16', import: { digits: '6', decimals: '0' } as const },
  ];
  const readings = [
    first,
    { date, event: 'final', import: '4200.5', export: given },
    { date, event: 'first', import: '100,000', export: '0' },
    second === undefined ? undefined : { ...second, import: '100141', export: '180' },
    third === undefined ? undefined : { ...third, import: '100439', export: '395' },
  ] as const;
  const account = { ...demo.account, meters: { ...demo.account.meters, grid: { ...grid, later } } };
  return { ...demo, account, readings: readings.filter((row) => row !== undefined) };
}

it('closes months with usual readings alone, and reads each row by the meters of its day', () => {
  const view = viewBook({ household: changedDemo('16/4/2025', '2755.5'), tariff, today });
  expect(view.rows.map(({ month }) => month !== null)).toEqual([false, false, false, true, true]);
  expect(view.blocked).toBeNull();
  expect(view.rows.map(({ read }) => read.import)).toEqual([
    '4120.6',
    '4200.5',
    '100000',
    '100141',
    '100439',
  ]);
  expect(view.rows.map(({ registers }) => registers.length)).toEqual([3, 2, 2, 3, 3]);
  expect(usualRows(view.rows).map(({ index }) => index)).toEqual([0, 3, 4]);
  expect([0, 1, 2, 3, 4, 9].map((index) => closingOf(view.rows, index))).toEqual([3, 3, 3, 3, 4, 4]);
  const april = monthRows(view.rows, 3);
  expect([april?.before.index, april?.events.map(({ index }) => index), april?.isFirst]).toEqual([
    0,
    [1, 2],
    true,
  ]);
  const may = monthRows(view.rows, 4);
  expect([may?.before.index, may?.events, may?.isFirst]).toEqual([3, [], false]);
  expect([monthRows(view.rows, 0), monthRows(view.rows, 1)]).toEqual([null, null]);
});

it('places what is to be said of a change at its own row, and once', () => {
  const view = viewBook({ household: changedDemo('2025-04-16', 'x'), tariff, today });
  expect(view.rows.map(({ findings }) => findings.map(({ code }) => code))).toEqual([
    [],
    ['reading/not-a-number'],
    [],
    [],
    [],
  ]);
  expect(view.blocked?.index).toBe(3);
});

it('keeps the account usable while the day of a change is typed', () => {
  const household = dateEvent(changedDemo('2025-04-16', '2755.5'), 1, '16 A');
  const view = viewBook({ household, tariff, today, typing: 'reading-1-date' });
  expect(view.account.account?.spans).toHaveLength(1);
  expect(view.account.findings).toEqual([]);
  expect(view.rows.map(({ findings }) => findings.map(({ code }) => code)).slice(0, 3)).toEqual([
    [],
    ['reading/missing-register'],
    ['reading/no-day'],
  ]);
});

it('tells of a later meter by its place in what was typed, whatever day is still missing', () => {
  const household = dateEvent(addChange(changedDemo('2025-04-16', '2755.5'), 'grid', 1), 1, '10 A');
  const path = ['meters', 'grid', 'later', '1', 'multiplyingFactor'];
  const view = viewBook({ household: changeAccount(household, path, 'x'), tariff, today });
  expect(view.account.findings.map(({ path: place }) => place.join('.'))).toEqual([path.join('.')]);
});

it('waits for the reading after a change, and shows where to type it', () => {
  const household = changedDemo('2025-04-16', '2755.5');
  const view = viewBook({
    household: { ...household, readings: household.readings.slice(0, 3) },
    tariff,
    today,
  });
  expect(view.rows.map(({ isBlank }) => isBlank)).toEqual([false, false, false, true]);
  const codes = view.rows[1]?.findings.map(({ code }) => code);
  expect(codes).toEqual(['reading/change-at-end']);
});

it('reads rates, and the total where it was typed, before the account is filled in', () => {
  const blank = emptyHousehold('en-IN');
  const { grid } = blank.account.meters;
  const rates = [{ id: '1' }, { id: '2' }];
  const meters = { grid: { ...grid, import: { ...grid.import, rates } } };
  const row = { date: '', rates: { import: { '1': '12,892', '2': '5' } }, export: '3' };
  const household = { ...blank, account: { ...blank.account, meters }, readings: [row] };
  const [first] = viewBook({ household, tariff: null, today }).rows;
  expect(first?.registers.map(({ register, isOptional }) => [register.key, isOptional])).toEqual([
    ['import-1', false],
    ['import-2', false],
    ['import', true],
    ['export', false],
  ]);
  expect([first?.read['import-1'], first?.read.import, first?.shown['import-2']]).toEqual([
    '12892',
    null,
    5000,
  ]);
  expect(first?.findings).toEqual([]);
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
