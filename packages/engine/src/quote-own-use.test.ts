import { describe, expect, it } from 'vitest';
import quoteText from '../../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import blocksText from '../../../tariffs-examples/tarumira/taresco-time-blocks/tariff.json?raw';
import { demoTariff, goodTariff } from '../../../tests/support/demo.ts';
import { EVENING_HOUSE, yearOf } from '../../../tests/support/quote-profile.ts';
import { givenFigure, parseDay } from './quantity/index.ts';
import type { EnergyPeriod } from './energy/index.ts';
import { quoteBounds } from './quote-bounds.ts';
import { workOutCase, workOutCases } from './quote-cases.ts';
import { quoteDrawer } from './quote-draws.ts';
import { prepareQuote, type PreparedQuote, type PrepareOptions } from './quote-prepare.ts';
import { checkPromise } from './quote-promise.ts';
import { quoteSizes } from './quote-sizes.ts';
import { workOutQuote } from './quote-work-out.ts';
import { checkQuote, type QuoteDocument, type QuoteInput } from './quote/index.ts';

/** The demo quote, which names no tariff here: some are worked out under others. */
const DOCUMENT: QuoteDocument = { ...(JSON.parse(quoteText) as QuoteDocument), tariff: undefined };
const TARIFF = demoTariff();
const BLOCKS = goodTariff(blocksText);
const profile = yearOf(EVENING_HOUSE);
const BATTERY = { capacity: '5', power: '2.5', efficiency: '85', cost: '100000' };

function inputOf(change: Partial<QuoteDocument> = {}): QuoteInput {
  const { value, findings } = checkQuote({ ...DOCUMENT, ...change });
  if (value === null) throw new Error(JSON.stringify(findings));
  return value;
}

function prepared(
  change: Partial<QuoteDocument> = {},
  options: PrepareOptions = {},
  tariff = TARIFF,
): PreparedQuote {
  const { value, findings } = prepareQuote(inputOf(change), tariff, undefined, options);
  if (value === null) throw new Error(JSON.stringify(findings));
  return value;
}

const codes = (findings: readonly { readonly code: string }[]): readonly string[] =>
  findings.map(({ code }) => code);
const NO_SHARE = { selfUse: undefined };
/** Rates that do not rise: charges of the tariff with time blocks have other names. */
const FLAT = { escalation: { charges: {}, basis: 'none' }, policies: undefined, uncertainty: undefined };

describe('a quote with a profile', () => {
  it('counts own use from it', () => {
    // A fifth of April's 520 units is used in the 8 hours of sun, 104 units, where 510 are made; of May's 560, 112.
    const { months } = workOutQuote(prepared(NO_SHARE, { profile }));
    const [april, may] = months;
    expect([april?.selfUse, april?.imported, april?.exported]).toEqual([104_000, 416_000, 406_000]);
    expect(may?.selfUse).toBe(112_000);
  });

  it('says that a share beside it is not used', () => {
    const { value, findings } = prepareQuote(inputOf(), TARIFF, undefined, { profile });
    expect(codes(findings)).toEqual(['quote/share-beside-profile']);
    expect(findings[0]?.found).toBe('a share of own use of 38 % beside an interval profile');
    expect(value?.units.selfUse[0]).toBe(104_000);
  });

  it('is refused with what is wrong with it', () => {
    const dark = { ...profile, generation: profile.generation.map(() => 0) };
    const { value, findings } = prepareQuote(inputOf(), TARIFF, undefined, { profile: dark });
    expect(value).toBeNull();
    expect(codes(findings)[0]).toBe('quote/profile-month-empty');
    expect(findings[0]?.found).toBe(
      'a profile with no generation at all in January, where the quote has 480 units',
    );
  });

  it('has cases and sizes by it, and a case with a share of its own by that share', () => {
    const input = inputOf(NO_SHARE);
    const cases = new Map(workOutCases(input, TARIFF, { profile }).map((one) => [one.id, one.quote]));
    // A tenth less generation is still more than the house uses by day; a fifth less use is a fifth less of it.
    expect(cases.get('generation-less')?.months[0]?.selfUse).toBe(104_000);
    // 520 less a fifth are 416, of which a fifth are 83.2.
    expect(cases.get('use-less')?.months[0]?.selfUse).toBe(83_000);
    const [policy] = input.document.policies ?? [];
    if (policy === undefined) throw new Error('no policy');
    const change = { policy: { policy: { ...policy, selfUse: '55' }, from: 1 } };
    const own = workOutCase(input, TARIFF, { id: 'own', name: 'own', change }, { profile });
    // 55 % of 510 are 280.5.
    expect(own.quote?.months[0]?.selfUse).toBe(281_000);
    // 0.5 kWp make 63.75 units in April, 64: no more than is used by day in most of it.
    const made = prepared(NO_SHARE, { profile });
    const { points } = quoteSizes(made, { from: 500, step: 500, count: 2 });
    expect(points.map(({ watts }) => watts)).toEqual([500, 1000]);
    expect(made.units.selfUse[0]).toBe(104_000);
  });

  it('saves the same as by a share where netting has no limit', () => {
    const savings = (made: PreparedQuote) => workOutQuote(made).years.map(({ saving }) => saving);
    expect(savings(prepared(NO_SHARE, { profile }))).toEqual(savings(prepared()));
  });

  it('without any uncertainty is drawn as it is, to the coin', () => {
    const zero = { generation: '0', yearToYear: '0', use: '0', escalation: '0', degradation: '0' };
    const own = prepared({ ...NO_SHARE, uncertainty: zero }, { profile });
    const drawn = quoteDrawer(own, TARIFF).value?.draw(0);
    const { measures } = workOutQuote(own);
    expect(((drawn?.lifeNet[0] ?? NaN) * 100).toFixed(0)).toBe(String(measures.lifeNet));
  });
});

describe('a tariff with time blocks', () => {
  it('needs a profile', () => {
    const { value, findings } = prepareQuote(inputOf(FLAT), BLOCKS);
    expect(value).toBeNull();
    expect(codes(findings)).toEqual(['quote/needs-profile']);
  });

  it('is billed with one', () => {
    const { units, biller } = prepared({ ...NO_SHARE, ...FLAT }, { profile }, BLOCKS);
    // April 2025 has 22 days from Monday to Friday and 8 at weekends. Of the 8 kWh of a day, solar hours from 9 to 15
    // have 6 × 0.2, peak from 16 to 22 on weekdays of the hot season 2 × 0.2 + 4 × 1, the rest is normal.
    // Of 520 units: solar 520 × 1.2 ÷ 8 = 78, peak 520 × 4.4 ÷ 8 × 22 ÷ 30 = 209.73, normal 232.27.
    expect([...units.withoutPlant.subarray(0, units.width)]).toEqual([
      520_000, 0, 0, 0, 210_000, 232_000, 78_000, 0, 0, 0, 0, 0, 0,
    ]);
    // Peak 210 × (8 + 1) + normal 232 × 5 + solar 78 × 4 = 1,890 + 1,160 + 312.
    expect(biller.bills.before[0] ?? NaN).toBe(3362 * biller.bills.grid);
    // Made: 6 of 8 hours of 510 in solar hours, 382.5, the others normal, 127.5: the earlier is made up.
    expect([...units.withPlant.subarray(10, 13)]).toEqual([0, 128_000, 382_000]);
  });

  it('is billed with a battery, sized and drawn', () => {
    const uncertainty = { generation: '7', use: '10', escalation: '0', degradation: '0.2' };
    const made = prepared({ ...NO_SHARE, ...FLAT, uncertainty, battery: BATTERY }, { profile }, BLOCKS);
    expect(quoteDrawer(made, BLOCKS).value?.draw(0).saving[0]).toBeGreaterThan(0);
    expect(quoteSizes(made, { from: 2000, step: 1000, count: 3 }).points).toHaveLength(3);
    const { battery, years } = workOutQuote(made);
    expect(battery?.saving).toBeGreaterThan(0);
    expect(battery?.saving).toBeLessThan(years[0]?.saving ?? NaN);
  });
});

describe('a battery', () => {
  it('of no capacity or no power changes nothing', () => {
    const { battery: none, ...plain } = workOutQuote(prepared(NO_SHARE, { profile }));
    expect(none).toBeNull();
    for (const part of ['capacity', 'power']) {
      for (const options of [{ profile }, {}]) {
        const without = options.profile === undefined ? workOutQuote(prepared()) : plain;
        const change = options.profile === undefined ? {} : NO_SHARE;
        const idle = { ...BATTERY, cost: '0', [part]: '0' };
        const { months, years, measures, battery } = workOutQuote(
          prepared({ ...change, battery: idle }, options),
        );
        expect({ months, years, measures }).toEqual({
          months: without.months,
          years: without.years,
          measures: without.measures,
        });
        expect(battery).toEqual({ cost: 0, saving: 0, payback: 0, paybackForGood: 0 });
      }
    }
  });

  it('without a profile is an estimate, and says so', () => {
    const { value, findings } = prepareQuote(inputOf({ battery: { ...BATTERY, efficiency: '100' } }), TARIFF);
    expect(codes(findings)).toEqual(['quote/battery-estimated']);
    // April: 38 % of 510 are 194; 316 are left over, and 30 days of 5 are stored and come out again.
    expect(value?.units.selfUse[0]).toBe(344_000);
  });

  it('has a cost, a saving and a payback of its own, and leaves the bills of the quote as they were', () => {
    // Net billing at 3.10 for a unit given; a unit taken costs more.
    const [policy] = DOCUMENT.policies ?? [];
    if (policy === undefined) throw new Error('no policy');
    const change = { policy: { policy: { ...policy }, from: 1 } };
    const one = { id: 'net-billing', name: 'Net billing', change };
    const battery = { ...BATTERY, efficiency: '100' };
    const having = workOutCase(inputOf({ battery }), TARIFF, one).quote;
    const without = workOutCase(inputOf(), TARIFF, one).quote;
    const [first, plain] = [having?.years[0], without?.years[0]];
    expect(having?.battery?.cost).toBe(10_000_000);
    expect(having?.battery?.saving).toBe((first?.saving ?? NaN) - (plain?.saving ?? NaN));
    expect(having?.battery?.payback).toBeGreaterThan(1);
    expect((having?.outlay.price ?? NaN) - (without?.outlay.price ?? NaN)).toBe(10_000_000);
    const made = prepared({ battery });
    const after = [...made.biller.bills.after];
    workOutQuote(made);
    expect([...made.biller.bills.after]).toEqual(after);
  });

  it('is paid for again where it is replaced', () => {
    // The first one would be paid back by then; the second is not within the life.
    const [policy] = DOCUMENT.policies ?? [];
    if (policy === undefined) throw new Error('no policy');
    const one = { id: 'b', name: 'b', change: { policy: { policy, from: 1 } } };
    const payback = (battery: NonNullable<QuoteDocument['battery']>) =>
      workOutCase(inputOf({ battery }), TARIFF, one).quote?.battery?.payback;
    const once = payback({ ...BATTERY, cost: '20000' });
    expect(once).toBeLessThan(25);
    const never = payback({ ...BATTERY, cost: '20000', replacement: { year: '1', amount: '900000' } });
    expect(never).toBeNull();
  });

  it('can be left out of the units', () => {
    const made = prepared({ battery: BATTERY }, { withBattery: false });
    expect([...made.units.selfUse]).toEqual([...prepared().units.selfUse]);
    expect(workOutQuote(made).battery).toBeNull();
  });
});

describe('quoteBounds', () => {
  it('are nothing used as it is made, and as much as there is', () => {
    const { value, findings } = quoteBounds(inputOf(NO_SHARE), TARIFF);
    expect(findings).toEqual([]);
    expect(value?.low.months.map(({ selfUse }) => selfUse)).toEqual(Array(12).fill(0));
    // From April on, the smaller of use and generation.
    expect(value?.high.months.map(({ selfUse }) => selfUse / 1000)).toEqual([
      510, 505, 420, 380, 400, 410, 400, 380, 390, 400, 420, 490,
    ]);
    // The demo nets without limit: the saving is the same.
    expect(value?.low.years[0]?.saving).toBe(value?.high.years[0]?.saving);
  });

  it('are null with findings under a tariff with time blocks', () => {
    const { value, findings } = quoteBounds(inputOf({ ...NO_SHARE, ...FLAT }), BLOCKS);
    expect([value, codes(findings)]).toEqual([null, ['quote/needs-profile']]);
  });
});

describe('a promise', () => {
  const figure = (id: string, numerator: number) =>
    givenFigure({ id, label: id, unit: 'kWh', numerator, denominator: 1000, clause: '' });
  const came = (
    from: string,
    to: string,
    units: { readonly taken: number; readonly given: number; readonly made: number },
  ) =>
    ({
      period: { from: parseDay(from), to: parseDay(to) },
      import: figure('import', units.taken),
      export: figure('export', units.given),
      generation: figure('generation', units.made),
      selfConsumption: figure('self-consumption', units.made - units.given),
      totalUse: figure('total-use', units.taken + units.made - units.given),
    }) as EnergyPeriod;

  it.each([
    ['a profile', { ...NO_SHARE }],
    ['a profile and a battery', { ...NO_SHARE, battery: BATTERY }],
  ])('by %s is kept where the meters show what was quoted', (_name, change) => {
    const made = prepared(change, { profile });
    const { months } = workOutQuote(made);
    const [first] = months;
    const units = { taken: first?.imported ?? 0, given: first?.exported ?? 0, made: first?.generation ?? 0 };
    const report = checkPromise(made, {
      tariff: TARIFF,
      energies: [came('2025-04-01', '2025-05-01', units)],
    }).value;
    const [row] = report?.periods ?? [];
    expect(row?.promised.after).toBe(first?.after);
    expect(row?.parts.map(({ bill, saving }) => [bill, saving])).toEqual(Array(5).fill([0, 0]));
  });

  it('under time blocks is refused where their units are not told', () => {
    const made = prepared({ ...NO_SHARE, ...FLAT }, { profile }, BLOCKS);
    const energies = [came('2025-04-01', '2025-05-01', { taken: 1000, given: 0, made: 0 })];
    const { value, findings } = checkPromise(made, { tariff: BLOCKS, energies });
    expect([value, codes(findings)]).toEqual([null, ['quote/promise-by-blocks']]);
    expect(findings[0]?.found).toBe(
      '1 period without units of import@peak, import@normal, import@solar, export@peak, export@normal, export@solar, the first from 2025-04-01',
    );
  });
});
