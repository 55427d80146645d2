import { describe, expect, it } from 'vitest';
import quoteText from '../../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import hourText from '../../../tariffs-examples/tarumira/taresco-netting-by-hour/tariff.json?raw';
import blocksText from '../../../tariffs-examples/tarumira/taresco-time-blocks/tariff.json?raw';
import { demoTariff, goodTariff } from '../../../tests/support/demo.ts';
import { EVENING_HOUSE, yearOf } from '../../../tests/support/quote-profile.ts';
import { givenFigure, parseDay, type Figure } from './quantity/index.ts';
import type { Tariff } from './tariff/index.ts';
import type { EnergyPeriod } from './energy/index.ts';
import { prepareQuote, type PreparedQuote } from './quote-prepare.ts';
import { checkPromise } from './quote-promise.ts';
import { workOutQuote } from './quote-work-out.ts';
import { checkQuote, type QuoteDocument } from './quote/index.ts';

/** The demo quote, which names no tariff here, and whose rates do not rise. */
const DOCUMENT: QuoteDocument = {
  ...(JSON.parse(quoteText) as QuoteDocument),
  tariff: undefined,
  selfUse: undefined,
  escalation: { charges: {}, basis: 'none' },
  policies: undefined,
  uncertainty: undefined,
  // Cheap enough to come back within the life at these rates.
  price: [{ item: 'Plant', amount: '100000' }],
  subsidy: undefined,
  loan: undefined,
};
const BLOCKS = goodTariff(blocksText);
const DAYS = goodTariff(hourText.replaceAll('"hour"', '"day"'));
const BATTERY = { capacity: '5', power: '2.5', efficiency: '85', cost: '100000' };
const profile = yearOf(EVENING_HOUSE);

function prepared(tariff: Tariff, change: Partial<QuoteDocument> = {}): PreparedQuote {
  const { value } = checkQuote({ ...DOCUMENT, ...change });
  const made = value === null ? null : prepareQuote(value, tariff, undefined, { profile }).value;
  if (made === null) throw new Error('the quote cannot be billed');
  return made;
}

const figure = (id: string, numerator: number): Figure =>
  givenFigure({ id, label: id, unit: 'kWh', numerator, denominator: 1000, clause: '' });
const figures = (units: Readonly<Record<string, number>>): Readonly<Record<string, Figure>> =>
  Object.fromEntries(Object.entries(units).map(([id, value]) => [id, figure(id, value * 1000)]));

/** A period of meters: units made, and what was taken and given, by names. */
function came(
  [from, to]: readonly [string, string],
  { taken, given, made }: { readonly taken: number; readonly given: number; readonly made: number },
) {
  const units = {
    import: taken,
    export: given,
    generation: made,
    selfConsumption: made - given,
    totalUse: taken + made - given,
  };
  return { period: { from: parseDay(from), to: parseDay(to) }, ...figures(units) } as unknown as EnergyPeriod;
}

const APRIL = ['2025-04-01', '2025-05-01'] as const;

/** What meters show of the first months of a quote, by block and measure, all as quoted. */
function asQuoted({ units, biller }: PreparedQuote, names: readonly string[], months: number) {
  const rows = Array.from({ length: months }, (_, at) => [
    ...units.withPlant.subarray(at * units.width, (at + 1) * units.width),
  ]);
  const energies = rows.map(([taken = 0, given = 0, made = 0], at) => ({
    ...came(APRIL, { taken: taken / 1000, given: given / 1000, made: made / 1000 }),
    period: biller.periods[at] ?? { from: 0, to: 0 },
  }));
  const quantities = rows.map((row) => {
    const own = names.map((name, column) => [name, (row[4 + column] ?? NaN) / 1000] as const);
    return figures(Object.fromEntries(own));
  });
  return { energies: energies as readonly EnergyPeriod[], quantities };
}

const BLOCK_NAMES = ['import', 'export'].flatMap((channel) =>
  ['peak', 'normal', 'solar'].map((block) => `${channel}@${block}`),
);

describe('a promise under time blocks', () => {
  it('is split by hand', () => {
    // As quoted, April uses 520: peak 210, normal 232, solar 78 (see quote-own-use.test.ts); 26 and 78 of the last two
    // as they are made, so that peak 210 and normal 206 are taken. Of 510 made, 127.5 in normal hours and 382.5 in solar
    // ones, 101.5 and 304.5 are given: 102 and 304. Bill: peak 210 × 9, normal (206 − 102) × 5: 1,890 + 520 = 2,410.
    // Without the plant: 210 × 9 + 232 × 5 + 78 × 4 = 3,362.
    const quantities = figures({
      'import@peak': 250,
      'import@normal': 200,
      'import@solar': 10,
      'export@peak': 0,
      'export@normal': 90,
      'export@solar': 300,
    });
    const energies = [came(APRIL, { taken: 460, given: 390, made: 500 })];
    const { value, findings } = checkPromise(prepared(BLOCKS), {
      tariff: BLOCKS,
      energies,
      quantities: [quantities],
    });
    expect(findings).toEqual([]);
    const money = (amount: number | undefined): number => (amount ?? NaN) / (value?.grid ?? NaN);
    const [row] = value?.periods ?? [];
    expect([row?.promised.after, row?.promised.before].map(money)).toEqual([2410, 3362]);
    // What came: 250 × 9 + (200 − 90) × 5 = 2,800. Of 110 used at home 27.5 are of normal and 82.5 of solar hours, 28
    // and 82: without the plant 250 × 9 + 228 × 5 + 92 × 4 = 3,758.
    expect([row?.actual.after, row?.actual.before].map(money)).toEqual([2800, 3758]);
    expect(row?.parts.map(({ bill, saving }) => [money(bill), money(saving)])).toEqual([
      // 570 used: peak 230, normal 254, solar 86; 114 at home, 456 taken, peak 230 and normal 226, and 396 given, of
      // them 100 in normal hours. 230 × 9 + 126 × 5 = 2,700, without the plant 230 × 9 + 254 × 5 + 86 × 4 = 3,684.
      [290, 32],
      // 500 made, 386 given, of them 97 in normal hours: 129 × 5 in place of 126 × 5.
      [15, -15],
      // What was used when: 2,800 − 2,715, and 3,758 − 3,684 less that.
      [85, -11],
      [0, 0],
      [0, 0],
    ]);
  });

  it.each([
    ['without a battery', {}],
    ['with a battery', { battery: BATTERY }],
  ])('%s is kept where meters show what was quoted', (_name, change) => {
    const made = prepared(BLOCKS, change);
    const { months } = workOutQuote(made);
    const actual = { tariff: BLOCKS, ...asQuoted(made, BLOCK_NAMES, 12) };
    const report = checkPromise(made, actual).value;
    const times = (report?.grid ?? NaN) / made.grid;
    expect(report?.periods.map(({ promised: { before, after } }) => [before, after])).toEqual(
      months.map(({ before, after }) => [before * times, after * times]),
    );
    for (const { parts } of report?.periods ?? [])
      expect(parts.map(({ bill, saving }) => [bill, saving])).toEqual(Array(5).fill([0, 0]));
    expect(report?.payback.promised).toBeGreaterThan(0);
    expect(report?.payback.ifItGoesOn).toBe(report?.payback.promised);
  });

  it('goes on with the profile where it did not come as quoted', () => {
    const made = prepared(BLOCKS);
    const { energies, quantities } = asQuoted(made, BLOCK_NAMES, 2);
    const [first, second] = energies;
    if (first === undefined || second === undefined) throw new Error('no months');
    // A tenth of May's units less were made and given.
    const less = came(['2025-05-01', '2025-06-01'], { taken: 448, given: 342, made: 454 });
    const actual = { tariff: BLOCKS, energies: [first, { ...less, period: second.period }], quantities };
    const { promised, ifItGoesOn } = checkPromise(made, actual).value?.payback ?? {};
    expect(ifItGoesOn).toBeGreaterThan(promised ?? NaN);
  });

  it('says which blocks are not told, and from when on', () => {
    const made = prepared(BLOCKS);
    const { energies, quantities } = asQuoted(made, BLOCK_NAMES, 2);
    const [first = {}, second = {}] = quantities;
    const all = Object.entries(second).filter(([name]) => name !== 'export@solar');
    const told = [first, Object.fromEntries(all)];
    const [finding] = checkPromise(made, { tariff: BLOCKS, energies, quantities: told }).findings;
    expect(finding?.code).toBe('quote/promise-by-blocks');
    expect(finding?.found).toBe('1 period without units of export@solar, the first from 2025-05-01');
  });

  it('is not set against readings by other blocks', () => {
    const { energies } = asQuoted(prepared(BLOCKS), BLOCK_NAMES, 1);
    const [finding] = checkPromise(prepared(BLOCKS), { tariff: demoTariff(), energies }).findings;
    expect([finding?.code, finding?.found]).toEqual([
      'quote/promise-other-blocks',
      'a tariff of today that bills by no time blocks',
    ]);
  });
});

describe('a promise under netting inside windows', () => {
  it('is kept where intervals show what was quoted', () => {
    const made = prepared(DAYS);
    const actual = { tariff: DAYS, ...asQuoted(made, ['net-import', 'net-export'], 3) };
    const report = checkPromise(made, actual).value;
    // April: 520 used and 510 made meet but for 10 by the end of each day, at 6.00.
    expect(report?.periods[0]?.promised.after).toBe(60 * (report?.grid ?? NaN));
    for (const { parts } of report?.periods ?? [])
      expect(parts.map(({ bill, saving }) => [bill, saving])).toEqual(Array(5).fill([0, 0]));
  });

  it('puts what meets otherwise to own use', () => {
    const made = prepared(DAYS);
    const { energies } = asQuoted(made, [], 1);
    const quantities = [figures({ 'net-import': 50, 'net-export': 40 })];
    const report = checkPromise(made, { tariff: DAYS, energies, quantities }).value;
    // 50 × 6 − 40 × 2 = 220, where 60 were quoted.
    const bills = report?.parts.map(({ bill }) => bill / report.grid);
    expect(bills).toEqual([0, 0, 160, 0, 0]);
  });

  it('cannot be told from readings', () => {
    const made = prepared(DAYS);
    const { energies } = asQuoted(made, [], 1);
    const [finding] = checkPromise(made, { tariff: DAYS, energies, quantities: [{}] }).findings;
    expect(finding?.found).toBe(
      '1 period without units of net-import, net-export, the first from 2025-04-01',
    );
    expect(finding?.remedy).toContain('Readings do not tell what windows of time leave');
  });
});

describe('a promise with a battery', () => {
  it('tells what it loses, and bills without the plant without it', () => {
    const made = prepared(BLOCKS, { battery: BATTERY });
    const { months } = workOutQuote(made);
    const [first] = months;
    const { energies, quantities } = asQuoted(made, BLOCK_NAMES, 1);
    const report = checkPromise(made, { tariff: BLOCKS, energies, quantities }).value;
    // What is not given, less what reached the house.
    const kept = (first?.generation ?? NaN) - (first?.exported ?? NaN);
    const lost = kept - (first?.selfUse ?? NaN);
    expect(lost).toBeGreaterThan(0);
    expect(report?.lost).toEqual({ promised: lost, actual: lost });
    expect(report?.promised.use).toBe((first?.use ?? NaN) + lost);
  });

  it('and no profile tells what the mean day loses', () => {
    const { value: input } = checkQuote({
      ...DOCUMENT,
      selfUse: { share: '38' },
      battery: { ...BATTERY, efficiency: '81' },
    });
    const made = input === null ? null : prepareQuote(input, demoTariff()).value;
    if (made === null) throw new Error('the quote cannot be billed');
    const { energies } = asQuoted(made, [], 1);
    const report = checkPromise(made, { tariff: demoTariff(), energies }).value;
    // April: 194 of 510 as they are made. 30 days store 5 each, 150: 166.67 go in, 167, and 135 come out.
    expect(report?.lost).toEqual({ promised: 32_000, actual: 32_000 });
    expect([report?.promised.use, report?.promised.selfUse]).toEqual([552_000, 361_000]);
    expect(report?.parts.map(({ bill, saving }) => [bill, saving])).toEqual(Array(5).fill([0, 0]));
    // Without the plant it is the house's own 520 that is billed.
    expect(report?.promised.before).toBe(
      (workOutQuote(made).months[0]?.before ?? NaN) * ((report?.grid ?? NaN) / made.grid),
    );
  });

  it('tells nothing where there is none', () => {
    const made = prepared(BLOCKS);
    const report = checkPromise(made, { tariff: BLOCKS, ...asQuoted(made, BLOCK_NAMES, 1) }).value;
    expect(report?.lost).toBeNull();
  });
});
