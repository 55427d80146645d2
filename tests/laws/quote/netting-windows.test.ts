import {
  checkQuote,
  keepIntervals,
  parseDay,
  prepareAgain,
  prepareQuote,
  prepareTariff,
  quoteDrawer,
  readTariff,
  wholeToDecimal,
  workOutQuote,
  type IntervalColumns,
  type PreparedQuote,
  type QuoteDocument,
  type QuoteProfile,
  type Tariff,
} from '@unitbook/engine';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import quoteText from '../../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import hourText from '../../../tariffs-examples/tarumira/taresco-netting-by-hour/tariff.json?raw';
import blocksText from '../../../tariffs-examples/tarumira/taresco-time-blocks/tariff.json?raw';
import dayHoursText from '../../../tariffs-examples/tarumira/taresco-netting-day-hours/tariff.json?raw';
import gujaratText from '../../../tariffs-examples/india/gujarat-high-voltage-2021/tariff.json?raw';
import spainText from '../../../tariffs-examples/spain/onerz-simplified-compensation/tariff.json?raw';
import californiaText from '../../../tariffs-examples/usa/pge-nem2-nonbypassable/tariff.json?raw';
import { profileOf, type Moment } from '../../support/quote-profile.ts';

const BASE = JSON.parse(quoteText) as QuoteDocument;

function tariffOf(text: string): Tariff {
  const { value, findings } = readTariff(text);
  if (value === null) throw new Error(JSON.stringify(findings));
  return value;
}

/** Hours over midnight: the first and the last of each day. */
const NIGHT = dayHoursText.replaceAll('"07:00"', '"16:00"').replaceAll('"18:00"', '"10:00"');
const { timeBlocks, seasons } = JSON.parse(blocksText) as Record<string, object>;
/** Nothing is billed by block, but blocks are counted. */
const IN_BLOCKS = JSON.stringify({ ...(JSON.parse(hourText) as object), timeBlocks, seasons });
const OF_GENERATION = hourText
  .replace('"of": "import", "less": "export"', '"of": "import", "less": "generation"')
  .replace('"of": "export", "less": "import"', '"of": "generation", "less": "import"');

/** The same charges, netted inside other windows. */
const TARIFFS: readonly (readonly [string, Tariff])[] = [
  ['interval', tariffOf(hourText.replaceAll('"hour"', '"interval"'))],
  ['hour', tariffOf(hourText)],
  ['day-hours', tariffOf(dayHoursText)],
  ['day-hours over midnight', tariffOf(NIGHT)],
  ['day', tariffOf(hourText.replaceAll('"hour"', '"day"'))],
  ['hour, beside time blocks', tariffOf(IN_BLOCKS)],
  ['hour, of generation', tariffOf(OF_GENERATION)],
];
/** Tariffs in force somewhere. */
const PUBLISHED: typeof TARIFFS = [
  ['hour, Spain', tariffOf(spainText)],
  ['day-hours, Gujarat', tariffOf(gujaratText)],
  ['interval, California', tariffOf(californiaText)],
];
/** From the shortest windows to the longest: what meets in one meets in all that hold it. */
const NESTED = ['interval', 'hour', 'day'].map((name) => {
  const [, tariff] = TARIFFS.find(([one]) => one === name) ?? [];
  if (tariff === undefined) throw new Error(name);
  return tariff;
});

/** An invented house and its sky, another each day: whole Wh that repeat themselves nowhere. */
const shapeOf =
  (seed: number, minutes: number) =>
  ({ minute, row }: Moment) => {
    const hour = minute / 60;
    const mixed = (row * 7919 + seed * 104_729) % 1009;
    const isSun = hour >= 7 && hour < 18;
    const isCloud = mixed % 3 === 0;
    return {
      use: Math.floor(((mixed % 7) * 130 + (hour >= 18 ? 600 : 90)) * (minutes / 60)),
      generation: isSun && !isCloud ? Math.floor((700 + (mixed % 811)) * (minutes / 60)) : 0,
    };
  };

/** A year from April on: that of the quote. */
const yearFrom = (seed: number, minutes: number): QuoteProfile =>
  profileOf('2025-04-01', '2026-04-01', { minutes, shape: shapeOf(seed, minutes) });

const KEYS = Object.keys(BASE.use.months).sort();

/** Units of the calendar months of a profile, January first, as a quote has them. */
function monthsOf({ starts }: QuoteProfile, values: Float64Array): Record<string, string> {
  const sums = new Float64Array(12);
  const firsts = KEYS.map(
    (key) => [key, parseDay(`${key < '04' ? '2026' : '2025'}-${key}-01`) ?? 0] as const,
  );
  const inOrder = [...firsts].sort(([, one], [, other]) => one - other);
  starts.forEach((start, row) => {
    const day = Math.floor(start / 1440);
    const at = inOrder.filter(([, first]) => first <= day).length - 1;
    const month = KEYS.indexOf(inOrder[at]?.[0] ?? '');
    sums[month] = (sums[month] ?? 0) + (values[row] ?? 0);
  });
  return Object.fromEntries(KEYS.map((key, month) => [key, wholeToDecimal(sums[month] ?? 0, 3)]));
}

/** A quote of one year without wear, growth and rises, in thousandths, of the very units of a profile. */
function quoteOf(profile: QuoteProfile, more: Partial<QuoteDocument> = {}): QuoteDocument {
  return {
    ...BASE,
    tariff: undefined,
    years: '1',
    units: 'thousandths',
    payable: 'as-billed',
    use: { months: monthsOf(profile, profile.use), source: 'the profile' },
    generation: { months: monthsOf(profile, profile.generation), source: 'the profile' },
    selfUse: undefined,
    degradation: { first: '0', later: '0' },
    escalation: { charges: {}, basis: 'none' },
    policies: undefined,
    uncertainty: undefined,
    loan: undefined,
    upkeep: { ...BASE.upkeep, replacements: [] },
    ...more,
  };
}

function prepared(document: QuoteDocument, tariff: Tariff, profile: QuoteProfile): PreparedQuote {
  const { value: input, findings } = checkQuote(document);
  if (input === null) throw new Error(JSON.stringify(findings));
  const made = prepareQuote(input, tariff, undefined, { profile });
  if (made.value === null) throw new Error(JSON.stringify(made.findings));
  return made.value;
}

/** What meters would record: in each interval what use and generation leave of one another. */
function metered({ starts, minutes, use, generation }: QuoteProfile): IntervalColumns {
  const own = use.map((used, row) => used - (generation[row] ?? 0));
  return {
    starts,
    minutes: minutes as IntervalColumns['minutes'],
    import: own.map((one) => Math.max(0, one)),
    export: own.map((one) => Math.max(0, 0 - one)),
    generation,
  };
}

/** Money on the grid of a quote. */
const onGrid = (
  figure: { readonly numerator: number | bigint; readonly denominator: number },
  grid: number,
) => {
  const [amount, rest] = [
    (BigInt(figure.numerator) * BigInt(grid)) / BigInt(figure.denominator),
    (BigInt(figure.numerator) * BigInt(grid)) % BigInt(figure.denominator),
  ];
  return rest === 0n ? amount.toString() : 'off the grid';
};

describe('netting inside windows', () => {
  it.each([...TARIFFS, ...PUBLISHED])(
    '%s: a quote of a metered year bills what its intervals bill',
    (_name, tariff) => {
      for (const [seed, minutes] of [
        [1, 60],
        [2, 30],
        [3, 15],
      ] as const) {
        const profile = yearFrom(seed, minutes);
        const { biller, input } = prepared(quoteOf(profile), tariff, profile);
        const { bills, periods } = biller;
        const quantities = { ...input.document.quantities, 'plant-capacity': input.document.plant.kWp };
        const kept = keepIntervals({
          account: { since: '2025-04-01', quantities },
          tariff: prepareTariff(tariff),
          columns: metered(profile),
          periods,
        });
        expect(kept.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
        expect(kept.value).toHaveLength(12);
        const { grid } = bills;
        expect([...bills.after].map(String)).toEqual(
          kept.value.map(({ bill }) => onGrid(bill.payable, grid)),
        );
        expect([...bills.before].map(String)).toEqual(
          kept.value.map(({ withoutSolar }) =>
            withoutSolar === null ? '' : onGrid(withoutSolar.payable, grid),
          ),
        );
      }
    },
  );

  it('bills other amounts for other windows: the law above compares what differs', () => {
    const profile = yearFrom(3, 15);
    const firsts = TARIFFS.map(
      ([, tariff]) => prepared(quoteOf(profile), tariff, profile).biller.bills.after[0],
    );
    // Time blocks beside hours change nothing; all others do.
    expect(new Set(firsts).size).toBe(TARIFFS.length - 1);
  });

  const units = fc.array(fc.integer({ min: 0, max: 900 }), { minLength: 12, maxLength: 12 });
  const battery = fc.constantFrom(undefined, { capacity: '4', power: '2', efficiency: '81', cost: '0' });
  const months = (values: readonly number[]): Record<string, string> =>
    Object.fromEntries(KEYS.map((key, at) => [key, String(values[at])]));
  const profile = yearFrom(4, 30);

  /** Columns of a month: import, export, then what windows leave of both. */
  const columnsOf = ({ units: { withPlant, width } }: PreparedQuote, at: number) => {
    const row = [...withPlant.subarray(at * width, (at + 1) * width)];
    const [imported = NaN, exported = NaN] = row;
    const [netImport = NaN, netExport = NaN] = row.slice(-2);
    return { imported, exported, netImport, netExport };
  };

  it('leaves what import and export differ by, no less in shorter windows, and plain units in intervals', () => {
    fc.assert(
      fc.property(
        units,
        units,
        battery,
        fc.constantFrom('whole' as const, 'thousandths' as const),
        (used, made, stored, steps) => {
          const document = quoteOf(profile, {
            use: { months: months(used), source: 'drawn' },
            generation: { months: months(made), source: 'drawn' },
            battery: stored,
            units: steps,
          });
          const quotes = NESTED.map((tariff) => prepared(document, tariff, profile));
          for (let at = 0; at < 12; at += 1) {
            const [plain, ...others] = quotes.map((one) => columnsOf(one, at));
            expect([plain?.netImport, plain?.netExport]).toEqual([plain?.imported, plain?.exported]);
            let before = plain;
            for (const own of others) {
              expect(own.netImport - own.netExport).toBe(own.imported - own.exported);
              expect(Math.min(own.netImport, own.netExport)).toBeGreaterThanOrEqual(0);
              expect(own.netImport).toBeLessThanOrEqual(before?.netImport ?? NaN);
              expect(own.netExport).toBeLessThanOrEqual(before?.netExport ?? NaN);
              if (steps === 'whole') expect(own.netImport % 1000).toBe(0);
              before = own;
            }
          }
        },
      ),
      { numRuns: 10 },
    );
  });

  it('takes everything without the plant', () => {
    for (const tariff of NESTED) {
      const { withoutPlant, use, width } = prepared(quoteOf(profile), tariff, profile).units;
      for (let at = 0; at < 12; at += 1) {
        const row = [...withoutPlant.subarray(at * width, (at + 1) * width)];
        expect([row[0], ...row.slice(-2)]).toEqual([use[at], use[at], 0]);
      }
    }
  });

  it('is drawn without any uncertainty as it is, to the coin', () => {
    const zero = { generation: '0', yearToYear: '0', use: '0', escalation: '0', degradation: '0' };
    for (const tariff of NESTED) {
      const made = prepared(quoteOf(profile, { uncertainty: zero, years: '3' }), tariff, profile);
      const drawn = quoteDrawer(made, tariff).value?.draw(0);
      const { years, grid } = workOutQuote(made);
      expect((drawn?.saving[0] ?? NaN) * grid).toBe(years[0]?.saving);
      expect(drawn?.saving[0]).toBeGreaterThan(0);
    }
  });

  it('is prepared again with other numbers as from the beginning', () => {
    for (const tariff of NESTED) {
      const made = prepared(quoteOf(profile), tariff, profile);
      const more = quoteOf(profile, { use: { months: months(Array<number>(12).fill(400)), source: 'more' } });
      const { value: input } = checkQuote(more);
      const again = input === null ? null : prepareAgain(made, input);
      expect(again).not.toBeNull();
      const anew = prepared(more, tariff, profile);
      expect([...(again?.units.withPlant ?? [])]).toEqual([...anew.units.withPlant]);
      expect([...(again?.biller.bills.after ?? [])]).toEqual([...anew.biller.bills.after]);
    }
  });
});
