import { describe, expect, it } from 'vitest';
import { dayOf, periodOf } from '../../../../tests/support/make.ts';
import type { LedgerRule } from '../tariff/index.ts';
import { closesIn, emptyLedger, moveLedger, type LedgerInput, type LedgerState } from './ledger.ts';
import { SettlementProblem } from './settlement-problem.ts';

const rule = (parts: Partial<LedgerRule> = {}): LedgerRule => ({
  id: 'bank',
  label: 'Bank',
  unit: 'kWh',
  clause: 'T 1',
  adds: 'export',
  ...parts,
});
const NOBODY = { since: null, settlementDay: null };
const APRIL = periodOf('2025-04-01', '2025-05-01');

/** Lots by the day they were born. */
const state = (lots: Readonly<Record<string, number>>, creditSince: string | null = null): LedgerState => ({
  lots: Object.entries(lots).map(([day, amount]) => ({ born: dayOf(day), amount })),
  denominator: 1000,
  creditSince: creditSince === null ? null : dayOf(creditSince),
});
const input = (parts: Partial<LedgerInput> = {}): LedgerInput => ({
  state: emptyLedger(1000),
  keeps: 0,
  adds: 0,
  most: null,
  threshold: null,
  period: APRIL,
  account: NOBODY,
  ...parts,
});

describe('units in a ledger', () => {
  it('are used oldest first', () => {
    // 15 of 30 are used: all 10 of February and 5 of March.
    const before = state({ '2025-02-01': 10, '2025-03-01': 20 });
    const { used, closing, next } = moveLedger(rule(), input({ state: before, keeps: 15, adds: 7 }));
    expect([used, closing]).toEqual([15, 22]);
    expect(next.lots).toEqual([
      { born: dayOf('2025-03-01'), amount: 15 },
      { born: dayOf('2025-05-01'), amount: 7 },
    ]);
  });

  it('leave no empty lot behind', () => {
    const before = state({ '2025-02-01': 10, '2025-03-01': 20 });
    expect(moveLedger(rule(), input({ state: before, keeps: 20 })).next.lots).toEqual([
      { born: dayOf('2025-03-01'), amount: 20 },
    ]);
    expect(moveLedger(rule(), input({ state: before, keeps: 0 })).next.lots).toEqual([]);
  });
});

describe('a life of each unit', () => {
  const year = rule({ life: { clause: 'T 2', months: '12', of: 'each-unit' } });

  it.each([
    ['a day before its end', '2026-04-02', '2026-04-30', 0],
    ['on its end', '2026-04-01', '2026-05-01', 80],
    ['a day after its end', '2026-04-02', '2026-05-02', 80],
  ])('ends so many months after it was born, a period that ends %s', (_, from, to, outlived) => {
    const { outlived: gone, closing } = moveLedger(
      year,
      input({ state: state({ '2025-05-01': 80 }), keeps: 80, period: periodOf(from, to) }),
    );
    expect([gone, closing]).toEqual([outlived, 80 - outlived]);
  });

  it('counts to the last of a month that is too short', () => {
    const month = rule({ life: { clause: 'T 2', months: '1', of: 'each-unit' } });
    const born = state({ '2025-01-31': 5 });
    const until = (to: string): number =>
      moveLedger(month, input({ state: born, keeps: 5, period: periodOf('2025-02-01', to) })).outlived;
    expect([until('2025-02-27'), until('2025-02-28')]).toEqual([0, 5]);
  });

  it('lets what is used go first, and what was just earned stay', () => {
    const month = rule({ life: { clause: 'T 2', months: '1', of: 'each-unit' } });
    // Of 30 old units 25 are used: 5 outlive April; the 9 of April were born on its end.
    const moves = moveLedger(month, input({ state: state({ '2025-04-01': 30 }), keeps: 5, adds: 9 }));
    expect([moves.used, moves.outlived, moves.closing]).toEqual([25, 5, 9]);
  });
});

describe('a life of the time in credit', () => {
  const three = rule({ life: { clause: 'T 2', months: '3', of: 'time-in-credit' } });

  it('ends with the period that makes it so many months', () => {
    const until = (to: string, since = '2025-02-01') =>
      moveLedger(
        three,
        input({ state: state({ '2025-03-01': 4 }, since), keeps: 4, period: periodOf('2025-04-01', to) }),
      );
    expect(until('2025-04-30')).toMatchObject({
      outlived: 0,
      closing: 4,
      next: { creditSince: dayOf('2025-02-01') },
    });
    expect(until('2025-05-01')).toMatchObject({ outlived: 4, closing: 0, next: { creditSince: null } });
    expect(until('2025-05-02')).toMatchObject({ outlived: 4, closing: 0 });
  });

  it('begins with the first day of the period that earns something, and anew where one ends with nothing', () => {
    const before = state({ '2025-03-01': 4 }, '2025-03-01');
    const empty = moveLedger(three, input({ state: before, keeps: 0 }));
    expect(empty.next.creditSince).toBe(null);
    const again = moveLedger(
      three,
      input({ state: empty.next, adds: 6, period: periodOf('2025-05-01', '2025-06-01') }),
    );
    expect(again.next.creditSince).toBe(dayOf('2025-05-01'));
  });

  it('takes what was earned last along', () => {
    // Old and new together are one balance: there has been one for three months.
    const before = state({ '2025-03-01': 4 }, '2025-02-01');
    const moves = moveLedger(three, input({ state: before, keeps: 1, adds: 8 }));
    expect([moves.used, moves.outlived, moves.closing]).toEqual([3, 9, 0]);
  });
});

describe('a ledger closes', () => {
  const on = (days: NonNullable<LedgerRule['close']>['on'], everyYears?: string): LedgerRule =>
    rule({
      close: {
        clause: 'T 3',
        on: days,
        surplus: 'lapses',
        ...(everyYears === undefined ? {} : { everyYears }),
      },
    });
  const march = (year: number) => periodOf(`${String(year)}-03-01`, `${String(year)}-04-01`);
  const since = (day: string) => ({ since: dayOf(day), settlementDay: null });

  it('never, where nothing says so, and in every period, where it does', () => {
    expect(closesIn(rule(), APRIL, NOBODY)).toBe(false);
    expect(closesIn(on('every-period'), APRIL, NOBODY)).toBe(true);
  });

  it('on each of several days', () => {
    const halves = on(['03-31', '09-30']);
    expect(closesIn(halves, march(2025), NOBODY)).toBe(true);
    expect(closesIn(halves, APRIL, NOBODY)).toBe(false);
    expect(closesIn(halves, periodOf('2025-09-30', '2025-10-31'), NOBODY)).toBe(true);
  });

  it('on the last day of each year of the account', () => {
    const account = since('2020-04-30');
    const closes = (from: string, to: string) => closesIn(on('anniversary'), periodOf(from, to), account);
    expect(closes('2025-04-01', '2025-04-29')).toBe(false);
    expect(closes('2025-04-01', '2025-04-30')).toBe(true);
    expect(closes('2025-04-30', '2025-05-31')).toBe(false);
  });

  it.each([
    ['on 29 February', '2024-02-29'],
    ['on 1 March', '2023-03-01'],
  ])('at the end of February, where the account began %s', (_, began) => {
    const closes = (from: string, to: string) =>
      closesIn(on('anniversary'), periodOf(from, to), since(began));
    expect(closes('2025-02-28', '2025-03-28')).toBe(true);
    expect(closes('2025-01-28', '2025-02-28')).toBe(false);
    expect(closes('2025-03-01', '2025-03-28')).toBe(false);
    // In a leap year an account of 1 March has one day more.
    expect(closes('2028-02-29', '2028-03-28')).toBe(began === '2023-03-01');
  });

  it('at the end of every second year of the account', () => {
    const account = since('2023-05-10');
    const may = [2024, 2025, 2026, 2027].map((year) =>
      periodOf(`${String(year)}-05-01`, `${String(year)}-06-01`),
    );
    expect(may.map((period) => closesIn(on('anniversary', '2'), period, account))).toEqual([
      false,
      true,
      false,
      true,
    ]);
  });

  it('on the day its owner chose', () => {
    const account = { since: null, settlementDay: '04-15' };
    expect(closesIn(on('chosen'), APRIL, account)).toBe(true);
    expect(closesIn(on('chosen'), march(2025), account)).toBe(false);
  });

  it.each([
    ['after the day of its year', '2023-05-10', [false, true, false, true]],
    ['before the day of its year', '2023-03-30', [true, false, true, false]],
    ['on the day of its year', '2023-03-31', [false, true, false, true]],
  ])('every second year from the first such day, of an account that began %s', (_, began, expected) => {
    const closing = [2023, 2024, 2025, 2026].map((year) =>
      closesIn(on(['03-31'], '2'), march(year), since(began)),
    );
    expect(closing).toEqual(expected);
  });

  it.each([
    ['anniversary', undefined],
    ['chosen', undefined],
    [['04-15'], '2'],
  ] as const)('on a day that the account does not tell: %s', (days, years) => {
    const closing = on(typeof days === 'string' ? days : [...days], years);
    expect(() => closesIn(closing, APRIL, NOBODY)).toThrow(SettlementProblem);
  });
});

describe('a close', () => {
  const payment = { clause: 'T 4', label: 'Paid', rate: '2', inBill: 'same' } as const;
  const paying = (parts: Partial<NonNullable<LedgerRule['payment']>> = {}): LedgerRule =>
    rule({
      close: { clause: 'T 3', on: 'every-period', surplus: 'paid' },
      payment: { ...payment, ...parts },
    });
  const paid = (of: LedgerRule, parts: Partial<LedgerInput>) => {
    const moves = moveLedger(of, input(parts));
    return [moves.paid, moves.dropped, moves.closing];
  };

  it('pays the whole balance, or drops it', () => {
    expect(paid(paying(), { adds: 9 })).toEqual([9, 0, 0]);
    expect(paid(paying(), { adds: 0 })).toEqual([0, 0, 0]);
    const dropping = rule({ close: { clause: 'T 3', on: 'every-period', surplus: 'lapses' } });
    expect(paid(dropping, { adds: 9 })).toEqual([0, 9, 0]);
  });

  it.each([
    ['below it', 'whole', 49_999, [0, 0, 49_999]],
    ['just reached', 'whole', 50_000, [0, 0, 50_000]],
    ['just passed', 'whole', 50_001, [50_001, 0, 0]],
    ['just reached', 'excess', 50_000, [0, 0, 50_000]],
    ['just passed', 'excess', 50_001, [1, 0, 50_000]],
  ] as const)('pays above a threshold only: %s, %s', (_, pays, adds, expected) => {
    expect(paid(paying({ above: '50', pays, rest: 'carried' }), { adds, threshold: 50_000 })).toEqual(
      expected,
    );
  });

  it.each([
    [49_999, [0, 0, 49_999]],
    [50_000, [50_000, 0, 0]],
    [50_001, [50_001, 0, 0]],
  ] as const)('pays from a threshold on, that included: %i', (adds, expected) => {
    const from = paying({ atLeast: '50', pays: 'whole', rest: 'carried' });
    expect(paid(from, { adds, threshold: 50_000 })).toEqual(expected);
  });

  it('drops what is not paid, where the rest lapses', () => {
    const excess = paying({ above: '50', pays: 'excess', rest: 'lapses' });
    expect(paid(excess, { adds: 50_000, threshold: 50_000 })).toEqual([0, 50_000, 0]);
    expect(paid(excess, { adds: 50_001, threshold: 50_000 })).toEqual([1, 50_000, 0]);
  });

  it.each([
    [0, [0, 0, 9]],
    [8, [8, 0, 1]],
    [9, [9, 0, 0]],
    [10, [9, 0, 0]],
  ])('pays at most %i', (most, expected) => {
    expect(paid(paying({ most: 'import', rest: 'carried' }), { adds: 9, most })).toEqual(expected);
  });

  it('pays out of the oldest, and only what is still alive', () => {
    const living = {
      ...paying({ most: 'import', rest: 'carried' }),
      life: { clause: 'T 2', months: '2', of: 'each-unit' },
    } as const;
    // The 7 of March die with April; of 20 and 5 that are left 21 are paid.
    const before = state({ '2025-03-01': 7, '2025-04-01': 20 });
    const moves = moveLedger(living, input({ state: before, keeps: 27, adds: 5, most: 21 }));
    expect([moves.outlived, moves.paid, moves.closing]).toEqual([7, 21, 4]);
    expect(moves.next.lots).toEqual([{ born: dayOf('2025-05-01'), amount: 4 }]);
  });
});
