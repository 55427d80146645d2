import {
  checkPromise,
  checkQuote,
  givenFigure,
  inputOfCase,
  joinDraws,
  prepareQuote,
  quoteDrawer,
  readTariff,
  summariseDraws,
  workOutQuote,
  type EnergyPeriod,
  type Quote,
  type QuoteDocument,
  type Tariff,
} from '@unitbook/engine';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import quoteText from '../../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import tariffText from '../../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';

const base = JSON.parse(quoteText) as QuoteDocument;
const read = readTariff(tariffText).value;
if (read === null) throw new Error('the demo tariff cannot be read');
const tariff: Tariff = read;

function prepared(document: QuoteDocument) {
  const { value: input, findings } = checkQuote(document);
  if (input === null) throw new Error(JSON.stringify(findings));
  const made = prepareQuote(input, tariff);
  if (made.value === null) throw new Error(JSON.stringify(made.findings));
  return made.value;
}

const worked = (document: QuoteDocument): Quote => workOutQuote(prepared(document));

const KEYS = Object.keys(base.use.months).sort();
const months = (least: number, most: number): fc.Arbitrary<Record<string, string>> =>
  fc
    .array(fc.integer({ min: least, max: most }), { minLength: 12, maxLength: 12 })
    .map((values) => Object.fromEntries(KEYS.map((key, at) => [key, String(values[at])])));

/** Any household and plant: more is used in every month than a share of own use takes. */
const household = fc
  .record({
    use: months(400, 900),
    generation: months(0, 900),
    share: fc.integer({ min: 0, max: 40 }),
    rise: fc.constantFrom('0', '1.5', '2', '3.25'),
    wear: fc.constantFrom('0', '0.5', '0.6', '1'),
    years: fc.integer({ min: 1, max: 25 }),
  })
  .map(({ use, generation, share, rise, wear, years }): QuoteDocument => {
    return {
      ...base,
      loan: undefined,
      policies: undefined,
      uncertainty: undefined,
      years: String(years),
      use: { ...base.use, months: use },
      generation: { months: generation, source: 'drawn' },
      selfUse: { share: String(share) },
      degradation: { first: wear, later: wear },
      escalation: { charges: { energy: rise, fixed: rise, fuel: rise, minimum: rise }, basis: 'drawn' },
      upkeep: { ...base.upkeep, replacements: [] },
    };
  });

const RUNS = { numRuns: 40 };

describe('a quote', () => {
  it('without a plant saves nothing', () => {
    fc.assert(
      fc.property(household, (document) => {
        const none = Object.fromEntries(KEYS.map((key) => [key, '0']));
        const { years } = worked({ ...document, generation: { months: none, source: 'none' } });
        expect(years.map(({ saving }) => saving)).toEqual(years.map(() => 0));
        expect(years.map(({ before, after }) => before - after)).toEqual(years.map(() => 0));
      }),
      RUNS,
    );
  });

  it('has years that are the sums of their months, to the coin and the watt-hour', () => {
    fc.assert(
      fc.property(household, (document) => {
        const { months: first, years } = worked(document);
        const sum = (
          key: 'use' | 'generation' | 'selfUse' | 'imported' | 'exported' | 'before' | 'after' | 'surplus',
        ) => first.reduce((all, month) => all + month[key], 0);
        const [year] = years;
        for (const key of [
          'use',
          'generation',
          'selfUse',
          'imported',
          'exported',
          'before',
          'after',
          'surplus',
        ] as const)
          expect(sum(key)).toBe(year?.[key]);
        for (const one of years) {
          expect(one.saving).toBe(one.before - one.after + one.surplus);
          expect(one.imported + one.selfUse).toBe(one.use);
          expect(one.exported + one.selfUse).toBe(one.generation);
        }
      }),
      RUNS,
    );
  });

  it('does not hang on own use where netting has no limit', () => {
    fc.assert(
      fc.property(household, fc.integer({ min: 0, max: 40 }), (document, other) => {
        const savings = (share: number) =>
          worked({ ...document, selfUse: { share: String(share) } }).years.map(({ saving }) => saving);
        expect(savings(other)).toEqual(savings(Number.parseInt(document.selfUse?.share ?? '0', 10)));
      }),
      RUNS,
    );
  });

  it('pays back no later where rates rise faster', () => {
    fc.assert(
      fc.property(household, (document) => {
        const { value: input } = checkQuote(document);
        if (input === null) throw new Error('no input');
        const payback = (rise: string): number => {
          const made = prepareQuote(inputOfCase(input, { rise }), tariff).value;
          if (made === null) throw new Error('not billed');
          return workOutQuote(made).measures.simple.first ?? Infinity;
        };
        const [slow, usual, fast] = [payback('0'), payback('2'), payback('6')];
        expect(usual).toBeLessThanOrEqual(slow);
        expect(fast).toBeLessThanOrEqual(usual);
      }),
      { numRuns: 20 },
    );
  });
});

describe('draws', () => {
  const { value: drawer } = quoteDrawer(prepared(base), tariff);
  if (drawer === null) throw new Error('no draws');

  it('put P90 at or below P50, and P50 at or below P10', () => {
    const summary = summariseDraws(joinDraws([drawer.draw(0), drawer.draw(1)]));
    for (const { p10, p50, p90 } of [summary.saving, summary.lifeNet]) {
      expect(p90).toBeLessThanOrEqual(p50);
      expect(p50).toBeLessThanOrEqual(p10);
    }
    expect(summary.payback.p90).toBeGreaterThanOrEqual(summary.payback.p50);
    summary.band.p90.forEach((low, year) => {
      expect(low).toBeLessThanOrEqual(summary.band.p50[year] ?? -Infinity);
      expect(summary.band.p50[year]).toBeLessThanOrEqual(summary.band.p10[year] ?? -Infinity);
    });
  });

  it('are the same for the same block, in any order', () => {
    const [second, first] = [drawer.draw(1), drawer.draw(0)];
    expect(drawer.draw(0).lifeNet).toEqual(first.lifeNet);
    expect(drawer.draw(1).payback).toEqual(second.payback);
    expect(first.lifeNet).not.toEqual(second.lifeNet);
  });

  it('without any uncertainty are the quote itself', () => {
    const zero = { generation: '0', yearToYear: '0', use: '0', escalation: '0', degradation: '0' };
    const own = prepared({ ...base, uncertainty: zero });
    const { value } = quoteDrawer(own, tariff);
    const { measures, years } = workOutQuote(own);
    const [lifeNet, saving] = [measures.lifeNet, years[0]?.saving];
    const drawn = value?.draw(0);
    const coins = (value: number | undefined): string => ((value ?? NaN) * 100).toFixed(0);
    expect(coins(drawn?.lifeNet[0])).toBe(String(lifeNet));
    expect(coins(drawn?.saving[99])).toBe(String(saving));
  });
});

describe('the split of a difference', () => {
  const figure = (id: string, units: number) =>
    givenFigure({ id, label: id, unit: 'kWh', numerator: units * 1000, denominator: 1000, clause: '' });

  it('is nothing where all came as promised, and the price comes back when it was to', () => {
    const own = prepared({ ...base, escalation: { charges: {}, basis: 'none' } });
    const { units, biller } = own;
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 30 }), fc.integer({ min: 1, max: 30 }), (skipped, count) => {
        const energies = biller.periods.slice(skipped, skipped + count).map((period, index) => {
          const at = skipped + index;
          const [use, made, self] = [units.use[at] ?? 0, units.generation[at] ?? 0, units.selfUse[at] ?? 0];
          const parts = {
            import: use - self,
            export: made - self,
            generation: made,
            selfConsumption: self,
            totalUse: use,
          };
          const figures = Object.entries(parts).map(([id, value]) => [id, figure(id, value / 1000)]);
          return { period, ...Object.fromEntries(figures) } as EnergyPeriod;
        });
        const report = checkPromise(own, { tariff, energies }).value;
        const { promised, restAsQuoted, ifItGoesOn } = report?.payback ?? {};
        expect([restAsQuoted, ifItGoesOn]).toEqual([promised, promised]);
        for (const { parts } of report?.periods ?? [])
          expect(parts.map(({ saving }) => saving)).toEqual([0, 0, 0, 0, 0]);
      }),
      { numRuns: 20 },
    );
  });

  it('sums to it exactly, whatever happened', () => {
    const own = prepared(base);
    const { periods } = own.biller;
    const month = fc.record({
      use: fc.integer({ min: 150, max: 900 }),
      made: fc.integer({ min: 0, max: 800 }),
      own: fc.integer({ min: 0, max: 150 }),
    });
    fc.assert(
      fc.property(fc.array(month, { minLength: 1, maxLength: 18 }), (came) => {
        const energies = came.map(({ use, made, own: wanted }, at) => {
          const self = Math.min(wanted, made);
          const parts = {
            import: use - self,
            export: made - self,
            generation: made,
            selfConsumption: self,
            totalUse: use,
          };
          const figures = Object.entries(parts).map(([id, units]) => [id, figure(id, units)]);
          return { period: periods[at], ...Object.fromEntries(figures) } as EnergyPeriod;
        });
        const report = checkPromise(own, { tariff, energies }).value;
        for (const { promised, actual, parts } of report?.periods ?? []) {
          expect(parts.reduce((sum, { saving }) => sum + saving, 0)).toBe(actual.saving - promised.saving);
          expect(parts.reduce((sum, { bill }) => sum + bill, 0)).toBe(actual.after - promised.after);
        }
        const all = report?.parts.reduce((sum, { saving }) => sum + saving, 0);
        expect(all).toBe((report?.actual.saving ?? 0) - (report?.promised.saving ?? 0));
      }),
      RUNS,
    );
  });
});
