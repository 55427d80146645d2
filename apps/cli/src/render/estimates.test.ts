import { parseDay, type Compared, type DayNumber, type EstimateCost, type Period } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { estimateLines } from './estimates.ts';
import { makeNotation } from './notation.ts';

const STYLE = { notation: makeNotation('en', 2), currency: 'INR' };
const period: Period = {
  from: parseDay('2025-04-01') as DayNumber,
  to: parseDay('2025-05-01') as DayNumber,
};

/** Whole numbers by the estimate and as it should be. */
const compared = (estimated: number, right: number): Compared => {
  const whole = (numerator: number) => ({ numerator, denominator: 1 });
  return { estimated: whole(estimated), right: whole(right), difference: whole(estimated - right) };
};

function words(payable: Compared, more: Partial<EstimateCost> = {}): string {
  const figures = { import: compared(1, 1), export: compared(0, 0), payable };
  const cost: EstimateCost = {
    period,
    months: [{ period, ...figures }],
    ...figures,
    credit: null,
    isWhole: true,
    isByDays: false,
    ...more,
  };
  return estimateLines([cost], STYLE).slice(-2).join(' ');
}

it('says whether the bills come to more, to less or to the same', () => {
  expect(words(compared(300, 280))).toMatch(
    /By the estimate the bills come to 20\.00 INR more than they should\.$/,
  );
  expect(words(compared(280, 300))).toMatch(
    /By the estimate the bills come to 20\.00 INR less than they should\.$/,
  );
  expect(words(compared(300, 300))).toMatch(/Over all bills the estimate makes no difference in money\.$/);
});

it('says where not every bill can be compared', () => {
  expect(words(compared(1, 1), { isWhole: false })).toContain('Not every bill can be made in both ways');
});

it('has no line of credit where the tariff keeps none, and no sum of a single bill', () => {
  const text = estimateLines(
    [
      {
        period,
        months: [{ period, import: compared(2, 1), export: compared(0, 0), payable: compared(2, 1) }],
        import: compared(2, 1),
        export: compared(0, 0),
        payable: compared(2, 1),
        credit: null,
        isWhole: true,
        isByDays: false,
      },
    ],
    STYLE,
  ).join('\n');
  expect(text).not.toContain('Credit after it');
  expect(text).not.toContain('bills    ');
});
