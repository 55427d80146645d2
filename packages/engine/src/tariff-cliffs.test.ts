import { describe, expect, it } from 'vitest';
import { DEMO_TARIFF, goodTariff } from '../../../tests/support/demo.ts';
import { tariffOf, valueOf } from '../../../tests/support/make.ts';
import { dayText } from './quantity/index.ts';
import { tariffCliffs } from './tariff-cliffs.ts';
import { tariffYear } from './tariff-year.ts';
import type { Charge, Tariff, TariffDocument } from './tariff/index.ts';

const words = (id: string) => ({ id, label: id, clause: 'T 1' }) as const;
const JANUARY = { name: 'V1', from: '2025-01-01', through: '2025-01-31', clause: 'T 4' };
const energy = (rate: string): Charge => ({ ...words('energy'), kind: 'per-unit', on: 'import', rate });
const whole = (limit: string, low: string, high: string): Charge => ({
  ...words('energy'),
  kind: 'slabs',
  on: 'import',
  method: 'whole',
  slabs: [{ upTo: limit, rate: low }, { rate: high }],
});

/** A tariff of January 2025 alone. */
const january = (charges: readonly Charge[], parts: Partial<TariffDocument> = {}): Tariff =>
  tariffOf(charges, { versions: [{ ...JANUARY, charges: [...charges] }], ...parts });

function cliffsOf(tariff: Tariff, times = 3, quantities: Readonly<Record<string, string>> = {}) {
  const { months } = tariffYear(tariff, { units: 300, quantities });
  return tariffCliffs(tariff, { quantities }, { months, times: { numerator: times, denominator: 1 } });
}

const told = (tariff: Tariff, times?: number) =>
  cliffsOf(tariff, times).cliffs.map(({ units, before, after, cost, rate, multiple }) => ({
    units,
    bills: [valueOf(before), valueOf(after)],
    cost: valueOf(cost),
    rate: valueOf(rate),
    multiple,
  }));

describe('tariffCliffs', () => {
  it('finds the unit that moves all the others to a higher rate', () => {
    // 100 × 2.00 = 200.00; 101 × 3.00 = 303.00: 103.00 for a unit of 3.00.
    expect(told(january([whole('100', '2.00', '3.00')]))).toEqual([
      { units: 100, bills: ['200', '303'], cost: '103', rate: '3', multiple: '34.3' },
    ]);
  });

  it('finds none where only the units above a limit cost more, in the demo tariff neither', () => {
    const slabs = [{ upTo: '100', rate: '2.00' }, { rate: '9.00' }];
    const telescopic: Charge = {
      ...words('energy'),
      kind: 'slabs',
      on: 'import',
      method: 'telescopic',
      slabs,
    };
    expect(told(january([telescopic]))).toEqual([]);
    const { cliffs, months } = cliffsOf(goodTariff(DEMO_TARIFF), 3, { 'sanctioned-load': '3' });
    expect(cliffs).toEqual([]);
    expect(months.map(({ version }) => version.name)).toEqual(['TO-2023', 'TO-2024']);
  });

  it('goes by how many times it is told', () => {
    // 10 × 1.00 = 10.00; 11 × 1.20 = 13.20: 3.20 for a unit of 1.20 is 2.67 times.
    const tariff = january([whole('10', '1.00', '1.20')]);
    expect(told(tariff, 3)).toEqual([]);
    expect(told(tariff, 2)).toMatchObject([{ units: 10, cost: '3.2', rate: '1.2', multiple: '2.7' }]);
  });

  it('finds limits where the days of the month put them', () => {
    const dayRules = { month: { rule: 'days-over', clause: 'T 1', divisor: '30' } } as const;
    const steps = [{ upTo: '100', amount: '50.00' }, { amount: '400.00' }];
    const fixed: Charge = { ...words('fixed'), kind: 'fixed', chosenBy: 'import', steps, scaledBy: 'month' };
    // 31 days: the limit is 103.33; 51.67 + 206.00 = 257.67 and 413.33 + 208.00 = 621.33.
    expect(told(january([fixed, energy('2.00')], { dayRules }))).toEqual([
      { units: 103, bills: ['257.67', '621.33'], cost: '363.66', rate: '2', multiple: '181.8' },
    ]);
  });

  it('finds limits beyond the scan, scaled and rounded as the day rule says', () => {
    const limits = { step: '100', mode: 'up' } as const;
    const dayRules = { month: { rule: 'days-over', clause: 'T 1', divisor: '30', limits } } as const;
    const scaled: Charge = {
      ...(whole('5000', '2.00', '3.00') as Charge & { kind: 'slabs' }),
      scaledBy: 'month',
    };
    // 5,000 × 31 ÷ 30 = 5,166.67, up to 5,200: 10,400.00 and 5,201 × 3.00 = 15,603.00.
    expect(told(january([scaled], { dayRules }))).toMatchObject([
      { units: 5200, bills: ['10400', '15603'], cost: '5203', multiple: '1734.3' },
    ]);
  });

  it('takes no step for a cliff that the rounding of lines can make', () => {
    const rounding = { clause: 'T 2', line: { step: '1', mode: 'half-up' }, total: 'none' } as const;
    expect(told(january([energy('0.05')], { rounding }))).toEqual([]);
  });

  it('says so where the units behind it cost nothing', () => {
    const steps = [{ upTo: '50', amount: '10.00' }, { amount: '90.00' }];
    const fixed: Charge = { ...words('fixed'), kind: 'fixed', chosenBy: 'import', steps };
    expect(told(january([fixed]))).toEqual([
      { units: 50, bills: ['10', '90'], cost: '80', rate: '0', multiple: null },
    ]);
  });

  it('finds a choice of the settlement', () => {
    const billed = { ...words('charged'), is: 'choice', by: 'import' } as const;
    const steps = [{ upTo: '300', take: '0' }, { take: 'import' }];
    const settlements: TariffDocument['settlements'] = [
      { from: '2020-01-01', scheme: 'ledgers', clause: 'T 5', quantities: [{ ...billed, steps }] },
    ];
    const charge: Charge = { ...words('energy'), kind: 'per-unit', on: 'charged', rate: '2.00' };
    // Nothing up to 300, then 301 × 2.00.
    expect(told(january([charge], { settlements }))).toEqual([
      { units: 300, bills: ['0', '602'], cost: '602', rate: '2', multiple: '301.0' },
    ]);
  });
});

const HALVES: TariffDocument['timeBlocks'] = {
  clause: 'T 1',
  blocks: [
    { id: 'day', label: 'Day' },
    { id: 'night', label: 'Night' },
  ],
  calendar: [
    { block: 'day', from: '06:00', to: '18:00' },
    { block: 'night', from: '18:00', to: '06:00' },
  ],
};

describe('tariffCliffs with time blocks', () => {
  const at = (block: string, rate: string): Charge => ({
    ...words(block),
    kind: 'per-unit',
    on: `import@${block}`,
    rate,
  });

  it('takes no unit for a cliff because it falls into the dearer block', () => {
    expect(told(january([at('day', '20.00'), at('night', '1.00')], { timeBlocks: HALVES }))).toEqual([]);
  });

  it('finds the limit of one block at the units of the month that reach it', () => {
    const steps = [{ upTo: '4000', amount: '10.00' }, { amount: '900.00' }];
    const fixed: Charge = { ...words('fixed'), kind: 'fixed', chosenBy: 'import@day', steps };
    // Half of the units fall into the day: 8,000 are 4,000 there.
    expect(told(january([fixed, at('night', '2.00')], { timeBlocks: HALVES }))).toEqual([
      { units: 8000, bills: ['8010', '8901'], cost: '891', rate: '1', multiple: '891.0' },
    ]);
  });
});

it('looks at one month of each version and season', () => {
  const seasons = { summer: { from: '04-01', through: '06-30' } };
  const versions = [
    { name: 'old', from: '2024-01-01', through: '2024-12-31', clause: 'T 4', charges: [energy('2.00')] },
    { name: 'new', from: '2025-01-01', through: '2025-03-31', clause: 'T 4', charges: [energy('3.00')] },
  ];
  const { months } = cliffsOf(tariffOf([energy('2.00')], { seasons, versions }));
  expect(months.map(({ period, version }) => `${version.name} ${dayText(period.from)}`)).toEqual([
    'old 2024-01-01',
    'old 2024-04-01',
    'new 2025-01-01',
  ]);
});
