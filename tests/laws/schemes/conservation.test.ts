import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Figure, LedgerEntry, UnitsMonth } from '@unitbook/engine';
import { unexplained } from '../../support/recompute.ts';
import { banksOf, suffixesOf, type SchemeSpec } from '../random-scheme.ts';
import { compared, exact, figuresOf, keptYear, schemeYear, sumOf, type Exact } from './scheme-year.ts';

const NOTHING: Exact = [0n, 1n];

/** Whole watt-hours of a figure of units. */
const wh = (figure: Figure | undefined): number => {
  if (figure?.denominator !== 1000) throw new Error('no figure of units');
  return figure.numerator as number;
};

function expectBalanced(entry: LedgerEntry): void {
  const { opening, added, used, paid, lapsed, closing } = entry;
  expect(compared(sumOf([opening, added]), sumOf([used, paid, lapsed, closing]))).toBe(0);
  for (const column of [opening, added, used, paid, lapsed, closing]) {
    expect(compared(exact(column), NOTHING)).toBeGreaterThanOrEqual(0);
  }
}

/** The quantities of a netting: what each had, and what is left of it. */
function netted({ quantities }: UnitsMonth, spec: SchemeSpec) {
  const suffixes = suffixesOf(spec);
  const supply = [...banksOf(spec), ...suffixes.map((suffix) => `export${suffix}`)];
  const demand = suffixes.map((suffix) => `import${suffix}`);
  const total = (names: readonly string[]): number =>
    names.reduce((all, name) => all + wh(quantities[name]), 0);
  const left = (names: readonly string[]): number => total(names.map((name) => `net.${name}`));
  return {
    setOff: wh(quantities['net']),
    used: total(supply) - left(supply),
    met: total(demand) - left(demand),
    each: [...supply, ...demand].map(
      (name) => [wh(quantities[name]), wh(quantities[`net.${name}`])] as const,
    ),
  };
}

/** What one unit of the supply can be worth at most, in percent. */
function mostWorth({ routes, list }: SchemeSpec): number {
  const worths = routes === 'list' ? list.map(({ worth }) => Number.parseFloat(worth)) : [100];
  return Math.max(100, ...worths);
}

describe('under any scheme of ledgers', () => {
  it('every ledger balances in every period, and hands on what it closes with', () => {
    fc.assert(
      fc.property(schemeYear, (one) => {
        const closing = new Map<string, Figure>();
        for (const { ledgers } of keptYear(one)) {
          for (const entry of ledgers) {
            expectBalanced(entry);
            const before = closing.get(entry.id);
            if (before !== undefined) expect(compared(exact(entry.opening), exact(before))).toBe(0);
            closing.set(entry.id, entry.closing);
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  it('a netting takes from the supply and the demand what it sets off, and no more than there is', () => {
    fc.assert(
      fc.property(schemeYear, (one) => {
        const { spec } = one;
        for (const month of keptYear(one)) {
          const { setOff, used, met, each } = netted(month, spec);
          expect(met).toBe(setOff);
          for (const [had, left] of each) {
            expect(left).toBeGreaterThanOrEqual(0);
            expect(left).toBeLessThanOrEqual(had);
          }
          if (setOff === 0) expect(used).toBe(0);
          if (spec.routes !== 'list') expect(used).toBe(setOff);
          if (spec.cap !== null) expect(setOff).toBeLessThanOrEqual(wh(month.quantities['cap']));
          // Each route rounds what its units are worth by less than a step, once.
          const step = Number.parseFloat(spec.rounding.step) * 1000;
          const slack = spec.routes === 'list' ? spec.list.length * step * 2 : 0;
          expect(setOff).toBeLessThanOrEqual((used * mostWorth(spec)) / 100 + slack);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('no unit given is set off, paid and carried at once', () => {
    fc.assert(
      fc.property(schemeYear, (one) => {
        const banks = banksOf(one.spec);
        fc.pre(banks.length > 0);
        let [given, taken] = [banks.length * one.brought.units, 0];
        const months = keptYear(one);
        for (const month of months) {
          given += suffixesOf(one.spec).reduce(
            (all, suffix) => all + wh(month.quantities[`export${suffix}`]),
            0,
          );
          const units = month.ledgers.filter(({ unit }) => unit === 'kWh');
          taken += netted(month, one.spec).used;
          for (const { paid, lapsed } of units) taken += wh(paid) + wh(lapsed);
        }
        const last = months.at(-1)?.ledgers.filter(({ unit }) => unit === 'kWh') ?? [];
        expect(taken + last.reduce((all, { closing }) => all + wh(closing), 0)).toBe(given);
      }),
      { numRuns: 60 },
    );
  });

  it('a bill is the sum of the lines that count, and a credit never more than was there or may be met', () => {
    fc.assert(
      fc.property(schemeYear, (one) => {
        for (const { bill, ledgers } of keptYear(one)) {
          const counted = bill.lines.filter(({ counts }) => counts).map(({ figure }) => figure);
          expect(compared(sumOf(counted), exact(bill.sum))).toBe(0);
          const line = (id: string) =>
            bill.lines.filter(({ figure }) => figure.id === id).map(({ figure }) => figure);
          const credit = line('credit');
          if (credit.length === 0) continue;
          const rewards = ledgers.filter(({ id }) => id === 'rewards').map(({ opening }) => opening);
          const available = sumOf([...rewards, ...line('reward')]);
          const met = sumOf([...line('slabs'), ...line('block-0')]);
          const [top, bottom] = sumOf(credit);
          const used: Exact = [-top, bottom];
          expect(compared(used, NOTHING)).toBeGreaterThanOrEqual(0);
          expect(compared(used, available)).toBeLessThanOrEqual(0);
          // Capped at a percentage, what may be met is rounded to a step, which may lie above a full hundred.
          const { money, lines } = one.spec;
          const isRounded = money?.percent !== null && lines !== 'none';
          if (!isRounded) expect(compared(used, met)).toBeLessThanOrEqual(0);
          const rewarded = bill.lines.filter(({ figure }) => figure.id === 'reward');
          expect(rewarded.map(({ counts }) => counts)).toEqual(credit.map(() => false));
        }
      }),
      { numRuns: 60 },
    );
  });

  it('what a ledger pays stands in one bill, this one or the next', () => {
    fc.assert(
      fc.property(schemeYear, (one) => {
        let waiting: number[] = [];
        for (const { bill, ledgers } of keptYear(one)) {
          const paying = ledgers.flatMap(({ payment }) => (payment === null ? [] : [payment]));
          const same = paying.filter(({ inBill }) => inBill === 'same').length;
          const lines = bill.lines.filter(({ figure }) => figure.id === 'surplus');
          expect(lines.length).toBe(waiting.length + same);
          waiting = paying.filter(({ inBill }) => inBill === 'next').map((_, at) => at);
          for (const { figure } of lines) expect(compared(exact(figure), NOTHING)).toBeLessThanOrEqual(0);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('every figure is explained by what it shows', () => {
    fc.assert(
      fc.property(schemeYear, (one) => {
        const months = keptYear({ ...one, months: one.months.slice(0, 4) });
        expect(
          months
            .flatMap(figuresOf)
            .flatMap(unexplained)
            .map(({ id }) => id),
        ).toEqual([]);
      }),
      { numRuns: 25 },
    );
  });
});
