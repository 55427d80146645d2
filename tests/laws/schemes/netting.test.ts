import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { UnitsMonth } from '@unitbook/engine';
import { valueOf } from '../../support/make.ts';
import {
  documentOf,
  periodsOf,
  scheme,
  suffixesOf,
  year,
  type MonthSpec,
  type SchemeSpec,
} from '../random-scheme.ts';
import { accountOf, figuresOf, kept, keptYear, schemeYear, type SchemeYear } from './scheme-year.ts';

const ACCOUNT = { since: '2023-12-15', settlementDay: '09-30' };

const wh = ({ quantities }: UnitsMonth, name: string): number => {
  const figure = quantities[name];
  if (figure === undefined) throw new Error(name);
  return figure.numerator as number;
};

/** A scheme of plain netting with no ledgers, in so many blocks and by one kind of routes. */
const plain = (spec: SchemeSpec, routes: SchemeSpec['routes'], blocks: number): SchemeSpec => ({
  ...spec,
  routes,
  blocks,
  banks: 'none',
  cap: null,
  money: null,
});

/** Export and import that are left of a year in all. */
function leftOver(spec: SchemeSpec, months: readonly MonthSpec[]): readonly [given: number, taken: number] {
  const all = kept(documentOf(spec), periodsOf(spec, months), ACCOUNT);
  const total = (name: string): number => all.reduce((sum, month) => sum + wh(month, name), 0);
  return [total('left-export'), total('left-import')];
}

const atMost = (coarse: readonly [number, number], fine: readonly [number, number]): void => {
  expect(coarse[0]).toBeLessThanOrEqual(fine[0]);
  expect(coarse[1]).toBeLessThanOrEqual(fine[1]);
};

/** Two periods as one. */
const joined = (first: MonthSpec, second: MonthSpec): MonthSpec => ({
  ...first,
  days: first.days + second.days,
  imports: first.imports.map((units, at) => units + (second.imports[at] ?? 0)),
  exports: first.exports.map((units, at) => units + (second.exports[at] ?? 0)),
});

describe('a coarser window leaves no more over', () => {
  it('where all blocks are one', () => {
    fc.assert(
      fc.property(scheme, year, (spec, months) => {
        const blocks = Math.max(1, spec.blocks);
        const together = months.map((month) => ({
          ...month,
          imports: [month.imports.slice(0, blocks).reduce((sum, units) => sum + units, 0)],
          exports: [month.exports.slice(0, blocks).reduce((sum, units) => sum + units, 0)],
        }));
        const inBlocks = leftOver(plain(spec, 'same-block', blocks), months);
        atMost(leftOver(plain(spec, 'any', 0), together), inBlocks);
      }),
      { numRuns: 40 },
    );
  });

  it('where two periods are one', () => {
    fc.assert(
      fc.property(
        scheme,
        fc.constantFrom('any' as const, 'same-block' as const),
        year,
        (spec, routes, months) => {
          const pairs = months.flatMap((month, at) => {
            const next = months[at + 1];
            return at % 2 === 1 ? [] : [next === undefined ? month : joined(month, next)];
          });
          const one = plain(spec, routes, spec.blocks);
          atMost(leftOver(one, pairs), leftOver(one, months));
        },
      ),
      { numRuns: 40 },
    );
  });

  it('where units may go to any block, and first to their own', () => {
    fc.assert(
      fc.property(scheme, year, (spec, months) => {
        const [inside, first, free] = (['same-block', 'same-block-first', 'any'] as const).map((routes) => {
          const all = kept(documentOf(plain(spec, routes, spec.blocks)), periodsOf(spec, months), ACCOUNT);
          return all.map((month) => wh(month, 'net'));
        });
        months.forEach((_, at) => {
          expect(inside?.[at]).toBeLessThanOrEqual(first?.[at] ?? -1);
          // Set off first in its own block, a unit is as much set off as anywhere.
          expect(free?.[at]).toBe(first?.[at]);
        });
      }),
      { numRuns: 40 },
    );
  });
});

/** The same scheme with the names of its blocks changed, and the blocks declared the other way round. */
function renamed(one: SchemeYear) {
  const name = (text: string): string =>
    text.replace(/@b(\d)/g, (_, at: string) => `@hours-${String(9 - Number.parseInt(at, 10))}`);
  const document = documentOf(one.spec);
  const { timeBlocks } = document;
  const own = JSON.parse(name(JSON.stringify({ ...document, timeBlocks: undefined }))) as typeof document;
  const id = (block: string): string => name(`@${block}`).slice(1);
  const blocks = (timeBlocks?.blocks ?? []).map((block) => ({ ...block, id: id(block.id) })).reverse();
  const calendar = (timeBlocks?.calendar ?? [])
    .map((entry) => ({ ...entry, block: id(entry.block) }))
    .reverse();
  const periods = periodsOf(one.spec, one.months).map((period) => ({
    ...period,
    quantities: Object.fromEntries(Object.entries(period.quantities).map(([key, text]) => [name(key), text])),
  }));
  return {
    document: {
      ...own,
      ...(timeBlocks === undefined ? {} : { timeBlocks: { ...timeBlocks, blocks, calendar } }),
    },
    periods,
  };
}

const amounts = ({ bill, ledgers }: UnitsMonth) => ({
  lines: bill.lines.map(({ figure, counts }) => [figure.id, valueOf(figure), counts]),
  payable: valueOf(bill.payable),
  ledgers: ledgers.map(({ id, paid, lapsed, closing }) => [id, ...[paid, lapsed, closing].map(valueOf)]),
});

describe('no amount changes', () => {
  it('where blocks have other names and are declared in another order', () => {
    fc.assert(
      fc.property(schemeYear, (one) => {
        const { document, periods } = renamed(one);
        const other = kept(document, periods, accountOf(one));
        expect(other.map(amounts)).toEqual(keptYear(one).map(amounts));
      }),
      { numRuns: 30 },
    );
  });

  it('where charges that do not name each other stand in another order', () => {
    fc.assert(
      fc.property(schemeYear, (one) => {
        const document = documentOf(one.spec);
        const named = ['reward', 'credit', 'tax'];
        const versions = document.versions.map((version) => {
          const free = version.charges.filter(({ id }) => !named.includes(id)).reverse();
          const charges = [...free, ...version.charges.filter(({ id }) => named.includes(id))];
          return { ...version, charges };
        });
        const other = kept({ ...document, versions }, periodsOf(one.spec, one.months), accountOf(one));
        const sorted = (months: readonly UnitsMonth[]) =>
          months.map(amounts).map((month) => ({ ...month, lines: [...month.lines].sort() }));
        expect(sorted(other)).toEqual(sorted(keptYear(one)));
      }),
      { numRuns: 30 },
    );
  });

  it('where quantities are given in another order', () => {
    fc.assert(
      fc.property(schemeYear, (one) => {
        const periods = periodsOf(one.spec, one.months).map((period) => ({
          ...period,
          quantities: Object.fromEntries(Object.entries(period.quantities).reverse()),
        }));
        const other = kept(documentOf(one.spec), periods, accountOf(one));
        const all = (months: readonly UnitsMonth[]) =>
          months.map((month) =>
            figuresOf(month)
              .map((figure) => [figure.id, valueOf(figure)])
              .sort(),
          );
        expect(all(other)).toEqual(all(keptYear(one)));
      }),
      { numRuns: 30 },
    );
  });

  it('where units come in by registers that the account maps', () => {
    fc.assert(
      fc.property(schemeYear, (one) => {
        const names = suffixesOf(one.spec).flatMap((suffix) => [`import${suffix}`, `export${suffix}`]);
        const registers = Object.fromEntries(names.map((name, at) => [`R${String(at)}`, name]));
        const periods = periodsOf(one.spec, one.months).map((period) => ({
          ...period,
          quantities: Object.fromEntries(
            Object.entries(period.quantities).map(([name, text]) => [
              names.includes(name) ? `R${String(names.indexOf(name))}` : name,
              text,
            ]),
          ),
        }));
        const other = kept(documentOf(one.spec), periods, { ...accountOf(one), registers });
        expect(other.map(amounts)).toEqual(keptYear(one).map(amounts));
      }),
      { numRuns: 20 },
    );
  });
});
