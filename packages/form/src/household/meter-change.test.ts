import { describe, expect, it } from 'vitest';
import { emptyHousehold, type Household } from './household.ts';
import { accountDay, hasReadings, laterAt, laterOf, metersOf } from './later-meters.ts';
import { addChange, addReset, changesIn, dateEvent, nameNewMeter, undatedEvent } from './meter-change.ts';
import { putIn, takeOut } from './take-out.ts';

const row = (date: string) => ({ date, import: '5', export: '6', generation: '7' });
const blank = emptyHousehold('en-IN');
const two: Household = { ...blank, readings: [row('2025-04-01'), row('2025-05-01')] };
const dates = ({ readings }: Household) => readings.map(({ date, event }) => `${event ?? ''} ${date}`.trim());
const days = (household: Household, meter: 'grid' | 'generation' = 'grid') =>
  laterOf(household, meter).map(({ from }) => from);

describe('a change of a meter', () => {
  const added = addChange(two, 'grid', 1);

  it('stands before the reading that closes the month, with a copy of the old meter', () => {
    expect(dates(added)).toEqual(['2025-04-01', 'final', 'first', '2025-05-01']);
    const { later, ...old } = added.account.meters.grid;
    expect(later).toEqual([{ ...old, serial: '', from: '' }]);
    expect(changesIn(added, 1, 3)).toEqual([{ meter: 'grid', final: 1, first: 2, later: 0 }]);
  });

  it('copies no accuracy class: it is on the nameplate of the new meter', () => {
    const { grid } = two.account.meters;
    const account = { ...two.account, meters: { grid: { ...grid, accuracyClass: '2' } } } as const;
    const [copy] = laterOf(addChange({ ...two, account }, 'grid', 1), 'grid');
    expect(copy !== undefined && 'accuracyClass' in copy).toBe(false);
  });

  it('is dated at both readings and in the account, half-typed or whole', () => {
    const half = dateEvent(added, 1, '16 Ap');
    expect(dates(half).slice(1, 3)).toEqual(['final 16 Ap', 'first 16 Ap']);
    expect(days(half)).toEqual(['16 Ap']);
    const whole = dateEvent(half, 2, '16/4/2025');
    expect(dates(whole).slice(1, 3)).toEqual(['final 16/4/2025', 'first 16/4/2025']);
    expect(days(whole)).toEqual(['2025-04-16']);
  });

  it('keeps two days apart where the new meter came later', () => {
    const [opening, final, first, closing] = dateEvent(added, 1, '2025-04-14').readings;
    if (opening === undefined || final === undefined || first === undefined || closing === undefined)
      throw new Error('four rows');
    const apart = {
      ...dateEvent(added, 1, '2025-04-14'),
      readings: [opening, final, { ...first, date: '2025-04-16' }, closing],
    };
    const moved = dateEvent(apart, 1, '2025-04-15');
    expect(dates(moved).slice(1, 3)).toEqual(['final 2025-04-15', 'first 2025-04-16']);
    expect(days(moved)).toEqual(['2025-04-14']);
  });

  it('is one after the other, each with the meter that it began', () => {
    const first = dateEvent(added, 1, '2025-04-16');
    const both = dateEvent(addChange(first, 'grid', 3), 3, '2025-04-20');
    expect(days(both)).toEqual(['2025-04-16', '2025-04-20']);
    expect([2, 4].map((index) => laterAt(both, 'grid', index))).toEqual([0, 1]);
    // Dated before the other, it goes before it in the account.
    expect(days(dateEvent(both, 3, '2025-04-10'))).toEqual(['2025-04-10', '2025-04-16']);
  });

  it('copies the meter that was there before it, not the first of all', () => {
    const first = dateEvent(added, 1, '2025-04-16');
    const later = laterOf(first, 'grid').map((one) => ({ ...one, multiplyingFactor: '20' }));
    const { grid } = first.account.meters;
    const account = { ...first.account, meters: { grid: { ...grid, later } } } as Household['account'];
    const again = addChange({ ...first, account }, 'grid', 3);
    expect(laterOf(again, 'grid').map(({ multiplyingFactor }) => multiplyingFactor)).toEqual(['20', '20']);
    const before = addChange({ ...first, account }, 'grid', 1);
    expect(laterOf(before, 'grid').map(({ multiplyingFactor }) => multiplyingFactor)).toEqual(['1', '20']);
  });
});

it('tells that the generation counter began anew without another meter, until one is named', () => {
  const reset = addReset(two, 1);
  expect(reset.readings.slice(1, 3)).toEqual([
    { date: '', event: 'final', generation: '' },
    { date: '', event: 'first', generation: '0' },
  ]);
  expect(changesIn(reset, 0, 4)).toEqual([{ meter: 'generation', final: 1, first: 2, later: null }]);
  const named = nameNewMeter(reset, 'generation', 2);
  expect(laterAt(named, 'generation', 2)).toBe(0);
  expect(hasReadings(named, 'generation', 0)).toBe(true);
  expect(hasReadings(named, 'generation', 1)).toBe(false);
});

it('knows the change that waits for its date', () => {
  const added = addChange(two, 'grid', 1);
  expect([undatedEvent(added, 'grid'), undatedEvent(added, 'generation')]).toEqual([1, null]);
  expect(undatedEvent(dateEvent(added, 1, '16 Ap'), 'grid')).toBe(1);
  expect(undatedEvent(dateEvent(added, 1, '2025-04-16'), 'grid')).toBeNull();
});

it('knows which meters a row of a change is about', () => {
  expect(metersOf({ date: '', event: 'final', import: '', export: '' })).toEqual(['grid']);
  expect(metersOf({ date: '', event: 'final', generation: ' ' })).toEqual(['generation']);
  expect(metersOf({ date: '', event: 'final', import: '1', generation: '' })).toEqual(['grid']);
  expect(metersOf({ date: '', event: 'final', rates: { import: { '1': '5' } } })).toEqual(['grid']);
  expect(metersOf({ date: '', event: 'final', import: '1', export: '2', generation: '3' })).toEqual([
    'grid',
    'generation',
  ]);
});

it('keeps a date for the account as a day, or as typed', () => {
  expect(['16 Apr 2025', ' 16 Apr ', ''].map(accountDay)).toEqual(['2025-04-16', '16 Apr', '']);
});

it('finds the reading that is missing of a change', () => {
  const event = (kind: 'final' | 'first', date: string) => ({ date, event: kind, import: '1', export: '2' });
  const readings = [
    row('2025-04-01'),
    event('first', '2025-04-10'),
    event('final', '2025-04-16'),
    row('2025-05-01'),
  ];
  expect(changesIn({ ...two, readings }, 0, 4)).toEqual([
    { meter: 'grid', final: null, first: 1, later: null },
    { meter: 'grid', final: 2, first: null, later: null },
  ]);
});

it('puts back whatever was taken out', () => {
  const one = dateEvent(addChange(two, 'grid', 1), 1, '2025-04-16');
  const reset = dateEvent(addReset(one, 3), 3, '2025-04-18');
  const whole = dateEvent(addChange(reset, 'generation', 5), 5, '2025-04-20');
  const places = whole.readings.map((_, index) => index);
  // Every choice of rows there is.
  for (let choice = 0; choice < 2 ** places.length; choice += 1) {
    const chosen = places.filter((index) => Math.floor(choice / 2 ** index) % 2 === 1);
    const { household, taken } = takeOut(whole, chosen);
    expect(household.readings).toHaveLength(whole.readings.length - chosen.length);
    expect(putIn(household, taken)).toEqual(whole);
  }
  const { household } = takeOut(whole, [1, 2]);
  expect([days(household), days(household, 'generation')]).toEqual([[], ['2025-04-20']]);
});
