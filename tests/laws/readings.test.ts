import * as fc from 'fast-check';
import {
  exactText,
  keepBook,
  readAccount,
  type Account,
  type ReadingRow,
  type Tariff,
} from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { demoTariff } from '../support/demo.ts';
import { dayOf } from '../support/make.ts';
import { unexplained } from '../support/recompute.ts';
import { dayText, addDays } from '@unitbook/engine';

/** Every thousandth of a unit is counted: nothing is rounded off. */
const TARIFF: Tariff = demoTariff(
  ['"decimals": "0"', '"decimals": "3"'],
  ['"roundedAt": "reading"', '"roundedAt": "difference"'],
);
const FIRST = dayOf('2025-04-01');

/** A household as it really was: thousandths on each of its registers, day by day. */
interface Truth {
  readonly digits: '4' | '5' | '6' | '7';
  readonly decimals: '0' | '1' | '3';
  readonly rates: boolean;
  /** What each of two import and two export registers stands at first. */
  readonly start: readonly number[];
  /** What the new meter stands at; null: no meter is changed. */
  readonly begins: readonly number[] | null;
  readonly factors: readonly [string, string];
  /** Steps of the last digit that each register goes on, for each part of each period. */
  readonly parts: readonly (readonly (readonly number[])[])[];
  /** The period in which the meter is changed, and between which of its parts. */
  readonly changedIn: number;
}

const four = (each: fc.Arbitrary<number>): fc.Arbitrary<readonly number[]> =>
  fc.tuple(each, each, each, each);

const truth: fc.Arbitrary<Truth> = fc
  .record({
    digits: fc.constantFrom('4' as const, '5' as const, '6' as const, '7' as const),
    decimals: fc.constantFrom('0' as const, '1' as const, '3' as const),
    rates: fc.boolean(),
    changes: fc.boolean(),
    factors: fc.tuple(fc.constantFrom('1', '1.5', '20'), fc.constantFrom('1', '0.25', '40')),
    changedIn: fc.nat(2),
    shares: four(fc.double({ min: 0, max: 1, noNaN: true })),
    begins: four(fc.nat(90)),
    parts: fc.array(fc.tuple(four(fc.nat(300)), four(fc.nat(300))), { minLength: 3, maxLength: 3 }),
  })
  .map(({ shares, changes, begins, ...rest }) => {
    const full = 10 ** (Number.parseInt(rest.digits, 10) + Number.parseInt(rest.decimals, 10));
    // Half of all registers begin within the last tenth of their scale: those can pass it.
    const start = shares.map((share, at) =>
      Math.min(full - 1, Math.floor(at % 2 === 0 ? full * (0.95 + share / 20) : (full / 2) * share)),
    );
    return { ...rest, start, begins: changes ? begins : null };
  });

const NAMES = ['import', 'import', 'export', 'export'] as const;

function textOf(steps: number, { digits, decimals }: Truth): string {
  const places = Number.parseInt(decimals, 10);
  const full = 10 ** (Number.parseInt(digits, 10) + places);
  return exactText(steps % full, 10 ** places);
}

/** A row of the four registers: as rates, or the first of each kind alone. */
function rowOf(day: number, steps: readonly number[], one: Truth, event?: 'final' | 'first'): ReadingRow {
  const texts = steps.map((value) => textOf(value, one));
  const at = { date: dayText(addDays(FIRST, day)), ...(event === undefined ? {} : { event }) };
  if (!one.rates) return { ...at, import: texts[0] ?? '', export: texts[2] ?? '' };
  return {
    ...at,
    rates: {
      import: { '1': texts[0] ?? '', '2': texts[1] ?? '' },
      export: { '1': texts[2] ?? '', '2': texts[3] ?? '' },
    },
  };
}

function accountOf(one: Truth): Account {
  const rates = one.rates ? { rates: [{ id: '1' }, { id: '2' }] } : {};
  const register = { digits: one.digits, decimals: one.decimals, ...rates };
  const meter = { serial: 'P-1', multiplyingFactor: one.factors[0], import: register, export: register };
  const later = {
    ...meter,
    serial: 'P-2',
    multiplyingFactor: one.factors[1],
    from: dayText(addDays(FIRST, one.changedIn * 30 + 15)),
  };
  const { value, findings } = readAccount(
    JSON.stringify({
      format: 'unitbook-account-1',
      id: 'L',
      sanctionedLoad: '90',
      plantCapacity: '90',
      openingCredit: '0',
      meters: { grid: one.begins === null ? meter : { ...meter, later: [later] } },
    }),
  );
  if (value === null) throw new Error(JSON.stringify(findings));
  return value;
}

const plus = (a: readonly number[], b: readonly number[] = []): number[] =>
  a.map((value, at) => value + (b[at] ?? 0));

/** The rows of a household, and what it truly took and gave, in thousandths times the factors' thousandths. */
function told(one: Truth) {
  const rows: ReadingRow[] = [rowOf(0, one.start, one)];
  const sums = { import: 0n, export: 0n };
  let shown: readonly number[] = one.start;
  let factor = one.factors[0];
  const count = (steps: readonly number[]): void => {
    steps.forEach((value, at) => {
      const name = NAMES[at] ?? 'import';
      if (!one.rates && at % 2 === 1) return;
      const thousandths = BigInt(value) * 10n ** BigInt(3 - Number.parseInt(one.decimals, 10));
      sums[name] +=
        thousandths *
        BigInt(Math.trunc(Number.parseInt(factor.replace('.', ''), 10))) *
        10n ** BigInt(2 - (factor.split('.')[1] ?? '').length);
    });
  };
  one.parts.forEach(([first = [], second = []], period) => {
    shown = plus(shown, first);
    count(first);
    if (one.begins !== null && period === one.changedIn) {
      rows.push(rowOf(period * 30 + 15, shown, one, 'final'));
      shown = one.begins;
      [, factor] = one.factors;
      rows.push(rowOf(period * 30 + 15, shown, one, 'first'));
    }
    shown = plus(shown, second);
    count(second);
    rows.push(rowOf((period + 1) * 30, shown, one));
  });
  return { rows, sums };
}

describe('readings of any household', () => {
  it('make periods whose units sum to what the registers counted, whatever happens to the meters', () => {
    fc.assert(
      fc.property(truth, (one) => {
        const { rows, sums } = told(one);
        const { value, findings } = keepBook({ account: accountOf(one), tariff: TARIFF, readings: rows });
        expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
        expect(value.months).toHaveLength(one.parts.length);
        for (const name of ['import', 'export'] as const) {
          // Factors have at most two decimals: hundredths of watt-hours are counted, and cut in each period.
          const counted = value.months.map(({ energy }) => energy[name]);
          expect(counted.flatMap(unexplained)).toEqual([]);
          const sum = counted.reduce((all, { numerator }) => all + BigInt(numerator), 0n);
          const exact = sums[name];
          expect(sum * 100n <= exact && exact < (sum + BigInt(counted.length)) * 100n).toBe(true);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('make the same bills whether a change of meters is told or not, where the new one goes on from the old', () => {
    fc.assert(
      fc.property(truth, (one) => {
        const plain = { ...one, begins: null };
        const { rows } = told(plain);
        const at = one.changedIn * 30 + 15;
        const [first = []] = one.parts[one.changedIn] ?? [];
        const before = one.parts
          .slice(0, one.changedIn)
          .flat()
          .reduce<readonly number[]>((sum, part) => plus(sum, part), one.start);
        const shown = plus(before, first);
        const index = one.changedIn + 1;
        const changed = [
          ...rows.slice(0, index),
          rowOf(at, shown, plain, 'final'),
          rowOf(at, shown, plain, 'first'),
          ...rows.slice(index),
        ];
        const same = { ...one, factors: [one.factors[0], one.factors[0]] as const };
        const bills = (account: Account, readings: readonly ReadingRow[]) =>
          keepBook({ account, tariff: TARIFF, readings }).value.months.map(({ bill }) =>
            exactText(bill.payable.numerator, bill.payable.denominator),
          );
        const told2 = bills(accountOf({ ...same, begins: shown }), changed);
        expect(told2).toEqual(bills(accountOf(plain), rows));
        expect(told2).toHaveLength(3);
      }),
      { numRuns: 200 },
    );
  });
});
