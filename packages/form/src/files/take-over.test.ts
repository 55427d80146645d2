import { parseDay, type DayNumber, type ReadingRow } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { emptyHousehold, type Household } from '../household/household.ts';
import { fitOffers, type Offer } from './fit-book.ts';
import { canPutBack, putBackTaken, takeOver } from './take-over.ts';

const day = (text: string): DayNumber => parseDay(text) as DayNumber;
const offer = (date: string, row: Partial<ReadingRow>): Offer => ({ day: day(date), row: { date, ...row } });

function book(...readings: readonly ReadingRow[]): Household {
  return { ...emptyHousehold('en-IN'), readings };
}

const APRIL: ReadingRow = { date: '1/4/2025', import: '4,120.6', export: '', generation: '' };
const JUNE: ReadingRow = { date: '2025-06-01', import: '4640.3', export: '3151', confirmed: ['a/b:import'] };

it('puts readings in by their days, fills blanks, and lets blank rows go', () => {
  const blank: ReadingRow = { date: '', import: '', export: '', generation: '' };
  const half: ReadingRow = { date: 'June', import: '46' };
  const household = book(APRIL, blank, JUNE, half);
  const offers = [
    offer('2025-03-01', { import: '4000' }),
    offer('2025-04-01', { import: '4120.6', export: '2655.2', estimated: ['export'] }),
    offer('2025-07-01', { import: '4926.5' }),
    offer('2025-05-01', { import: '4342.1' }),
  ];
  const { after, last, changes } = takeOver(household, fitOffers(offers, household), []);
  expect(after.readings.map(({ date, import: taken, export: given }) => [date, taken, given])).toEqual([
    ['2025-03-01', '4000', undefined],
    ['1/4/2025', '4,120.6', '2655.2'],
    ['2025-05-01', '4342.1', undefined],
    ['2025-06-01', '4640.3', '3151'],
    ['2025-07-01', '4926.5', undefined],
    ['June', '46', undefined],
  ]);
  expect(after.readings[1]?.estimated).toEqual(['export']);
  expect([changes.size, last]).toEqual([4, 4]);
});

it('puts a number in the place of another, and takes the answer about the one before back', () => {
  const household = book(APRIL, JUNE);
  const fits = fitOffers([offer('2025-06-01', { import: '4640.4' })], household);
  const { after } = takeOver(household, fits, []);
  expect(after.readings[1]).toEqual({ ...JUNE, import: '4640.4', confirmed: [] });
});

it('sets the account at the same time, and puts both back', () => {
  const household = book(APRIL);
  const path = ['meters', 'grid', 'import', 'decimals'];
  const fits = fitOffers([offer('2025-05-01', { import: '4342.125' })], household);
  const taken = takeOver(household, fits, [{ path, value: '3' }]);
  expect(taken.after.account.meters.grid.import).toEqual({ digits: '5', decimals: '3' });
  expect(putBackTaken(taken.after, taken)).toBe(household);
});

it('puts back only what nobody changed since', () => {
  const household = book(APRIL, JUNE);
  const offers = [
    offer('2025-04-01', { import: '4120.7', export: '1' }),
    offer('2025-05-01', { import: '5' }),
    offer('2025-07-01', { import: '7' }),
  ];
  const taken = takeOver(household, fitOffers(offers, household), []);
  const typed = {
    ...taken.after,
    readings: taken.after.readings.map((row) => (row.date === '2025-07-01' ? { ...row, export: '8' } : row)),
  };
  expect(canPutBack(typed, taken)).toBe(true);
  const back = putBackTaken(typed, taken);
  expect(back.readings).toEqual([APRIL, JUNE, { date: '2025-07-01', import: '7', export: '8' }]);
  expect(canPutBack(back, taken)).toBe(false);
});
