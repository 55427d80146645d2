import { expect, it } from 'vitest';
import { changeRegisters } from './edit-household.ts';
import { emptyHousehold, type Household } from './household.ts';
import { addChange, dateEvent } from './meter-change.ts';
import {
  canName,
  nameRate,
  rateRegisters,
  ratesOf,
  setBlock,
  setRateCount,
  type RateRegisters,
} from './rates.ts';
import { howRead, renameRate, setHowRead } from './registers.ts';

const both: RateRegisters = { place: -1, channels: ['import', 'export'] };
const start: Household = {
  ...emptyHousehold('en-IN'),
  readings: [{ date: '2025-04-01' }, { date: '2025-05-01' }],
};
const rated = setRateCount(start, both, 2);

it('sets the rates of import and export together, numbered from 1', () => {
  expect(ratesOf(rated, both)).toEqual([{ id: '1' }, { id: '2' }]);
  expect(rated.account.meters.grid.export.rates).toEqual([{ id: '1' }, { id: '2' }]);
  expect(setRateCount(rated, both, 0)).toEqual(start);
  const named = nameRate(rated, both, 0, '3');
  expect(ratesOf(setRateCount(named, both, 4), both).map(({ id }) => id)).toEqual(['3', '2', '1', '4']);
});

it('sets them one by one where a file has other rates for export', () => {
  expect(rateRegisters(rated, -1)).toEqual([both]);
  const exportOnly: RateRegisters = { place: -1, channels: ['export'] };
  const other = setRateCount(rated, exportOnly, 3);
  expect(rateRegisters(other, -1).map(({ channels }) => channels)).toEqual([['import'], ['export']]);
  expect(ratesOf(other, both)).toHaveLength(2);
});

it('names a rate by letters and digits, each once', () => {
  const names = ['T1', '1', '2', '', 'a-b', 'x'.repeat(12), 'x'.repeat(13)];
  expect(names.map((name) => canName(rated, both, 0, name))).toEqual([
    true,
    true,
    false,
    false,
    false,
    true,
    false,
  ]);
});

it('takes what was typed along when a rate is renamed, its edits and answers too', () => {
  const typed = changeRegisters(rated, 1, { 'import-1': '5', 'import-2': '6', 'export-1': '7' });
  const [first, second] = typed.readings;
  const edits = [{ register: 'import-1', raw: '4', method: 'typed-again' }] as const;
  const confirmed = ['reading/screen-test:import-1', 'reading/days-unusual:date'];
  const readings = [first ?? { date: '' }, { ...second, date: '2025-05-01', edits, confirmed }];
  const [, renamed] = nameRate({ ...typed, readings }, both, 0, 'T1').readings;
  expect(renamed?.rates).toEqual({ import: { T1: '5', 2: '6' }, export: { T1: '7' } });
  expect(renamed?.edits).toEqual([{ ...edits[0], register: 'import-T1' }]);
  expect(renamed?.confirmed).toEqual(['reading/screen-test:import-T1', 'reading/days-unusual:date']);
  const [, cleared] = setRateCount({ ...typed, readings }, both, 0).readings;
  expect(cleared).toEqual({ date: '2025-05-01', confirmed: ['reading/days-unusual:date'] });
});

it('leaves the readings of another meter alone', () => {
  const changed = dateEvent(addChange(rated, 'grid', 1), 1, '2025-04-16');
  const typed = [0, 1, 2, 3].reduce(
    (held, index) => changeRegisters(held, index, { 'import-1': '5' }),
    changed,
  );
  const later: RateRegisters = { place: 0, channels: ['import', 'export'] };
  const renamed = nameRate(typed, later, 0, 'T1');
  expect(renamed.readings.map(({ rates }) => Object.keys(rates?.import ?? {}))).toEqual([
    ['1'],
    ['1'],
    ['T1'],
    ['T1'],
  ]);
  expect(ratesOf(renamed, both)).toEqual([{ id: '1' }, { id: '2' }]);
});

it('says which block a rate stands for, and that it is not known', () => {
  const peak = setBlock(rated, both, 1, 'peak');
  expect(ratesOf(peak, both)).toEqual([{ id: '1' }, { id: '2', block: 'peak' }]);
  expect(setBlock(peak, both, 1, '')).toEqual(rated);
});

it('leaves a row without the rate as it is', () => {
  const row = { date: '', import: '5' };
  expect(renameRate(row, 'import', '1', '2')).toBe(row);
});

it('says how a reading came about, and keeps what was estimated from whole to some', () => {
  const ids = ['import', 'export'] as const;
  const whole = setHowRead({ date: '' }, 'estimated', ids);
  expect([whole, howRead(whole)]).toEqual([{ date: '', status: 'estimated' }, 'estimated']);
  const some = setHowRead(whole, 'some', ids);
  expect([some, howRead(some)]).toEqual([{ date: '', estimated: ids }, 'some']);
  expect(setHowRead({ date: '', status: 'actual' }, 'some', ids)).toEqual({ date: '', estimated: [] });
  expect([setHowRead(some, 'actual', ids), howRead({ date: '', status: 'actual' })]).toEqual([
    { date: '' },
    'actual',
  ]);
});
