import {
  checkPromise,
  givenFigure,
  parseDay,
  prepareQuote,
  quoteKeptUnits,
  quoteSizes,
  readQuote,
  readTariff,
  wholeToDecimal,
  workOutCase,
  workOutCases,
  workOutQuote,
  type CaseResult,
  type EnergyPeriod,
  type Quote,
} from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import quoteText from '../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import tariffText from '../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';

/*
 * "Two acceptance scenarios, in an invented place", scenario 2, an offer of 4 kWp (2026): its figures were computed
 * by a script with decimal arithmetic, independent of this project. The place, the tariff and the offer are invented.
 */

const tariff = readTariff(tariffText).value;
const input = readQuote(quoteText).value;
if (tariff === null || input === null) throw new Error('the examples cannot be read');
const prepared = prepareQuote(input, tariff).value;
if (prepared === null) throw new Error('the example cannot be billed');
const quote = workOutQuote(prepared);

const money = (coins: number): string => wholeToDecimal(coins, 2);
const units = (thousandths: number): string => wholeToDecimal(thousandths, 3).replace(/\.000$/, '');

describe('table 1: the months of the first year', () => {
  it.each([
    [0, 'Apr', '520 510 194 326 316 0 3939.90 260.80'],
    [1, 'May', '560 505 192 368 313 0 4295.10 371.44'],
    [2, 'Jun', '480 420 160 320 260 0 3584.70 398.88'],
    [3, 'Jul', '430 380 144 286 236 0 3140.70 344.00'],
    [4, 'Aug', '420 400 152 268 248 0 3051.90 281.60'],
    [5, 'Sep', '410 430 163 247 267 20 2963.10 240.00'],
    [6, 'Oct', '400 460 175 225 285 80 2874.30 240.00'],
    [7, 'Nov', '380 440 167 213 273 140 2696.70 240.00'],
    [8, 'Dec', '390 450 171 219 279 200 2785.50 240.00'],
    [9, 'Jan', '400 480 182 218 298 280 2874.30 240.00'],
    [10, 'Feb', '420 500 190 230 310 360 3051.90 240.00'],
  ])('month %i, %s', (at, _name, expected) => {
    const month = quote.months[at];
    if (month === undefined) throw new Error('no such month');
    const energy = [month.use, month.generation, month.selfUse, month.imported, month.exported, month.bank];
    expect([...energy.map(units), money(month.before), money(month.after)].join(' ')).toBe(expected);
  });

  it('March, whose 415 banked units the settlement pays', () => {
    const month = quote.months[11];
    if (month === undefined) throw new Error('no such month');
    const energy = [month.use, month.generation, month.selfUse, month.imported, month.exported];
    expect([...energy.map(units), money(month.before), money(month.after)].join(' ')).toBe(
      '490 545 207 283 338 3673.50 240.00',
    );
    // The bank of the table is that before the settlement: 360 of February + 338 given − 283 taken.
    const bank = (quote.months[10]?.bank ?? 0) + month.exported - month.imported;
    expect(units(bank)).toBe('415');
    expect(quoteKeptUnits(prepared)).toMatchObject({
      paid: { numerator: 415_000, denominator: 1000 },
      lapsed: { numerator: 0 },
    });
    // It pays all of that, 415 × 2.60, and leaves nothing.
    expect([money(month.surplus), month.bank]).toEqual(['1079.00', 0]);
  });

  it('what each month is billed for', () => {
    const billed = quoteKeptUnits(prepared).billed.map((one) => units(Number(one?.numerator ?? -1)));
    expect(billed.join(' ')).toBe('10 55 60 50 20 0 0 0 0 0 0 0');
  });

  it('the year', () => {
    const [year] = quote.years;
    expect([units(year?.use ?? 0), units(year?.generation ?? 0)]).toEqual(['5300', '5520']);
    expect(money(year?.net ?? 0)).toBe('34273.88');
    expect(money(quote.measures.smallestBill)).toBe('240.00');
  });
});

describe('table 2: selected years', () => {
  it.each([
    [1, '5520 38931.60 3336.72 1079.00 36673.88 2400.00 34273.88 -127726.12'],
    [2, '5486 39728.23 3464.40 1024.40 37288.23 2496.00 34792.23 -92933.89'],
    [3, '5453 40540.86 3598.31 975.00 37917.55 2595.84 35321.71 -57612.18'],
    [4, '5420 41369.61 3734.05 923.00 38558.56 2699.67 35858.89 -21753.29'],
    [5, '5389 42214.98 3870.42 876.20 39220.76 2807.66 36413.10 14659.81'],
    [10, '5229 46702.43 4634.60 634.40 42702.23 3415.95 39286.28 205247.76'],
    [11, '5198 47654.50 4801.14 590.20 43443.56 35552.59 7890.97 213138.73'],
    [20, '4923 57127.07 6692.08 215.80 50650.79 5056.44 45594.35 600311.51'],
    [25, '4777 63166.58 8012.11 26.00 55180.47 6151.93 49028.54 838507.01'],
  ])('year %i', (at, expected) => {
    const year = quote.years[at - 1];
    if (year === undefined) throw new Error('no such year');
    const { before, after, surplus, saving, cost, net, cumulative } = year;
    const sums = [before, after, surplus, saving, cost, net, cumulative].map(money);
    expect([units(year.generation), ...sums].join(' ')).toBe(expected);
  });
});

/** Saving of year 1, payback, discounted payback, net of the life, present value and rate of return, as printed. */
function row({ years, measures }: Quote): string {
  const { simple, discounted, lifeNet, netPresentValue, rates } = measures;
  const [rate = NaN] = rates.rates;
  return [
    money(years[0]?.saving ?? 0),
    simple.first?.toFixed(3),
    discounted.first?.toFixed(3),
    money(lifeNet),
    money(netPresentValue),
    (rate * 100).toFixed(2),
  ].join(' ');
}

describe('table 3: sensitivity', () => {
  const cases = new Map(workOutCases(input, tariff).map((one) => [one.id, one]));
  const caseOf = (id: string): Quote => {
    const found: CaseResult | undefined = cases.get(id);
    if (found?.quote == null) throw new Error(`no case ${id}`);
    return found.quote;
  };

  it('the base', () => {
    expect(row(quote)).toBe('36673.88 4.597 5.912 838507.01 240574.80 22.01');
  });

  it.each([
    ['rise-0', '36673.88 4.782 6.298 591637.17 169983.15 19.74'],
    ['rise-twice', '36673.88 4.436 5.605 1175745.23 332047.55 24.22'],
    ['generation-less', '34853.55 4.847 6.322 780204.83 217696.98 20.81'],
    ['use-less', '29966.80 5.692 7.802 624068.56 155274.45 17.42'],
    ['use-more', '42179.64 3.980 4.951 995494.42 305541.13 25.55'],
    ['degradation', '36673.88 4.614 5.944 809743.32 232714.56 21.80'],
    ['subsidy-refused', '36673.88 6.063 8.489 784507.01 186574.80 16.46'],
    ['policy-1-now', '28420.17 6.166 8.800 484824.54 110438.43 15.31'],
    ['policy-1', '36673.88 4.597 5.912 551800.11 159541.69 19.72'],
    ['all-bad', '34853.55 5.059 6.781 371751.20 97857.78 16.29'],
  ])('%s', (id, expected) => {
    expect(row(caseOf(id))).toBe(expected);
  });

  it('net billing with 55 % of own use', () => {
    const [policy] = input.document.policies ?? [];
    if (policy === undefined) throw new Error('no policy');
    const change = { policy: { policy: { ...policy, selfUse: '55' }, from: 1 } };
    const { quote: found } = workOutCase(input, tariff, { id: 'own', name: 'own', change });
    expect(found === null ? '' : row(found)).toBe('32468.53 5.300 7.130 627317.37 165611.80 18.44');
  });
});

describe('table 4: sizes', () => {
  const { points } = quoteSizes(prepared, { from: 3000, step: 500, count: 5 });

  it.each([
    [3000, '4142 31607.27'],
    [3500, '4832 34344.23'],
    [4000, '5520 36673.88'],
    [5000, '6901 40214.20'],
  ])('%i W', (watts, expected) => {
    const point = points.find((one) => one.watts === watts);
    expect(`${units(point?.generation ?? 0)} ${money(point?.saving ?? 0)}`).toBe(expected);
  });

  it('what another unit earns: 2.56 from 4 to 5 kWp, 3.39 from 3.5 to 4, against 6.64 of all', () => {
    const [, small, own, , large] = points;
    if (small === undefined || own === undefined || large === undefined) throw new Error('no sizes');
    const perUnit = (saving: number, made: number): string => ((saving / made) * 10).toFixed(2);
    expect(perUnit(large.saving - own.saving, large.generation - own.generation)).toBe('2.56');
    expect(perUnit(own.saving - small.saving, own.generation - small.generation)).toBe('3.39');
    expect(perUnit(own.saving, own.generation)).toBe('6.64');
  });
});

/** A quotient of whole numbers above 0, rounded half-up to coins. */
const coins = (top: bigint, bottom: bigint): string => money(Number((200n * top + bottom) / (2n * bottom)));

describe('the loan', () => {
  const { loan, dayOne } = quote;
  const [first] = quote.years;

  it('has an instalment of 2,520.22, and 96,000 are paid on the first day', () => {
    expect(loan?.instalment).toBe(2_520_22);
    // 216,000 − 120,000: the subsidy comes later.
    expect([dayOne.price, dayOne.borrowed, dayOne.cash].map(money)).toEqual([
      '216000.00',
      '120000.00',
      '96000.00',
    ]);
  });

  it('comes to what is paid in coins: 59 instalments and a last one that takes up the rest', () => {
    // 59 × 2,520.22 = 148,692.98; the interest of each month is rounded to coins, and 2,520.40 are left of the debt.
    expect(loan?.lines.slice(0, 59).every(({ payment }) => payment === 2_520_22)).toBe(true);
    expect(loan?.lines[59]?.payment).toBe(2_520_40);
    // 148,692.98 + 2,520.40 = 151,213.38; less 120,000.
    expect([loan?.paid ?? 0, loan?.interest ?? 0].map(money)).toEqual(['151213.38', '31213.38']);
    // 12 × 2,520.22 = 30,242.64; 34,273.88 − 30,242.64.
    expect(money(first?.instalments ?? 0)).toBe('30242.64');
    expect(money((first?.net ?? 0) - (first?.instalments ?? 0))).toBe('4031.24');
  });

  it('is printed by the scenario from the instalment before it is rounded, which nobody can pay', () => {
    // 9.5 % ÷ 12 = 19/2400 a month; 120,000 × 19/2400 = 950; the instalment is 950 × q^60 ÷ (q^60 − 1), q = 2419/2400.
    const [grown, whole] = [2419n ** 60n, 2400n ** 60n];
    const times = (count: bigint): string => coins(count * 950n * grown, grown - whole);
    expect([times(1n), times(60n), times(12n)]).toEqual(['2520.22', '151213.40', '30242.68']);
    const interest = 60n * 950n * grown - 120_000n * (grown - whole);
    expect(coins(interest, grown - whole)).toBe('31213.40');
    // 34,273.88 − 12 × the instalment, over the same denominator: 4 coins less than with instalments in coins.
    const left = 3_427_388n * (grown - whole) - 100n * 12n * 950n * grown;
    expect(coins(left, 100n * (grown - whole))).toBe('4031.20');
  });
});

describe('the call after the sale, July of year 1', () => {
  const figure = (id: string, kWh: number) =>
    givenFigure({ id, label: id, unit: 'kWh', numerator: kWh * 1000, denominator: 1000, clause: '' });
  const period = (from: string, to: string, [taken, given, made]: readonly [number, number, number]) =>
    ({
      period: { from: parseDay(from), to: parseDay(to) },
      import: figure('import', taken),
      export: figure('export', given),
      generation: figure('generation', made),
      selfConsumption: figure('self-consumption', made - given),
      totalUse: figure('total-use', taken + made - given),
    }) as EnergyPeriod;
  const report = checkPromise(prepared, {
    tariff,
    energies: [
      period('2025-04-01', '2025-05-01', [326, 316, 510]),
      period('2025-05-01', '2025-06-01', [368, 313, 505]),
      period('2025-06-01', '2025-07-01', [320, 260, 420]),
      period('2025-07-01', '2025-08-01', [476, 218, 352]),
    ],
  }).value;
  const july = report?.periods[3];

  it('the bill is 1,680.12 where 344.00 was quoted', () => {
    expect([july?.promised.after, july?.actual.after].map((one) => money(one ?? 0))).toEqual([
      '344.00',
      '1680.12',
    ]);
    expect(money(july?.actual.before ?? 0)).toBe('4739.10');
    expect([july?.actual.use, july?.actual.selfUse]).toEqual([610_000, 134_000]);
  });

  it('180 more units used explain 1,132.00 of it, 28 fewer generated 204.12', () => {
    expect(july?.parts.map(({ cause, bill }) => [cause, money(bill)])).toEqual([
      ['use', '1132.00'],
      ['generation', '204.12'],
      ['self-use', '0.00'],
      ['tariff', '0.00'],
      ['scheme', '0.00'],
    ]);
  });

  it('solar saved 3,058.98, more than the 2,796.70 promised', () => {
    expect([july?.actual.saving, july?.promised.saving].map((one) => money(one ?? 0))).toEqual([
      '3058.98',
      '2796.70',
    ]);
  });

  it('the plant makes 93 % of what July was to bring', () => {
    expect(((july?.actual.generation ?? 0) / (july?.promised.generation ?? 1)).toFixed(2)).toBe('0.93');
  });
});
