import { parseDay, type DayNumber, type ReadingRow } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { emptyHousehold, type Household } from '../household/household.ts';
import { anchorIn, hasPlainFactors } from './book-anchor.ts';

const MAY = parseDay('2025-05-01') as DayNumber;
const book = (...readings: readonly ReadingRow[]): Household => ({ ...emptyHousehold('en-IN'), readings });
const anchor = (row: Partial<ReadingRow>): unknown =>
  anchorIn(book({ date: '1 May 2025', ...row }), [MAY], ['import', 'export']);

it('goes on from a reading that has a number for all that is counted', () => {
  expect(anchor({ import: '4,342.1', export: '2935,8' })).toEqual({
    day: MAY,
    texts: { import: '4342.1', export: '2935.8' },
  });
  expect(anchor({ import: '4342.1', export: '' })).toBeNull();
  expect(anchor({ import: '4342.1', export: '12,345' })).toBeNull();
  expect(anchor({ import: '4342.1', export: '-1' })).toBeNull();
  expect(anchor({ date: '2 May 2025', import: '1', export: '1' })).toBeNull();
  expect(anchor({ import: '1', export: '1', event: 'final' })).toBeNull();
});

it('knows factors that change nothing', () => {
  const withFactor = (multiplyingFactor: string): Household => {
    const household = book();
    const { meters } = household.account;
    const grid = { ...meters.grid, multiplyingFactor };
    return { ...household, account: { ...household.account, meters: { ...meters, grid } } };
  };
  expect(['1', '', ' 1.0 ', '40', 'x'].map((text) => hasPlainFactors(withFactor(text)))).toEqual([
    true,
    true,
    true,
    false,
    false,
  ]);
});
