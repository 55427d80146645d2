import fc from 'fast-check';
import {
  dayText,
  ROUNDING_MODES,
  type Charge,
  type LedgersRule,
  type TariffDocument,
  type UnitsPeriod,
} from '@unitbook/engine';
import { dayOf } from '../support/make.ts';

/** A quantity that a scheme of ledgers works out. */
export type Definition = NonNullable<LedgersRule['quantities']>[number];
/** A ledger of units or money. */
type Ledger = NonNullable<LedgersRule['ledgers']>[number];
type Netting = Definition & { is: 'netting' };
type Prices = NonNullable<TariffDocument['prices']>;

const clause = 'LAW 1';
const words = (id: string) => ({ id, label: id, clause });

/** What a generated scheme is made of; every part shrinks to its first or smallest choice. */
export interface SchemeSpec {
  /** Time blocks; 0: none are declared. */
  readonly blocks: number;
  readonly banks: 'none' | 'one' | 'each';
  readonly bankFirst: boolean;
  readonly routes: 'any' | 'same-block' | 'same-block-first' | 'list';
  /** Routes of a list, by place. */
  readonly list: readonly { readonly from: number; readonly to: number; readonly worth: string }[];
  readonly rounding: { readonly step: string; readonly mode: (typeof ROUNDING_MODES)[number] };
  /** The most that is set off, in percent of the import; null for no limit. */
  readonly cap: string | null;
  readonly life: { readonly months: string; readonly of: 'each-unit' | 'time-in-credit' } | null;
  readonly close: NonNullable<Ledger['close']> | null;
  readonly terms: Terms;
  readonly money: {
    readonly percent: string | null;
    readonly life: string | null;
    readonly close: NonNullable<Ledger['close']> | null;
    readonly terms: Terms;
    readonly taxAfter: boolean;
  } | null;
  readonly rates: readonly string[];
  readonly inside: boolean;
  readonly lines: '0.01' | '0.05' | '1' | 'none';
  readonly total: 'none' | '1' | '0.05';
  /** What a change of the charges inside a period, or of the season, does to it. */
  readonly change: TariffDocument['versionChange']['rule'];
  /** Days from the first to the change of the charges. */
  readonly changeDay: number;
  /** When the year of a running total begins. */
  readonly since: '04-01' | 'anniversary' | 'chosen';
}

/** How a balance is paid, where it is. */
interface Terms {
  readonly inBill: 'same' | 'next';
  readonly above: string | null;
  /** Whether the threshold itself is paid, too. */
  readonly atLeast: boolean;
  readonly pays: 'whole' | 'excess';
  readonly rest: 'carried' | 'lapses';
  /** Whether no more units are paid than the period's export, or an amount of money rounded to a whole one. */
  readonly limited: boolean;
}

const DAYS = ['03-31', '12-31', '06-15', '02-29', '04-01'];
const surplus = fc.constantFrom('lapses' as const, 'paid' as const);
const close = fc.oneof(
  fc.record({ clause: fc.constant(clause), on: fc.constant('every-period' as const), surplus }),
  fc.record({
    clause: fc.constant(clause),
    on: fc.uniqueArray(fc.constantFrom(...DAYS), { minLength: 1, maxLength: 2 }),
    surplus,
  }),
  fc.record(
    {
      clause: fc.constant(clause),
      on: fc.oneof(
        fc.constantFrom('anniversary' as const, 'chosen' as const),
        fc.constantFrom(...DAYS).map((day) => [day]),
      ),
      everyYears: fc.constantFrom('1', '2'),
      surplus,
    },
    { requiredKeys: ['clause', 'on', 'surplus'] },
  ),
);
const terms = fc.record({
  inBill: fc.constantFrom('same' as const, 'next' as const),
  above: fc.option(fc.constantFrom('0.5', '20', '150.125'), { nil: null }),
  atLeast: fc.boolean(),
  pays: fc.constantFrom('whole' as const, 'excess' as const),
  rest: fc.constantFrom('carried' as const, 'lapses' as const),
  limited: fc.boolean(),
});
const months = fc.integer({ min: 1, max: 14 }).map(String);
const WORTHS = ['100', '50', '80', '66.67', '112.5', '150'];
const rates = fc
  .integer({ min: 0, max: 1_200 })
  .map((cents) => `${String(Math.trunc(cents / 100))}.${String(cents % 100).padStart(2, '0')}`);

/** Any scheme of ledgers that the document's form allows, within what a home can meet. */
export const scheme: fc.Arbitrary<SchemeSpec> = fc.record({
  blocks: fc.integer({ min: 0, max: 4 }),
  banks: fc.constantFrom('one', 'each', 'none'),
  bankFirst: fc.boolean(),
  routes: fc.constantFrom('any', 'same-block', 'same-block-first', 'list'),
  list: fc.array(
    fc.record({
      from: fc.nat({ max: 7 }),
      to: fc.nat({ max: 3 }),
      worth: fc.constantFrom(...WORTHS),
    }),
    { minLength: 1, maxLength: 8 },
  ),
  rounding: fc.record({
    step: fc.constantFrom('0.001', '1', '0.1', '0.01'),
    mode: fc.constantFrom('half-up' as const, ...ROUNDING_MODES),
  }),
  cap: fc.option(fc.constantFrom('90', '33.3', '100', '0', '12.5'), { nil: null }),
  life: fc.option(
    fc.record({ months, of: fc.constantFrom('each-unit' as const, 'time-in-credit' as const) }),
    { nil: null },
  ),
  close: fc.option(close, { nil: null }),
  terms,
  money: fc.option(
    fc.record({
      percent: fc.option(fc.constantFrom('50', '33.3', '100', '0'), { nil: null }),
      life: fc.option(months, { nil: null }),
      close: fc.option(close, { nil: null }),
      terms,
      taxAfter: fc.boolean(),
    }),
    { nil: null },
  ),
  rates: fc.array(rates, { minLength: 8, maxLength: 8 }),
  inside: fc.boolean(),
  lines: fc.constantFrom('0.01', '0.05', '1', 'none'),
  total: fc.constantFrom('none', '1', '0.05'),
  change: fc.constantFrom('in-force-on-first-day', 'in-force-on-last-day', 'split-by-days'),
  changeDay: fc.integer({ min: 1, max: 330 }),
  since: fc.constantFrom('04-01', 'anniversary', 'chosen'),
});

/** The names of the blocks of a scheme, as they stand after a channel: `@b0`, or nothing where there are none. */
export function suffixesOf({ blocks }: Pick<SchemeSpec, 'blocks'>): readonly string[] {
  return blocks === 0 ? [''] : Array.from({ length: blocks }, (_, at) => `@b${String(at)}`);
}

/** The ledgers of units of a scheme, by id. */
export function banksOf(spec: Pick<SchemeSpec, 'blocks' | 'banks'>): readonly string[] {
  if (spec.banks === 'none') return [];
  return spec.banks === 'one' ? ['bank'] : suffixesOf(spec).map((_, at) => `bank-${String(at)}`);
}

/** The day in equal parts, one for each block. */
function timeBlocksOf({ blocks }: SchemeSpec): NonNullable<TariffDocument['timeBlocks']> {
  const hour = (at: number): string => `${String((at * 24) / blocks).padStart(2, '0')}:00`;
  const ids = Array.from({ length: blocks }, (_, at) => `b${String(at)}`);
  return {
    clause,
    blocks: ids.map((id) => ({ id, label: id })),
    calendar: ids.map((block, at) => ({ block, from: hour(at), to: hour(at + 1) })),
  };
}

/** A route is named once. */
const isFirst = (
  { from, to }: { readonly from: string; readonly to: string },
  at: number,
  all: readonly { readonly from: string; readonly to: string }[],
): boolean => all.findIndex((other) => other.from === from && other.to === to) === at;

function nettingOf(spec: SchemeSpec): Netting {
  const suffixes = suffixesOf(spec);
  const exports = suffixes.map((suffix) => `export${suffix}`);
  const banks = banksOf(spec);
  const supply = spec.bankFirst ? [...banks, ...exports] : [...exports, ...banks];
  const demand = suffixes.map((suffix) => `import${suffix}`);
  const list = spec.list.map(({ from, to, worth }) => ({
    from: supply[from % supply.length] ?? '',
    to: demand[to % demand.length] ?? '',
    worth,
  }));
  return {
    is: 'netting',
    ...words('net'),
    supply,
    demand,
    routes: spec.routes === 'list' ? list.filter(isFirst) : spec.routes,
    ...(spec.cap === null ? {} : { most: 'cap' }),
    rounding: spec.rounding,
  };
}

const THREE_PLACES = { step: '0.001', mode: 'half-up' } as const;

/** Quantities of every kind around the netting. */
function definitionsOf(spec: SchemeSpec): Definition[] {
  const suffixes = suffixesOf(spec);
  const { rounding, since } = spec;
  const left = (channel: string): string[] => suffixes.map((suffix) => `net.${channel}${suffix}`);
  const cap: Definition[] =
    spec.cap === null
      ? []
      : [{ is: 'percent', ...words('cap'), percent: spec.cap, of: ['import'], rounding }];
  return [
    ...cap,
    nettingOf(spec),
    { is: 'sum', ...words('left-import'), of: left('import') },
    { is: 'sum', ...words('left-export'), of: left('export') },
    { is: 'running-total', ...words('year'), of: 'left-import', since, through: 'this-period' },
    {
      is: 'running-total',
      ...words('year-before'),
      of: 'left-import',
      since,
      through: 'previous-period',
    },
    { is: 'part', ...words('over'), of: 'year', above: '300' },
    { is: 'part', ...words('over-before'), of: 'year-before', above: '300' },
    { is: 'difference', ...words('tier'), of: ['over', 'over-before'] },
    { is: 'running-total', ...words('lately'), of: 'import', periods: '3', through: 'this-period' },
    {
      is: 'mean',
      ...words('average'),
      of: 'import',
      periods: '4',
      through: 'previous-period',
      whenFewer: 'mean-of-those',
      rounding: { step: '0.01', mode: 'half-even' },
    },
    { is: 'excess', ...words('beyond'), of: ['import', 'average', '10'] },
    { is: 'part', ...words('middle'), of: 'import', above: '40', upTo: '120' },
    { is: 'least', ...words('small'), of: ['import', 'export', '75.5'] },
    { is: 'greatest', ...words('large'), of: ['import', 'export', 'small'], rounding },
    { is: 'product', ...words('loss'), of: ['import', '0.0375'], rounding: THREE_PLACES },
    { is: 'sum', ...words('one-more'), of: ['import', '1'] },
    { is: 'quotient', ...words('ratio'), of: 'kvah', by: 'one-more', rounding: THREE_PLACES },
    {
      is: 'choice',
      ...words('chosen'),
      by: 'import',
      steps: [{ upTo: '50', take: '0' }, { upTo: '200.5', take: 'middle' }, { take: 'import' }],
    },
    {
      is: 'days-share',
      ...words('monthly'),
      of: 'import',
      days: 'month-of-last-day',
      when: 'longer',
      rounding: THREE_PLACES,
    },
  ];
}

/** How a ledger that is paid is paid. */
function paymentOf(
  spec: Terms,
  unit: Ledger['unit'],
): Pick<NonNullable<Ledger['payment']>, 'above' | 'atLeast' | 'pays' | 'rest' | 'most' | 'rounding'> {
  const isLimited = spec.limited && unit === 'kWh';
  return {
    ...(spec.above === null ? {} : { [spec.atLeast ? 'atLeast' : 'above']: spec.above, pays: spec.pays }),
    ...(isLimited ? { most: 'left-export' } : {}),
    ...(spec.above !== null || isLimited ? { rest: spec.rest } : {}),
    ...(spec.limited ? { rounding: { step: '0.1', mode: 'half-up' as const } } : {}),
  };
}

function ledgersOf(spec: SchemeSpec): Ledger[] {
  const suffixes = suffixesOf(spec);
  const { life, close: closed, terms: how, money } = spec;
  const payment = { clause, label: 'Surplus', inBill: how.inBill, rate: 'reward', ...paymentOf(how, 'kWh') };
  const banks = banksOf(spec).map((id, at): Ledger => ({
    ...words(id),
    unit: 'kWh',
    adds: spec.banks === 'one' ? 'left-export' : `net.export${suffixes[at] ?? ''}`,
    keeps: `net.${id}`,
    ...(life === null ? {} : { life: { clause, ...life } }),
    ...(closed === null ? {} : { close: closed }),
    ...(closed?.surplus === 'paid' ? { payment } : {}),
  }));
  if (money === null) return banks;
  const paidOut = {
    clause,
    label: 'Paid out',
    inBill: money.terms.inBill,
    ...paymentOf(money.terms, 'money'),
  };
  const rewards: Ledger = {
    ...words('rewards'),
    unit: 'money',
    ...(money.life === null ? {} : { life: { clause, months: money.life, of: 'each-unit' } }),
    ...(money.close === null ? {} : { close: money.close }),
    ...(money.close?.surplus === 'paid' ? { payment: paidOut } : {}),
  };
  return [...banks, rewards];
}

/** Prices of every kind: what they come to depends on the period. */
function pricesOf([first = '0', second = '0', third = '0']: readonly string[]): Prices {
  return {
    base: {
      is: 'series',
      clause,
      inForce: 'last-day',
      values: [
        { from: '2020-01-01', rate: first },
        { from: '2024-07-01', rate: second },
        { from: '2024-11-16', rate: third },
      ],
    },
    slow: {
      is: 'mean',
      clause,
      of: 'base',
      months: '7',
      through: 'month-before',
      rounding: { step: '0.0001', mode: 'half-up' },
    },
    reward: { is: 'percent', clause, percent: '62.5', of: ['base', 'slow'] },
    dear: { is: 'greatest', clause, of: ['slow', '3.1'] },
  };
}

/** Whether lines stay as they are; parts of a period left unrounded would need a denominator each. */
const isExact = ({ lines, change }: SchemeSpec): boolean => lines === 'none' && change !== 'split-by-days';

/** Charges on what the scheme works out; the last rates are numbers, and another version has them in another order. */
function chargesOf(spec: SchemeSpec, turned: 0 | 1): Charge[] {
  const { money, rates: numbers, inside } = spec;
  const rate = (at: number): string => numbers[turned === 0 ? at : 10 - at] ?? '0';
  const blocks = suffixesOf(spec).map((suffix, at): Charge => ({
    ...words(`block-${String(at)}`),
    kind: 'per-unit',
    on: `net.import${suffix}`,
    rate: rate(3 + (at % 2)),
  }));
  const charges: Charge[] = [
    { ...words('fixed'), kind: 'fixed', amount: rate(5), scaledBy: 'month' },
    { ...words('warm'), kind: 'per-unit', on: 'import', rate: '0.21', season: 'warm' },
    ...blocks,
    {
      ...words('slabs'),
      kind: 'slabs',
      on: 'left-import',
      method: 'telescopic',
      slabs: [{ upTo: '100', rate: 'base' }, { upTo: '250.5', rate: 'dear' }, { rate: rate(6) }],
      scaledBy: 'month',
    },
    { ...words('tiers'), kind: 'per-unit', on: 'tier', rate: rate(7) },
    { ...words('chosen'), kind: 'per-unit', on: 'chosen', rate: '0.37' },
    { ...words('demand'), kind: 'per-kilowatt', on: 'demand', rate: rate(4), scaledBy: 'month' },
  ];
  const met = ['slabs', ...blocks.slice(0, 1).map(({ id }) => id)];
  const before = charges.map(({ id }) => id);
  const tax = (of: string[]): Charge => ({
    ...words('tax'),
    kind: 'percentage',
    percent: '12.5',
    of,
    // Left unrounded, a tax inside its base needs a denominator of its own.
    ...(inside && !isExact(spec) ? { inside: true } : {}),
  });
  if (money === null) return [...charges, tax(before)];
  return [
    ...charges,
    { ...words('reward'), kind: 'per-unit', on: 'export', rate: 'reward' },
    {
      ...words('credit'),
      kind: 'credit',
      earned: ['reward'],
      ledger: 'rewards',
      against: met,
      left: 'carried',
      ...(money.percent === null ? {} : { percent: money.percent }),
    },
    tax(money.taxAfter ? [...before, 'credit'] : before),
  ];
}

const roundingOf = (step: string): TariffDocument['rounding']['line'] =>
  step === 'none' ? 'none' : { step, mode: 'half-up' };

/** The first day of a generated year. */
const START = '2023-12-15';
const dayAt = (after: number): string => dayText((dayOf(START) + after) as ReturnType<typeof dayOf>);

const changeOf = ({ change: rule }: SchemeSpec): TariffDocument['versionChange'] =>
  rule === 'split-by-days' ? { rule, clause, units: 'exact', factor: 'days-of-part' } : { rule, clause };

/** The document of a scheme. */
export function documentOf(spec: SchemeSpec): TariffDocument {
  const { changeDay } = spec;
  return {
    format: 'unitbook-tariff-1',
    id: 'law',
    name: 'law',
    supplier: 'nobody',
    currency: 'INR',
    sources: { LAW: { title: 'Generated', publisher: 'this test', year: '2026' } },
    units: { clause, decimals: '3', rounding: 'down', roundedAt: 'difference' },
    rounding: {
      clause,
      line: roundingOf(isExact(spec) ? 'none' : spec.lines === 'none' ? '0.01' : spec.lines),
      total: roundingOf(spec.total),
    },
    measures: {
      demand: { label: 'Demand', unit: 'kW' },
      kvah: { label: 'Apparent energy', unit: 'kVAh', whenMissing: 'zero' },
    },
    prices: pricesOf(spec.rates),
    ...(spec.blocks === 0 ? {} : { timeBlocks: timeBlocksOf(spec) }),
    seasons: { warm: { clause, from: '03-25', through: '10-05' } },
    dayRules: { month: { clause, rule: 'days-over', divisor: '30' } },
    versionChange: changeOf(spec),
    versions: [
      { name: 'OLD', from: '2020-01-01', through: dayAt(changeDay - 1), clause, charges: chargesOf(spec, 0) },
      { name: 'NEW', from: dayAt(changeDay), clause, charges: chargesOf(spec, 1) },
    ],
    settlements: [
      {
        from: '2020-01-01',
        scheme: 'ledgers',
        clause,
        quantities: definitionsOf(spec),
        ledgers: ledgersOf(spec),
      },
    ],
  };
}

/** What a period counts, in watt-hours, by block. */
export interface MonthSpec {
  readonly days: number;
  readonly imports: readonly number[];
  readonly exports: readonly number[];
  readonly demand: number;
  readonly kvah: number | null;
}

const units = fc.oneof(
  fc.integer({ min: 0, max: 150 }).map((whole) => whole * 1000),
  fc.integer({ min: 0, max: 400_000 }),
  fc.constant(0),
);
const four = fc.array(units, { minLength: 4, maxLength: 4 });

/** Three to twelve periods: mostly months, some longer or shorter. */
export const year: fc.Arbitrary<readonly MonthSpec[]> = fc.array(
  fc.record({
    days: fc.oneof(fc.constantFrom(30, 31, 28), fc.integer({ min: 1, max: 64 })),
    imports: four,
    exports: four,
    demand: fc.integer({ min: 0, max: 9_000 }),
    kvah: fc.option(units, { nil: null }),
  }),
  { minLength: 3, maxLength: 12 },
);

/** Whole thousandths as decimal text. */
export function thousandthsText(value: number): string {
  const digits = String(value).padStart(4, '0');
  return `${digits.slice(0, -3)}.${digits.slice(-3)}`.replace(/\.?0+$/, '');
}

/** The periods of a year from 15 December 2023 under a scheme. */
export function periodsOf(spec: Pick<SchemeSpec, 'blocks'>, all: readonly MonthSpec[]): UnitsPeriod[] {
  let day = dayOf(START);
  return all.map(({ days, imports, exports, demand, kvah }) => {
    const from = dayText(day);
    day = (day + days) as typeof day;
    const counted = suffixesOf(spec).flatMap((suffix, at) => [
      [`import${suffix}`, thousandthsText(imports[at] ?? 0)],
      [`export${suffix}`, thousandthsText(exports[at] ?? 0)],
    ]);
    const quantities: Record<string, string> = {
      ...(Object.fromEntries(counted) as Record<string, string>),
      demand: thousandthsText(demand),
      ...(kvah === null ? {} : { kvah: thousandthsText(kvah) }),
    };
    return { from, to: dayText(day), quantities };
  });
}

/** What an account brings forward: units in each bank, and money. */
export function openingOf(
  spec: SchemeSpec,
  { units: brought, money }: { readonly units: number; readonly money: string },
): Record<string, string> {
  const banks = banksOf(spec).map((id) => [id, thousandthsText(brought)] as const);
  return { ...Object.fromEntries(banks), ...(spec.money === null ? {} : { rewards: money }) };
}

/** Balances brought forward. */
export const opening = fc.record({
  units: fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 300_000 })),
  money: fc.constantFrom('0', '12.5', '0.125', '333.33'),
});
