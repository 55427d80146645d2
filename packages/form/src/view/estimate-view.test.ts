import { prepareTariff, quotientText, type ReadingRow } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { demoTariff } from '../../../../tests/support/demo.ts';
import { emptyHousehold, type Household } from '../household/household.ts';
import { estimateCostAt } from './estimate-view.ts';
import { viewBook } from './view-book.ts';

const tariff = prepareTariff(demoTariff());
const row = (date: string, taken: string, given: string, made: string): ReadingRow => ({
  date,
  import: taken,
  export: given,
  generation: made,
});
const FIRST = row('2025-04-01', '12480', '8310', '15225');
const LAST = row('2025-05-31', '13257', '8900', '16400');
const ESTIMATE: ReadingRow = { ...row('2025-05-01', '12910', '8310', '15805'), status: 'estimated' };
const PHOTO: ReadingRow = {
  ...row('2025-05-01', '12892', '8588', '15805'),
  edits: [
    { register: 'import', raw: '12910', wasEstimated: true, method: 'own-reading' },
    { register: 'export', raw: '8310', wasEstimated: true, method: 'own-reading' },
  ],
};

/** What the estimates cost in money, and which registers are shared by days, for the month of a row. */
function told(readings: readonly ReadingRow[], closing: number) {
  const blank = emptyHousehold('en-IN');
  const account = { ...blank.account, sanctionedLoad: '4', plantCapacity: '5', openingCredit: '35' };
  const household: Household = { ...blank, account, readings };
  const view = viewBook({ household, tariff, today: '2026-05-01' });
  const cost = estimateCostAt(view, tariff, closing);
  if (cost === null) return null;
  const { numerator, denominator } = cost.cost.payable.difference;
  return [quotientText(numerator, denominator, 2), cost.cost.months.length, cost.shared];
}

it('tells the cost of the run of bills that a month is in, from either of its ends', () => {
  // 2830 + 240 by the estimate, 613 + 360 by the photo: worked out outside the project.
  expect(told([FIRST, PHOTO, LAST], 1)).toEqual(['2097.00', 2, []]);
  expect(told([FIRST, PHOTO, LAST], 2)).toEqual(['2097.00', 2, []]);
});

it('names the registers that are a share by days', () => {
  expect(told([FIRST, ESTIMATE, LAST], 1)?.[2]).toBe('all');
  expect(told([FIRST, { ...PHOTO, estimated: ['generation'] }, LAST], 1)).toEqual([
    '2097.00',
    2,
    ['generation'],
  ]);
});

it('tells the cost of one bill after a photo, before the next reading', () => {
  expect(told([FIRST, PHOTO], 1)).toEqual(['2217.00', 1, []]);
});

it('tells nothing where no actual reading follows, nor where nothing was estimated', () => {
  expect(told([FIRST, ESTIMATE], 1)).toBeNull();
  expect(told([FIRST, row('2025-05-01', '12892', '8588', '15805'), LAST], 1)).toBeNull();
  expect(told([FIRST, PHOTO, LAST, row('2025-07-01', '13300', '9000', '17000')], 3)).toBeNull();
});
