import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { amountsOf, parseDay, prepareTariff, type Period } from '@unitbook/engine';
import { exampleYears, type ExampleYear } from '../../support/example-years.ts';
import { documentOf, periodsOf } from '../random-scheme.ts';
import { keptAmounts, quickAmounts, type AmountsCase } from './amounts-comparison.ts';
import { accountOf, schemeYear, tariffOfDocument, type SchemeYear } from './scheme-year.ts';

const day = (text: string): Period['from'] => {
  const parsed = parseDay(text);
  if (parsed === null) throw new Error(text);
  return parsed;
};

/** A generated year as columns; a quantity that only some periods give is 0 in the others. */
function caseOf(year: SchemeYear): AmountsCase {
  const periods = periodsOf(year.spec, year.months);
  const names = [...new Set(periods.flatMap(({ quantities }) => Object.keys(quantities)))];
  const thousandths = (text: string): number => {
    const [whole = '', decimals = ''] = text.split('.');
    return Number.parseInt(whole + decimals.padEnd(3, '0'), 10);
  };
  return {
    tariff: tariffOfDocument(documentOf(year.spec)),
    input: {
      account: accountOf(year),
      names,
      periods: periods.map(({ from, to }) => ({ from: day(from), to: day(to) })),
    },
    units: periods.flatMap(({ quantities }) => names.map((name) => thousandths(quantities[name] ?? '0'))),
  };
}

/** Any units in the columns of an example: those of the case, made more or less, or nothing at all. */
const unitsFor = ({ units }: ExampleYear): fc.Arbitrary<readonly number[]> =>
  fc
    .array(
      fc.oneof(
        fc.constantFrom(0, 1000, 1333),
        fc.integer({ min: 0, max: 3000 }),
        fc.integer({ min: 0, max: 400_000 }),
      ),
      { minLength: units.length, maxLength: units.length },
    )
    .map((factors) => units.map((value, at) => Math.floor((value * (factors[at] ?? 0)) / 1000)));

const { years, without } = exampleYears();

describe('amounts without figures', () => {
  it('are those of the bills in full under any scheme of ledgers', () => {
    let quick = 0;
    fc.assert(
      fc.property(schemeYear, (year) => {
        const one = caseOf(year);
        const { told, columns, isQuick } = quickAmounts(one);
        expect(told).toEqual(keptAmounts(one, columns));
        if (isQuick) quick += 1;
      }),
      { numRuns: 60 },
    );
    expect(quick > 20).toBe(true);
  });

  it('are there for nearly every example tariff', () => {
    expect(years.length > 10 * without.length).toBe(true);
  });

  it.each(years)('are those of the bills in full: $name', (year) => {
    const prepared = prepareTariff(year.tariff);
    expect(quickAmounts(year, prepared).isQuick).toBe(true);
    fc.assert(
      fc.property(unitsFor(year), (units) => {
        const one = { ...year, units };
        const { told, columns } = quickAmounts(one, prepared);
        expect(told).toEqual(keptAmounts(one, columns));
      }),
      { numRuns: 8 },
    );
  });

  it('have the finding of the bills in full, and what was billed before it', () => {
    const [year] = years;
    if (year === undefined) throw new Error('no example');
    for (const wrong of [-1000, 0.5, 1e12, NaN]) {
      const amounts = amountsOf(prepareTariff(year.tariff), year.input);
      const result = amounts.makeResult();
      const units = Float64Array.from(year.units);
      units[3 * year.input.names.length] = wrong;
      const codes = amounts.run(units, result).map(({ code }) => code);
      expect({ codes, count: result.count }).toEqual({ codes: ['period/not-a-quantity'], count: 3 });
    }
  });
});
