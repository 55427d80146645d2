import fc from 'fast-check';
import {
  dayText,
  ROUNDING_MODES,
  type LedgersRule,
  type TariffDocument,
  type UnitNettingRule,
  type UnitsAccount,
  type UnitsPeriod,
} from '@unitbook/engine';
import { dayOf } from '../../support/make.ts';
import { thousandthsText, type Definition } from '../random-scheme.ts';

const clause = 'LAW 1';
const words = (id: string) => ({ id, label: id, clause });

type Cap = NonNullable<UnitNettingRule['cap']>;

/** What a rule of unit netting says, and the year that is settled by it. */
export interface NettingYear {
  readonly cap: Pick<Cap, 'percent' | 'of' | 'excess'> | null;
  readonly on: string;
  readonly surplus: 'paid' | 'lapses';
  readonly inBill: 'same' | 'next';
  readonly rate: string;
  readonly units: Pick<TariffDocument['units'], 'decimals' | 'rounding'>;
  readonly change: TariffDocument['versionChange'];
  readonly changeDay: number;
  readonly lines: '0.01' | '1' | 'none';
  readonly bankFirst: boolean;
  readonly months: readonly {
    readonly days: number;
    readonly imported: number;
    readonly exported: number;
    readonly ownUse: number;
  }[];
  readonly brought: number;
}

const wattHours = fc.oneof(
  fc.integer({ min: 0, max: 500 }).map((whole) => whole * 1000),
  fc.integer({ min: 0, max: 600_000 }),
  fc.constant(0),
);

const change = fc.oneof(
  fc
    .constantFrom('in-force-on-first-day' as const, 'in-force-on-last-day' as const)
    .map((rule) => ({ rule, clause })),
  fc.record({
    rule: fc.constant('split-by-days' as const),
    clause: fc.constant(clause),
    units: fc.constantFrom('exact' as const, 'whole' as const),
    factor: fc.constantFrom('days-of-part' as const, 'share-of-period' as const),
  }),
);

/** Any rule of unit netting and any year under it, with a change of the charges somewhere in the year. */
export const nettingYear: fc.Arbitrary<NettingYear> = fc.record({
  cap: fc.option(
    fc.record({
      percent: fc.constantFrom('90', '33.3', '100', '62.5', '0.5'),
      of: fc.constantFrom('import' as const, 'generation' as const, 'total-use' as const),
      excess: fc.constantFrom('carried' as const, 'lapses' as const),
    }),
    { nil: null },
  ),
  on: fc.oneof(
    fc.constant('every-period'),
    fc.constantFrom('03-31', '02-29', '12-31', '01-01', '06-17', '09-30'),
  ),
  surplus: fc.constantFrom('paid' as const, 'lapses' as const),
  inBill: fc.constantFrom('same' as const, 'next' as const),
  rate: fc.constantFrom('2.5', '0.015', 'surplus-price'),
  units: fc.record({
    decimals: fc.constantFrom('0' as const, '1' as const, '2' as const, '3' as const),
    rounding: fc.constantFrom(...ROUNDING_MODES),
  }),
  change,
  changeDay: fc.integer({ min: 1, max: 360 }),
  lines: fc.constantFrom('0.01' as const, '1' as const, 'none' as const),
  bankFirst: fc.boolean(),
  months: fc.array(
    fc.record({
      days: fc.oneof(fc.constantFrom(30, 31), fc.integer({ min: 5, max: 64 })),
      imported: wattHours,
      exported: wattHours,
      ownUse: wattHours,
    }),
    { minLength: 3, maxLength: 12 },
  ),
  brought: fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 400_000 })),
});

/** The rule in the few words of `unit-netting`. */
export function asUnitNetting({ cap, on, surplus, inBill, rate }: NettingYear): UnitNettingRule {
  const everyPeriod = on === 'every-period';
  const payment = surplus === 'paid' ? { rate, inBill } : {};
  return {
    from: '2020-01-01',
    scheme: 'unit-netting',
    clause,
    // A bank that closes every period has nothing to carry an excess in.
    ...(cap === null
      ? {}
      : { cap: { clause, ...cap, ...(everyPeriod ? { excess: 'lapses' as const } : {}) } }),
    ...(everyPeriod ? {} : { carry: { clause } }),
    close: { clause, on, surplus, ...payment },
  };
}

const STEPS = { '0': '1', '1': '0.1', '2': '0.01', '3': '0.001' } as const;

/** What a cap that lapses takes out of what is left over: it is netted with nothing to show for it. */
function lapsing(): readonly Definition[] {
  return [
    { is: 'sum', ...words('pool'), of: ['bank', 'export'] },
    { is: 'least', ...words('wanted'), of: ['import', 'pool'] },
    { is: 'difference', ...words('cut'), of: ['wanted', 'net'] },
    { is: 'sum', ...words('kept'), of: ['net.bank'] },
    { is: 'sum', ...words('added'), of: ['net.export'] },
    { is: 'netting', ...words('dropped'), supply: ['kept', 'added'], demand: ['cut'], routes: 'any' },
  ];
}

/** The same rule written out as quantities and one ledger. */
export function asLedgers(one: NettingYear): LedgersRule {
  const { cap, surplus, inBill, rate, units, bankFirst } = one;
  const { on } = one;
  const lapses = cap !== null && (cap.excess === 'lapses' || on === 'every-period');
  const rounding = { step: STEPS[units.decimals], mode: units.rounding };
  const most: Definition[] =
    cap === null ? [] : [{ is: 'percent', ...words('most'), percent: cap.percent, of: [cap.of], rounding }];
  const payment = { clause, label: 'Surplus units paid', rate, inBill };
  return {
    from: '2020-01-01',
    scheme: 'ledgers',
    clause,
    quantities: [
      ...most,
      {
        is: 'netting',
        ...words('net'),
        supply: bankFirst ? ['bank', 'export'] : ['export', 'bank'],
        demand: ['import'],
        routes: 'any',
        ...(cap === null ? {} : { most: 'most' }),
      },
      { is: 'sum', ...words('billed'), of: ['net.import'] },
      ...(lapses ? lapsing() : []),
    ],
    ledgers: [
      {
        ...words('bank'),
        unit: 'kWh',
        adds: lapses ? 'dropped.added' : 'net.export',
        keeps: lapses ? 'dropped.kept' : 'net.bank',
        close: { clause, on: on === 'every-period' ? 'every-period' : [on], surplus },
        ...(surplus === 'paid' ? { payment } : {}),
      },
    ],
  };
}

const START = '2024-01-10';

/** A tariff with one of the two rules: slabs on units billed, a tax, and a change of the charges in the year. */
export function documentWith(one: NettingYear, rule: UnitNettingRule | LedgersRule): TariffDocument {
  const charges = (rate: string): TariffDocument['versions'][number]['charges'] => [
    { ...words('fixed'), kind: 'fixed', amount: '120', scaledBy: 'month' },
    {
      ...words('energy'),
      kind: 'slabs',
      on: 'billed',
      method: 'telescopic',
      slabs: [{ upTo: '50', rate }, { upTo: '200', rate: '5.25' }, { rate: '7' }],
      scaledBy: 'month',
    },
    { ...words('wheeling'), kind: 'per-unit', on: 'export', rate: '0.35' },
    { ...words('tax'), kind: 'percentage', percent: '6', of: ['fixed', 'energy'] },
  ];
  const day = dayText((dayOf(START) + one.changeDay) as ReturnType<typeof dayOf>);
  const before = dayText((dayOf(START) + one.changeDay - 1) as ReturnType<typeof dayOf>);
  return {
    format: 'unitbook-tariff-1',
    id: 'law',
    name: 'law',
    supplier: 'nobody',
    currency: 'INR',
    sources: { LAW: { title: 'Generated', publisher: 'this test', year: '2026' } },
    units: { clause, ...one.units, roundedAt: 'difference' },
    rounding: {
      clause,
      line: one.lines === 'none' ? 'none' : { step: one.lines, mode: 'half-up' },
      total: { step: '1', mode: 'half-up' },
    },
    prices: {
      'surplus-price': {
        is: 'series',
        clause,
        inForce: 'last-day',
        values: [
          { from: '2020-01-01', rate: '2.1' },
          { from: '2024-06-01', rate: '1.875' },
        ],
      },
    },
    dayRules: { month: { clause, rule: 'days-over', divisor: '30' } },
    versionChange: one.change,
    versions: [
      { name: 'OLD', from: '2020-01-01', through: before, clause, charges: charges('3') },
      { name: 'NEW', from: day, clause, charges: charges('3.6') },
    ],
    settlements: [rule],
  };
}

/** The periods of the year, with generation, so that every quantity a cap can name is known. */
export function nettingPeriods({ months }: NettingYear): UnitsPeriod[] {
  let day = dayOf(START);
  return months.map(({ days, imported, exported, ownUse }) => {
    const from = dayText(day);
    day = (day + days) as typeof day;
    const quantities = {
      import: thousandthsText(imported),
      export: thousandthsText(exported),
      generation: thousandthsText(exported + ownUse),
    };
    return { from, to: dayText(day), quantities };
  });
}

/** An account that brings forward a balance under the name it has in one of the schemes. */
export function bringing({ brought }: NettingYear, name: 'credit' | 'bank'): UnitsAccount {
  return { opening: { [name]: thousandthsText(brought) } };
}
