import { Decimal } from 'decimal.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { intervalRowsToColumns, keepIntervals, type TariffDocument, type UnitsMonth } from '@unitbook/engine';
import { dayOf, valueOf } from '../../support/make.ts';
import { tariffOfDocument } from './scheme-year.ts';

const clause = 'LAW 1';
const words = (id: string) => ({ id, label: id, clause });
const CHARGES = [
  ['peak', 'net.import@peak', '8.37'],
  ['off', 'net.import@off', '4.05'],
  ['hourly', 'hourly-net', '0.13'],
  ['given', 'export', '-0.021'],
] as const;

/** Peak hours on working days, a bank that closes on 31 March, and a measure that nets inside every hour. */
const DOCUMENT: TariffDocument = {
  format: 'unitbook-tariff-1',
  id: 'law',
  name: 'law',
  supplier: 'nobody',
  currency: 'INR',
  sources: { LAW: { title: 'Generated', publisher: 'this test', year: '2026' } },
  units: { clause, decimals: '3', rounding: 'down', roundedAt: 'difference' },
  rounding: { clause, line: { step: '0.01', mode: 'half-up' }, total: { step: '1', mode: 'half-even' } },
  measures: {
    'hourly-net': {
      label: 'Import left in each hour',
      unit: 'kWh',
      window: { of: 'import', less: 'export', within: 'hour' },
    },
  },
  timeBlocks: {
    clause,
    blocks: [
      { id: 'peak', label: 'peak' },
      { id: 'off', label: 'off-peak' },
    ],
    calendar: [
      { block: 'peak', from: '18:00', to: '22:00', days: ['mon', 'tue', 'wed', 'thu', 'fri'] },
      { block: 'off', from: '22:00', to: '18:00', days: ['mon', 'tue', 'wed', 'thu', 'fri'] },
      { block: 'off', from: '00:00', to: '24:00', days: ['sat', 'sun'] },
    ],
  },
  versionChange: { rule: 'in-force-on-first-day', clause },
  versions: [
    {
      name: 'LAW',
      from: '2020-01-01',
      clause,
      charges: CHARGES.map(([id, on, rate]) => ({ ...words(id), kind: 'per-unit', on, rate })),
    },
  ],
  settlements: [
    {
      from: '2020-01-01',
      scheme: 'ledgers',
      clause,
      quantities: [
        {
          is: 'netting',
          ...words('net'),
          supply: ['export@peak', 'export@off', 'bank'],
          demand: ['import@peak', 'import@off'],
          routes: [
            { from: 'export@peak', to: 'import@peak' },
            { from: 'export@off', to: 'import@off' },
            { from: 'bank', to: 'import@off' },
          ],
        },
        { is: 'sum', ...words('left'), of: ['net.export@peak', 'net.export@off'] },
      ],
      ledgers: [
        {
          ...words('bank'),
          unit: 'kWh',
          adds: 'left',
          keeps: 'net.bank',
          close: { clause, on: ['03-31'], surplus: 'paid' },
          payment: { clause, label: 'Paid', rate: '2.15', inBill: 'same' },
        },
      ],
    },
  ],
};
const TARIFF = tariffOfDocument(DOCUMENT);

interface Half {
  readonly start: number;
  readonly import: number;
  readonly export: number;
}

/** Half hours of two months in a row, from a day on. */
function rowsOf(
  first: number,
  days: number,
  values: readonly (readonly [number, number])[],
): readonly Half[] {
  return Array.from({ length: days * 48 }, (_, at) => {
    const [taken, given] = values[at % values.length] ?? [0, 0];
    // What repeats would hide a mistaken hour: the day moves every value.
    const shift = (Math.trunc(at / 48) * 37) % 211;
    return { start: first * 1440 + at * 30, import: taken + shift, export: given };
  });
}

const kWh = (values: readonly number[]): Decimal =>
  values.reduce((sum, value) => sum.plus(new Decimal(value).div(1000)), new Decimal(0));
const cents = (value: Decimal): Decimal => value.toDecimalPlaces(2, Decimal.ROUND_HALF_UP);

/** A month by hand: texts for days and hours, decimals for units and money. */
function monthByHand(rows: readonly Half[], bank: Decimal, closes: boolean) {
  const at = ({ start }: Half): string => new Date(start * 60_000).toISOString();
  const isPeak = (row: Half): boolean => {
    const hour = at(row).slice(11, 16);
    const weekday = new Date(at(row).slice(0, 10)).getUTCDay();
    return weekday > 0 && weekday < 6 && hour >= '18:00' && hour < '22:00';
  };
  const total = (channel: 'import' | 'export', peak: boolean): Decimal =>
    kWh(rows.filter((row) => isPeak(row) === peak).map((row) => row[channel]));
  const hours = new Map<string, number>();
  for (const row of rows) {
    const hour = at(row).slice(0, 13);
    hours.set(hour, (hours.get(hour) ?? 0) + row.import - row.export);
  }
  const hourly = kWh([...hours.values()].filter((left) => left > 0));
  const less = (a: Decimal, b: Decimal): Decimal => Decimal.max(a.minus(b), 0);
  const peak = less(total('import', true), total('export', true));
  const offBefore = less(total('import', false), total('export', false));
  const off = less(offBefore, bank);
  const added = less(total('export', true), total('import', true)).plus(
    less(total('export', false), total('import', false)),
  );
  const closing = less(bank, offBefore).plus(added);
  const paid = closes ? closing : new Decimal(0);
  const exported = total('export', true).plus(total('export', false));
  const units = [peak, off, hourly, exported];
  const lines = units.map((value, place) => cents(value.times(CHARGES[place]?.[2] ?? '0')));
  if (paid.greaterThan(0)) lines.push(cents(paid.times('-2.15')));
  const payable = Decimal.sum(...lines).toDecimalPlaces(0, Decimal.ROUND_HALF_EVEN);
  const bankAfter = closing.minus(paid);
  return { lines, payable, bank: bankAfter };
}

const text = (value: Decimal): string => value.plus(0).toFixed().replace(/^-0$/, '0');

const engineMonth = ({ bill, ledgers }: UnitsMonth) => ({
  lines: bill.lines.map(({ figure }) => valueOf(figure)),
  payable: valueOf(bill.payable),
  bank: ledgers.map(({ closing }) => valueOf(closing)),
});

const watts = fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 3_000 }));

describe('bills from half hours', () => {
  it('are what adding them up by hand makes of them', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('2024-02-01', '2024-02-20', '2023-12-31', '2025-03-02'),
        fc.tuple(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 40 })),
        fc.array(fc.tuple(watts, watts), { minLength: 48, maxLength: 60 }),
        (start, [first, second], values) => {
          const day = dayOf(start);
          const rows = rowsOf(day, first + second, values);
          const columns = intervalRowsToColumns(rows, 30);
          const ends = [day, day + first, day + first + second] as (typeof day)[];
          const periods = [
            { from: ends[0] ?? day, to: ends[1] ?? day },
            { from: ends[1] ?? day, to: ends[2] ?? day },
          ];
          const { value, findings } = keepIntervals({
            account: {},
            tariff: TARIFF,
            columns,
            periods,
            withSavings: false,
          });
          expect(findings).toEqual([]);
          let bank = new Decimal(0);
          const byHand = periods.map(({ from, to }) => {
            const own = rows.filter((row) => row.start >= from * 1440 && row.start < to * 1440);
            const days = own.map((row) => new Date(row.start * 60_000).toISOString().slice(5, 10));
            const month = monthByHand(own, bank, days.includes('03-31'));
            ({ bank } = month);
            return { lines: month.lines.map(text), payable: text(month.payable), bank: [text(bank)] };
          });
          expect(value.map(engineMonth)).toEqual(byHand);
        },
      ),
      { numRuns: 15 },
    );
  });
});
