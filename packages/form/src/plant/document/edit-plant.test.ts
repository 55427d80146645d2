import type { PlantDocument } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { emptyHousehold } from '../../household/household.ts';
import {
  addCapacity,
  addEntry,
  blankExpected,
  fieldIdOf,
  fillMonths,
  kindOf,
  pastedCells,
  plantOf,
  setInverters,
  takeCapacity,
  takeEntry,
} from './edit-plant.ts';
import { putAt } from './plant-texts.ts';

const blank = emptyHousehold('en-IN');
const plant: PlantDocument = { format: 'unitbook-plant-1', capacity: [{ kWp: '3.3' }] };
const kept = (document: PlantDocument): PlantDocument => structuredClone(document);

it('begins with the size that the account says, and changes nothing of the household', () => {
  const household = { ...blank, account: { ...blank.account, plantCapacity: '5,5 kWp' } };
  expect(plantOf(household)).toEqual({ format: 'unitbook-plant-1', capacity: [{ kWp: '5.5' }] });
  expect(plantOf({ ...household, plant })).toBe(plant);
});

it('puts one value in its place, takes one out, and leaves the document it was given', () => {
  const before = kept(plant);
  expect(putAt(plant, ['capacity', 0, 'kWp'], '4').capacity).toEqual([{ kWp: '4' }]);
  expect(putAt(putAt(plant, ['coast'], true), ['coast'], undefined)).toEqual(plant);
  expect(putAt(plant, ['uncertainty', 'yearToYear'], '6').uncertainty).toEqual({ yearToYear: '6' });
  expect(plant).toEqual(before);
});

it('knows what a plant is judged by', () => {
  for (const kind of ['', 'monthly', 'irradiation', 'last-years'] as const)
    expect(kindOf(putAt(plant, ['expected'], blankExpected(kind)))).toBe(kind);
});

it('takes an entry out of the diary and puts it back where it was', () => {
  const three = ['2026-01-01', '2026-02-01', '2026-03-01'].reduce(
    (held, date) => addEntry(held, date, 'cleaning'),
    plant,
  );
  const taken = takeEntry(three, 1);
  expect(taken?.plant.diary?.map(({ date }) => date)).toEqual(['2026-01-01', '2026-03-01']);
  expect(taken?.putBack(taken.plant)).toEqual(three);
  const only = takeEntry(addEntry(plant, '2026-01-01', 'other'), 0);
  expect(only?.plant).toEqual(plant);
  expect(takeEntry(plant, 0)).toBeNull();
});

it('takes a later size out and puts it back, and never the first', () => {
  const two = addCapacity(plant);
  expect(two.capacity).toEqual([{ kWp: '3.3' }, { from: '', kWp: '' }]);
  const taken = takeCapacity(two, 1);
  expect(taken?.plant).toEqual(plant);
  expect(taken?.putBack(plant)).toEqual(two);
  expect(takeCapacity(two, 0)).toBeNull();
  expect(takeCapacity(two, 2)).toBeNull();
});

it('says of inverters what was said, and nothing where nothing was', () => {
  expect(setInverters(plant, '2', '').inverters).toEqual({ n: '2', kind: 'string' });
  expect(setInverters(plant, '', 'module').inverters).toEqual({ n: '', kind: 'module' });
  expect(setInverters(setInverters(plant, '2', 'module'), '', '')).toEqual(plant);
});

it('fills months from a list that was copied, as far as the year goes', () => {
  const cells = pastedCells('1,200.5\t380\r\n400;\n');
  expect(cells).toEqual(['1,200.5', '380', '400']);
  const blankYear = putAt(plant, ['expected'], blankExpected('monthly'));
  expect(fillMonths(blankYear, 'monthly', 10, cells).expected?.monthly?.slice(9)).toEqual([
    '',
    '1200.5',
    '380',
  ]);
  expect(fillMonths(blankYear, 'monthly', 0, cells).expected?.monthly?.slice(0, 4)).toEqual([
    '1200.5',
    '380',
    '400',
    '',
  ]);
});

it('names an input by its place', () => {
  expect(fieldIdOf(['diary', 2, 'date'])).toBe('plant-diary-2-date');
});
