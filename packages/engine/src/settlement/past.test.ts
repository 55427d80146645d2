import { describe, expect, it } from 'vitest';
import { dayOf, periodOf } from '../../../../tests/support/make.ts';
import { pastValues, type LookingBack } from './past.ts';
import type { PastPeriod, SettleContext } from './settle-context.ts';

/** Periods that each begin where the one before ends, with 1, 2, 4 … thousandths. */
const past = (...days: readonly string[]): readonly PastPeriod[] =>
  days.slice(1).map((to, at) => ({ period: periodOf(days[at] ?? to, to), quantities: { use: 2 ** at } }));

const total = (parts: { since?: string; periods?: string; through?: 'this-period' | 'previous-period' }) =>
  ({
    is: 'running-total',
    id: 'sum',
    label: 'Sum',
    clause: 'T 1',
    of: 'use',
    through: 'previous-period',
    ...parts,
  }) as const;
const mean = (whenFewer: 'mean-of-those' | 'refused', periods: string): LookingBack => ({
  is: 'mean',
  id: 'mean',
  label: 'Mean',
  clause: 'T 1',
  of: 'use',
  periods,
  through: 'this-period',
  whenFewer,
  rounding: { step: '0.001', mode: 'half-up' },
});
const USE = { at: 0, whole: 0, scale: 1, text: 'use' };

function values(
  definition: LookingBack,
  before: readonly PastPeriod[],
  from: string,
  to: string,
): readonly number[] {
  const context: SettleContext = {
    values: Float64Array.of(1000),
    given: [null],
    period: periodOf(from, to),
    past: before,
    account: { since: dayOf('2024-03-01'), settlementDay: '03-31' },
  };
  return pastValues(definition, context, USE);
}

const YEAR = past('2025-01-01', '2025-02-01', '2025-03-01', '2025-04-01', '2025-05-01');

describe('a total since a day of the year', () => {
  it('counts the periods that begin on it or later', () => {
    expect(values(total({ since: '03-01' }), YEAR, '2025-05-01', '2025-06-01')).toEqual([4, 8]);
    expect(values(total({ since: '03-02' }), YEAR, '2025-05-01', '2025-06-01')).toEqual([8]);
    expect(
      values(total({ since: '03-01', through: 'this-period' }), YEAR, '2025-05-01', '2025-06-01'),
    ).toEqual([4, 8, 1000]);
  });

  it('begins anew with the period that begins on it, and not with the one that holds it', () => {
    expect(values(total({ since: '05-01' }), YEAR, '2025-05-01', '2025-06-01')).toEqual([]);
    expect(values(total({ since: '05-02' }), YEAR, '2025-05-01', '2025-06-01')).toEqual([1, 2, 4, 8]);
  });

  it('goes by the year before where the day is still to come', () => {
    const winter = past('2024-09-30', '2024-10-31', '2024-11-30');
    expect(values(total({ since: '10-31' }), winter, '2024-11-30', '2024-12-31')).toEqual([2]);
    expect(values(total({ since: '10-31' }), winter, '2025-01-01', '2025-01-31')).toEqual([2]);
  });

  it('begins on 28 February where there is no 29th', () => {
    const before = [{ period: periodOf('2025-02-28', '2025-03-28'), quantities: { use: 7 } }];
    expect(values(total({ since: '02-29' }), before, '2025-03-28', '2025-04-28')).toEqual([7]);
    const leap = [{ period: periodOf('2024-02-28', '2024-03-28'), quantities: { use: 7 } }];
    expect(values(total({ since: '02-29' }), leap, '2024-03-28', '2024-04-28')).toEqual([]);
  });
});

describe('a total of a year that the account tells', () => {
  it('begins on the day the account began', () => {
    expect(values(total({ since: 'anniversary' }), YEAR, '2025-05-01', '2025-06-01')).toEqual([4, 8]);
  });

  it('begins on the day after the one its owner chose', () => {
    expect(values(total({ since: 'chosen' }), YEAR, '2025-05-01', '2025-06-01')).toEqual([8]);
    // The period from 1 April begins the year: nothing before it counts. The one that holds 31 March does not.
    expect(values(total({ since: 'chosen' }), YEAR.slice(0, 3), '2025-04-01', '2025-05-01')).toEqual([]);
    expect(values(total({ since: 'chosen' }), YEAR.slice(0, 2), '2025-03-01', '2025-04-01')).toEqual([1, 2]);
  });
});

describe('a total over periods', () => {
  it.each([
    ['1', 'previous-period', [8]],
    ['3', 'previous-period', [2, 4, 8]],
    ['5', 'previous-period', [1, 2, 4, 8]],
    ['1', 'this-period', [1000]],
    ['3', 'this-period', [4, 8, 1000]],
  ] as const)('counts %s through the %s', (periods, through, expected) => {
    expect(values(total({ periods, through }), YEAR, '2025-05-01', '2025-06-01')).toEqual(expected);
  });

  it('counts all of them where no number is named', () => {
    expect(values(total({}), YEAR, '2025-05-01', '2025-06-01')).toEqual([1, 2, 4, 8]);
  });

  it('refuses an earlier period that lacks the quantity', () => {
    const gap = [...YEAR, { period: periodOf('2025-05-01', '2025-06-01'), quantities: {} }];
    expect(() => values(total({}), gap, '2025-06-01', '2025-07-01')).toThrow('settlement/past-unknown');
    expect(values(total({ periods: '1', through: 'this-period' }), gap, '2025-06-01', '2025-07-01')).toEqual([
      1000,
    ]);
  });
});

describe('a mean', () => {
  it('is of the periods there are, or refused one short of what it needs', () => {
    const five = ['2025-05-01', '2025-06-01'] as const;
    expect(values(mean('mean-of-those', '12'), YEAR, ...five)).toEqual([1, 2, 4, 8, 1000]);
    expect(values(mean('refused', '5'), YEAR, ...five)).toEqual([1, 2, 4, 8, 1000]);
    expect(() => values(mean('refused', '6'), YEAR, ...five)).toThrow('settlement/too-few-periods');
  });
});
