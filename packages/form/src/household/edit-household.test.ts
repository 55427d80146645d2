import { expect, it } from 'vitest';
import { answer, changeAccount, changeRegisters, changeRow, sortRows } from './edit-household.ts';
import { BLANK_ROW, emptyHousehold, isBlankRow } from './household.ts';

const blank = emptyHousehold('en-IN');

it('changes one field of one row and leaves the household it was given', () => {
  const next = changeRow(blank, 1, { import: '41' });
  expect(next.readings).toEqual([BLANK_ROW, { ...BLANK_ROW, import: '41' }]);
  expect(blank.readings).toEqual([BLANK_ROW, BLANK_ROW]);
});

it('adds rows up to the one that is typed in', () => {
  expect(changeRow({ ...blank, readings: [] }, 2, { date: 'x' }).readings).toHaveLength(3);
});

it('keeps an answer until the text it was about is typed over', () => {
  const answered = answer(answer(blank, 1, 'a/b:import'), 1, 'a/b:export');
  expect(changeRow(answered, 1, { date: '1 May 2025' }).readings[1]?.confirmed).toEqual([
    'a/b:import',
    'a/b:export',
  ]);
  expect(changeRow(answered, 1, { import: '2' }).readings[1]?.confirmed).toEqual(['a/b:export']);
  expect(answer(answered, 1, 'a/b:import').readings[1]?.confirmed).toEqual(['a/b:export']);
});

it('sorts rows by date; one without a date stays behind the row it followed', () => {
  const row = (date: string) => ({ ...BLANK_ROW, date });
  const rows = ['2025-04-01', '1 June 2025', 'May?', '1/5/2025'].map(row);
  const sorted = sortRows({ ...blank, readings: rows }).readings.map(({ date }) => date);
  expect(sorted).toEqual(['2025-04-01', '1/5/2025', '1 June 2025', 'May?']);
});

it('keeps the last reading of a meter before the first of another, and both before the reading that day', () => {
  const row = (date: string, event?: 'final' | 'first') => ({ date, import: '', ...(event && { event }) });
  const readings = [
    row('2025-05-01'),
    row('16 Apr 2025', 'first'),
    row('2025-04-16'),
    row('', 'final'),
    row('2025-04-16', 'final'),
    row('2025-04-01'),
  ];
  const sorted = sortRows({ ...blank, readings }).readings;
  expect(sorted.map(({ date, event }) => [date, event])).toEqual([
    ['2025-04-01', undefined],
    ['2025-04-16', 'final'],
    ['16 Apr 2025', 'first'],
    ['2025-04-16', undefined],
    ['', 'final'],
    ['2025-05-01', undefined],
  ]);
});

it('changes what is typed for a rate, and asks anew about that rate alone', () => {
  const answered = answer(answer(blank, 1, 'a/b:import-1'), 1, 'a/b:import');
  const next = changeRegisters(answered, 1, { 'import-1': '5', export: '7' }).readings[1];
  expect([next?.rates, next?.export, next?.confirmed]).toEqual([
    { import: { '1': '5' } },
    '7',
    ['a/b:import'],
  ]);
});

it('changes a field of one meter of a list', () => {
  const path = ['meters', 'grid', 'later'];
  const { grid } = blank.account.meters;
  const later = [
    { ...grid, from: '2025-04-16' },
    { ...grid, from: '2025-05-16' },
  ];
  const listed = changeAccount(blank, path, later);
  const next = changeAccount(listed, [...path, '1', 'serial'], 'PB-2').account.meters.grid.later;
  expect(next).toEqual([later[0], { ...later[1], serial: 'PB-2' }]);
});

it('changes a field of the account, and takes one out', () => {
  const next = changeAccount(blank, ['meters', 'grid', 'serial'], 'PB-1');
  expect(next.account.meters.grid.serial).toBe('PB-1');
  expect(next.account.meters.generation).toBe(blank.account.meters.generation);
  const without = changeAccount(blank, ['meters', 'generation'], undefined);
  expect('generation' in without.account.meters).toBe(false);
});

it('asks anew about an account field that is typed over', () => {
  const answered = answer(blank, null, 'account/load-in-watts:sanctionedLoad');
  expect(changeAccount(answered, ['plantCapacity'], '3').account.confirmed).toHaveLength(1);
  expect(changeAccount(answered, ['sanctionedLoad'], '3').account.confirmed).toEqual([]);
});

it('knows a row with nothing but spaces as blank', () => {
  expect(isBlankRow({ date: ' ', import: '', export: '' })).toBe(true);
  expect(isBlankRow({ ...BLANK_ROW, printedDays: '31' })).toBe(false);
  expect(isBlankRow({ date: '' })).toBe(true);
  expect(isBlankRow({ date: '', rates: { import: { '1': ' ' }, export: undefined } })).toBe(true);
  expect(isBlankRow({ date: '', rates: { import: { '1': '5' } } })).toBe(false);
  expect(isBlankRow({ date: '', event: 'final', import: '' })).toBe(false);
});
