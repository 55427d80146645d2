import { parseDay, type DayNumber, type ReadingRow } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { emptyHousehold, type Household } from '../household/household.ts';
import { without } from '../household/without.ts';
import { fitOffers, registerTexts, type Offer } from './fit-book.ts';

const day = (text: string): DayNumber => parseDay(text) as DayNumber;
const offer = (date: string, row: Partial<ReadingRow>): Offer => ({ day: day(date), row: { date, ...row } });

function book(...readings: readonly ReadingRow[]): Household {
  return { ...emptyHousehold('en-IN'), readings };
}

const APRIL: ReadingRow = { date: '1/4/2025', import: '4,120.6', export: '', generation: '' };
const JUNE: ReadingRow = { date: '2025-06-01', import: '4640.3', export: '3151', confirmed: ['a/b:import'] };

it('tells what is new, there already, blank and different', () => {
  const household = book(APRIL, JUNE);
  const offers = [
    offer('2025-04-01', { import: '04120.60', export: '2655.2' }),
    offer('2025-05-01', { import: '4342.1' }),
    offer('2025-06-01', { import: '4640.4', export: '3151.0' }),
    offer('2025-06-01', { export: '3151.0' }),
  ];
  expect(fitOffers(offers, household).map((fit) => without(fit, 'offer'))).toEqual([
    { fit: 'fills', at: 0, blank: ['export'], differences: [] },
    { fit: 'new', at: null, blank: [], differences: [] },
    {
      fit: 'differs',
      at: 1,
      blank: [],
      differences: [{ key: 'import', typed: '4640.3', offered: '4640.4' }],
    },
    { fit: 'same', at: 1, blank: [], differences: [] },
  ]);
});

it('takes a comma that may be either mark for the number that it can be, and anything else for another', () => {
  const fit = (typed: string, offered: string): string =>
    fitOffers([offer('2025-04-01', { import: offered })], book({ ...APRIL, import: typed }))[0]?.fit ?? '';
  expect(fit('12,892', '12.892')).toBe('same');
  expect(fit('12,892', '12892')).toBe('same');
  expect(fit('12,892', '12893')).toBe('differs');
  expect(fit('l2', '12')).toBe('differs');
});

it('compares no reading with the last of a meter on the same day', () => {
  const final: ReadingRow = { date: '2025-05-01', import: '9', event: 'final' };
  expect(fitOffers([offer('2025-05-01', { import: '1' })], book(final))[0]?.fit).toBe('new');
});

it('names rates by their keys', () => {
  const rates = { import: { 1: '10', 2: '' }, export: { 1: '3' } };
  expect([...registerTexts({ date: '', import: ' ', rates })]).toEqual([
    ['import-1', '10'],
    ['export-1', '3'],
  ]);
});
