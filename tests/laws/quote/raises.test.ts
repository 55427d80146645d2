import { amountsOf, prepareTariff, readTariff, type Raises } from '@unitbook/engine';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exampleYears, type ExampleYear } from '../../support/example-years.ts';
import { risingCharges, withRates } from './raised-rates.ts';

/** Factors that end after few decimals: ties on the half are common with them. */
const FACTORS = [
  '1.5',
  '1.25',
  '0.5',
  '2',
  '1.1',
  '1.02',
  '1.0404',
  '1.125',
  '0.994',
  '1.005',
  '1.015',
  '3',
  '1',
] as const;

/** Every charge times one factor in every period. */
function raisesFor(count: number, columns: number, text: string): Raises {
  const [whole = '', decimals = ''] = text.split('.');
  const exact = { numerator: BigInt(whole + decimals), denominator: 10n ** BigInt(decimals.length) };
  return {
    rows: new Int32Array(count),
    columns,
    factors: new Float64Array(columns).fill(Number.parseFloat(text)),
    exact: () => exact,
  };
}

function amountsUnder(tariff: ExampleYear['tariff'], year: ExampleYear, raised: readonly string[]) {
  const amounts = amountsOf(prepareTariff(tariff), { ...year.input, raised });
  return { amounts, result: amounts.makeResult() };
}

const { years } = exampleYears();

describe('rates times a factor', () => {
  it('give the bills of a tariff with those rates written out, to the coin, in every example', () => {
    let compared = 0;
    for (const year of years) {
      const raised = risingCharges(year.tariff);
      if (raised.length === 0) continue;
      for (const factor of FACTORS) {
        const written = readTariff(JSON.stringify(withRates(year.tariff.document, raised, factor))).value;
        if (written === null) continue;
        const [own, other] = [amountsUnder(year.tariff, year, raised), amountsUnder(written, year, [])];
        const units = Float64Array.from(year.units);
        const raises = raisesFor(year.input.periods.length, raised.length, factor);
        const found = [own.amounts.run(units, own.result, raises), other.amounts.run(units, other.result)];
        if (!own.result.isQuick || (found[1]?.length ?? 0) > 0) continue;
        expect([...own.result.payables], `${year.name} × ${factor}`).toEqual([...other.result.payables]);
        compared += 1;
      }
    }
    // Of 80 examples and more nearly all have a charge that can rise.
    expect(compared).toBeGreaterThan(500);
  });

  it('do so with any units under the demo tariff', () => {
    const year = years.find(({ name }) => name.includes('taresco-domestic'));
    if (year === undefined) throw new Error('no demo tariff');
    const raised = risingCharges(year.tariff);
    const own = amountsUnder(year.tariff, year, raised);
    const columns = year.input.names.length;
    const tables = new Map(
      FACTORS.map((factor) => {
        const written = readTariff(JSON.stringify(withRates(year.tariff.document, raised, factor))).value;
        if (written === null) throw new Error(factor);
        return [factor, amountsUnder(written, year, [])] as const;
      }),
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...FACTORS),
        fc.array(fc.nat({ max: 900 }), { minLength: year.units.length, maxLength: year.units.length }),
        (factor, values) => {
          const units = Float64Array.from(values, (value, at) =>
            year.input.names[at % columns] === 'generation' ? 2_000_000 : value * 1000,
          );
          const other = tables.get(factor);
          if (other === undefined) throw new Error(factor);
          own.amounts.run(units, own.result, raisesFor(12, raised.length, factor));
          other.amounts.run(units, other.result);
          expect([...own.result.payables]).toEqual([...other.result.payables]);
          expect([...own.result.payouts]).toEqual([...other.result.payouts]);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('are forgotten by the next run without them', () => {
    const [year] = years;
    if (year === undefined) throw new Error('no example');
    const raised = risingCharges(year.tariff);
    const { amounts, result } = amountsUnder(year.tariff, year, raised);
    const units = Float64Array.from(year.units);
    amounts.run(units, result);
    const before = [...result.payables];
    amounts.run(units, result, raisesFor(12, raised.length, '2'));
    amounts.run(units, result);
    expect([...result.payables]).toEqual(before);
  });
});
