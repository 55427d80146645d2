import { describe, expect, it } from 'vitest';
import { DEMO_TARIFF, goodTariff } from '../../../tests/support/demo.ts';
import { tariffOf, valueOf } from '../../../tests/support/make.ts';
import { dayText } from './quantity/index.ts';
import { coveredMonths, tariffYear } from './tariff-year.ts';
import type { Charge, TariffDocument } from './tariff/index.ts';

const words = (id: string) => ({ id, label: id, clause: 'T 1' }) as const;
const ENERGY: Charge = { ...words('energy'), kind: 'per-unit', on: 'import', rate: '5.00' };

const version = (from: string, through?: string): TariffDocument['versions'][number] => ({
  name: from,
  from,
  clause: 'T 1',
  charges: [ENERGY],
  ...(through === undefined ? {} : { through }),
});
const covered = (parts: Partial<TariffDocument>) => {
  const { periods, openFrom, left } = coveredMonths(tariffOf([ENERGY], parts));
  const months = periods.map(({ from }) => dayText(from).slice(0, 7));
  return { months: [months[0], months.at(-1), months.length], openFrom: openFrom && dayText(openFrom), left };
};

describe('coveredMonths', () => {
  it('are those with any day in force', () => {
    expect(covered({ versions: [version('2024-03-14', '2024-06-02')] })).toEqual({
      months: ['2024-03', '2024-06', 4],
      openFrom: null,
      left: 0,
    });
  });

  it('go on for 24 months after the last dated change: of versions, settlement or prices', () => {
    const versions = [version('2023-01-01', '2024-03-13'), version('2024-03-14')];
    expect(covered({ versions })).toEqual({
      months: ['2023-01', '2026-02', 38],
      openFrom: '2024-03-14',
      left: 0,
    });
    const values = [
      { from: '2024-01-01', rate: '1' },
      { from: '2025-07-01', rate: '2' },
    ];
    const prices: TariffDocument['prices'] = {
      fuel: { is: 'series', clause: 'T 1', values, inForce: 'first-day' },
    };
    expect(covered({ versions, prices })).toMatchObject({
      months: ['2023-01', '2027-06', 54],
      openFrom: '2025-07-01',
    });
  });

  it('are not more than anybody reads', () => {
    expect(covered({ versions: [version('1900-01-01', '2000-12-31')] })).toEqual({
      months: ['1900-01', '1949-12', 600],
      openFrom: null,
      left: 612,
    });
  });
});

describe('tariffYear', () => {
  it('bills every month with all units from the grid', () => {
    const year = tariffYear(goodTariff(DEMO_TARIFF), { units: 300, quantities: { 'sanctioned-load': '3' } });
    expect(year.months.length).toBe(36);
    // 2023: 150.00 + 1,520.00 (140 + 450 + 930) + 75.00 + 91.20 − 75.00.
    expect(valueOf(year.months[0]?.month?.bill.sum as never)).toBe('1761.2');
    // 2024: 180.00 + 1,605.00 (150 + 480 + 975) + 120.00 + 96.30 − 75.00.
    expect(valueOf(year.months[12]?.month?.bill.sum as never)).toBe('1926.3');
    expect(valueOf(year.months[35]?.month?.bill.payable as never)).toBe('1926');
    expect([year.missing, year.findings]).toEqual([[], []]);
  });

  it('names what the tariff needs and nobody gave, each once', () => {
    const year = tariffYear(goodTariff(DEMO_TARIFF), { units: 300, quantities: {} });
    expect(year.missing).toEqual([{ name: 'sanctioned-load', label: 'Sanctioned load', unit: 'kW' }]);
    const demand: Charge = { ...words('demand'), kind: 'per-kilowatt', on: 'demand', rate: '10.00' };
    const measured = tariffOf([ENERGY, demand], { measures: { demand: { label: 'Demand', unit: 'kVA' } } });
    const asked = tariffYear(measured, { units: 300, quantities: {} });
    expect(asked.missing).toEqual([{ name: 'demand', label: 'Demand', unit: 'kVA' }]);
    const given = tariffYear(measured, { units: 300, quantities: { demand: '4' } });
    // 300 × 5.00 + 4 × 10.00.
    expect(valueOf(given.months[0]?.month?.bill.sum as never)).toBe('1540');
  });

  it('bills nothing where a quantity is given that the tariff does not know', () => {
    const { months, findings } = tariffYear(tariffOf([ENERGY]), { units: 300, quantities: { load: '3' } });
    expect(months).toEqual([]);
    expect(findings.map(({ code, path }) => [code, path])).toEqual([
      ['period/unknown-quantity', ['quantities', 'load']],
    ]);
  });

  it('goes on after months that cannot be billed, and says why', () => {
    const price: TariffDocument['prices'] = {
      fuel: {
        is: 'series',
        clause: 'T 1',
        values: [{ from: '2020-03-01', rate: '2.00' }],
        through: '2020-04-30',
        inForce: 'first-day',
      },
    };
    const fuel: Charge = { ...words('fuel'), kind: 'per-unit', on: 'import', rate: 'fuel' };
    const versions = [{ ...version('2020-01-01', '2020-05-31'), charges: [fuel] }];
    const { months } = tariffYear(tariffOf([fuel], { prices: price, versions }), {
      units: 10,
      quantities: {},
    });
    expect(months.map(({ month }) => (month === null ? null : valueOf(month.bill.sum)))).toEqual([
      null,
      null,
      '20',
      '20',
      null,
    ]);
    expect(months[4]?.findings.map(({ code, found }) => [code, found])).toEqual([
      ['bill/no-price', 'the price "fuel" is not in force on 2020-05-01'],
    ]);
  });

  it('bills a month of which some days have no charges not at all', () => {
    const versions = [version('2024-03-14', '2024-05-02')];
    const versionChange = {
      rule: 'split-by-days',
      clause: 'T 3',
      units: 'exact',
      factor: 'days-of-part',
    } as const;
    const { months } = tariffYear(tariffOf([ENERGY], { versions, versionChange }), {
      units: 10,
      quantities: {},
    });
    expect(months.map(({ month }) => month !== null)).toEqual([false, true, false]);
    expect(months[0]?.findings[0]?.found).toBe('no charges in force from 2024-03-01 through 2024-03-13');
  });

  it('tells the years whose holidays would count and are not listed', () => {
    const timeBlocks: TariffDocument['timeBlocks'] = {
      clause: 'T 1',
      blocks: [
        { id: 'day', label: 'Day' },
        { id: 'off', label: 'Off' },
      ],
      calendar: [
        { block: 'day', from: '00:00', to: '24:00', days: ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] },
        { block: 'off', from: '00:00', to: '24:00', days: ['holiday'] },
      ],
      holidays: { clause: 'T 1', days: ['2020-01-26', '2021-01-26'] },
    };
    const { yearsWithoutHolidays } = tariffYear(
      tariffOf([ENERGY], { timeBlocks, versions: [version('2020-01-01', '2022-03-31')] }),
      { units: 10, quantities: {} },
    );
    expect(yearsWithoutHolidays).toEqual([2022]);
  });
});
