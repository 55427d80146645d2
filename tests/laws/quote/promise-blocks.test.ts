import {
  checkPromise,
  checkQuote,
  givenFigure,
  keepPeriods,
  parseDay,
  prepareQuote,
  readTariff,
  wholeToDecimal,
  type EnergyPeriod,
  type Figure,
  type PreparedQuote,
  type QuoteDocument,
  type Tariff,
} from '@unitbook/engine';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import quoteText from '../../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import tariffText from '../../../tariffs-examples/tarumira/taresco-time-blocks/tariff.json?raw';
import { EVENING_HOUSE, yearOf } from '../../support/quote-profile.ts';

const BASE = JSON.parse(quoteText) as QuoteDocument;
const BLOCKS = ['peak', 'normal', 'solar'] as const;
const PERIODS = ['2025-04-03', '2025-05-05', '2025-06-01', '2025-07-10'] as const;
const profile = yearOf(EVENING_HOUSE);

function tariffOf(text: string): Tariff {
  const { value } = readTariff(text);
  if (value === null) throw new Error('the tariff cannot be read');
  return value;
}

const TARIFF = tariffOf(tariffText);
/** The order of today: another rate at peak, and no surcharge of the hot season. */
const TODAY = tariffOf(tariffText.replace('"8.00"', '"9.25"').replace('"1.00"', '"0.00"'));

function prepared(battery: QuoteDocument['battery'], units: 'whole' | 'thousandths'): PreparedQuote {
  const { value } = checkQuote({
    ...BASE,
    tariff: undefined,
    selfUse: undefined,
    battery,
    units,
    escalation: { charges: { peak: '3', normal: '2' }, basis: 'drawn' },
    policies: undefined,
    uncertainty: undefined,
  });
  const made = value === null ? null : prepareQuote(value, TARIFF, undefined, { profile }).value;
  if (made === null) throw new Error('the quote cannot be billed');
  return made;
}

const STORED = { capacity: '5', power: '2.5', efficiency: '85', cost: '100000' };
const QUOTES = [undefined, STORED].flatMap((battery) =>
  (['whole', 'thousandths'] as const).map((units) => prepared(battery, units)),
);

/** Thousandths taken and given by block in a period, and used at home. */
interface Metered {
  readonly taken: readonly number[];
  readonly given: readonly number[];
  readonly own: number;
}

const sum = (values: readonly number[]): number => values.reduce((all, one) => all + one, 0);

const thousandths = (most: number) => fc.integer({ min: 0, max: most });
const metered: fc.Arbitrary<Metered> = fc.record({
  taken: fc.array(thousandths(400_000), { minLength: 3, maxLength: 3 }),
  given: fc.array(thousandths(300_000), { minLength: 3, maxLength: 3 }),
  own: thousandths(200_000),
});

const figure = (id: string, numerator: number): Figure =>
  givenFigure({ id, label: id, unit: 'kWh', numerator, denominator: 1000, clause: '' });

const named = ({ taken, given }: Metered): Readonly<Record<string, number>> =>
  Object.fromEntries(
    BLOCKS.flatMap((block, at) => [
      [`import@${block}`, taken[at] ?? NaN],
      [`export@${block}`, given[at] ?? NaN],
    ]),
  );

function energyOf(units: Metered, at: number): EnergyPeriod {
  const [imported, exported] = [sum(units.taken), sum(units.given)];
  const channels = {
    import: imported,
    export: exported,
    generation: exported + units.own,
    selfConsumption: units.own,
    totalUse: imported + units.own,
  };
  const figures = Object.entries(channels).map(([id, value]) => [id, figure(id, value)] as const);
  const [from, to] = [parseDay(PERIODS[at] ?? ''), parseDay(PERIODS[at + 1] ?? '')];
  return { period: { from, to }, ...Object.fromEntries(figures) } as unknown as EnergyPeriod;
}

const year = fc.array(metered, { minLength: 3, maxLength: 3 });
const quote = fc.constantFrom(...QUOTES);

describe('a promise under time blocks', () => {
  it('is split into parts that sum to the difference exactly, whatever came', () => {
    fc.assert(
      fc.property(quote, year, fc.boolean(), (own, came, isToday) => {
        const { value, findings } = checkPromise(own, {
          tariff: isToday ? TODAY : TARIFF,
          energies: came.map(energyOf),
          quantities: came.map((one) =>
            Object.fromEntries(Object.entries(named(one)).map(([id, value]) => [id, figure(id, value)])),
          ),
        });
        expect(findings).toEqual([]);
        for (const { promised, actual, parts } of value?.periods ?? []) {
          expect(sum(parts.map(({ bill }) => bill))).toBe(actual.after - promised.after);
          expect(sum(parts.map(({ saving }) => saving))).toBe(actual.saving - promised.saving);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('ends with the bills of what came, as they are kept from units', () => {
    fc.assert(
      fc.property(quote, year, (own, came) => {
        const { value } = checkPromise(own, {
          tariff: TODAY,
          energies: came.map(energyOf),
          quantities: came.map((one) =>
            Object.fromEntries(Object.entries(named(one)).map(([id, value]) => [id, figure(id, value)])),
          ),
        });
        const periods = came.map((one, at) => ({
          from: PERIODS[at] ?? '',
          to: PERIODS[at + 1] ?? '',
          quantities: Object.fromEntries(
            Object.entries(named(one)).map(([id, units]) => [id, wholeToDecimal(units, 3)]),
          ),
        }));
        const account = { since: '2025-04-01', quantities: own.input.document.quantities };
        const kept = keepPeriods({ account, tariff: TODAY, periods, withSavings: false });
        const grid = BigInt(value?.grid ?? 0);
        expect(value?.periods.map(({ actual }) => BigInt(actual.after))).toEqual(
          kept.value.map(
            ({ bill: { payable } }) => (BigInt(payable.numerator) * grid) / BigInt(payable.denominator),
          ),
        );
      }),
      { numRuns: 40 },
    );
  });

  it('is kept to the coin where what was assumed came, block by block', () => {
    // The first months of the quote itself, as its profile has them.
    for (const own of QUOTES) {
      const { units, biller } = own;
      const { width } = units;
      const rows = [0, 1, 2].map((at) => [...units.withPlant.subarray(at * width, (at + 1) * width)]);
      const came = rows.map((row) => {
        const [taken, given] = [row.slice(4, 7), row.slice(7, 10)];
        return { taken, given, own: (row[2] ?? NaN) - sum(given) };
      });
      const energies = came.map((one, at) => ({
        ...energyOf(one, 0),
        period: biller.periods[at] as EnergyPeriod['period'],
      }));
      const quantities = came.map((one) =>
        Object.fromEntries(Object.entries(named(one)).map(([id, value]) => [id, figure(id, value)])),
      );
      const { value } = checkPromise(own, { tariff: TARIFF, energies, quantities });
      expect(value?.parts.map(({ bill, saving }) => [bill, saving])).toEqual(Array(5).fill([0, 0]));
    }
  });
});
