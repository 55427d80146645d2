import { describe, expect, it } from 'vitest';
import { tariffOf, valueOf } from '../../../tests/support/make.ts';
import { keepPeriods, type UnitsInput } from './keep-periods.ts';
import type { UnitsPeriod } from './periods-document.ts';
import type { Charge, TariffDocument } from './tariff/index.ts';

const words = (id: string) => ({ id, label: id, clause: 'T 1' }) as const;
const on = (id: string, rate = '2'): Charge => ({
  ...words(id),
  kind: 'per-unit',
  on: id.replace('_', '@'),
  rate,
});
const LEDGERS: TariffDocument['settlements'] = [{ from: '2020-01-01', scheme: 'ledgers', clause: 'T 5' }];
const BLOCKS: NonNullable<TariffDocument['timeBlocks']> = {
  clause: 'T 9',
  blocks: ['peak', 'off'].map((id) => ({ id, label: id })),
  calendar: [
    { block: 'peak', from: '18:00', to: '22:00' },
    { block: 'off', from: '22:00', to: '18:00' },
  ],
};
const april = (quantities: Readonly<Record<string, string>>): UnitsPeriod => ({
  from: '2025-04-01',
  to: '2025-05-01',
  quantities,
});

function keep(
  charges: readonly Charge[],
  periods: readonly UnitsPeriod[],
  { account = {}, ...document }: Partial<TariffDocument> & Partial<Pick<UnitsInput, 'account'>> = {},
) {
  const tariff = tariffOf(charges, { settlements: LEDGERS, ...document });
  const { value, findings } = keepPeriods({ account, tariff, periods });
  return {
    bills: value.map(({ bill }) => bill.lines.map(({ figure }) => valueOf(figure))),
    codes: findings.map(({ code }) => code),
    months: value,
  };
}

describe('quantities of a period', () => {
  it('come by their names, or by registers that the account maps to them', () => {
    const account = { registers: { 'R 1.8': 'import', 'R 2.8': 'export' } };
    const kept = keep([on('import'), on('export')], [april({ 'R 1.8': '10', 'R 2.8': '3.5' })], { account });
    expect(kept).toMatchObject({ codes: [], bills: [['20', '7']] });
    const mixed = keep([on('import'), on('export')], [april({ 'R 1.8': '10', export: '3.5' })], { account });
    expect(mixed.bills).toEqual(kept.bills);
  });

  it('are of the account where they do not change, and of the period where it says so', () => {
    const load: Charge = { ...words('load'), kind: 'per-kilowatt', on: 'sanctioned-load', rate: '10' };
    const account = { quantities: { 'sanctioned-load': '4' } };
    const may = { ...april({ 'sanctioned-load': '5.5' }), from: '2025-05-01', to: '2025-06-01' };
    expect(keep([load], [april({}), may], { account }).bills).toEqual([['40'], ['55']]);
  });

  it('follow from each other: own use, total use, and sums of blocks', () => {
    const charges = [on('import'), on('self-consumption'), on('total-use')];
    const kept = keep(charges, [april({ import: '10', export: '3', generation: '8' })]);
    expect(kept.bills).toEqual([['20', '10', '30']]);
    const blocks = april({
      'import@peak': '4',
      'import@off': '6',
      'export@peak': '0',
      'export@off': '3',
      'generation@peak': '0',
      'generation@off': '8',
    });
    const own = keep(
      [...charges, on('self-consumption_off'.replace('_', '@')), on('total-use@off')].map((charge) => ({
        ...charge,
        id: charge.id.replace('@', '-'),
      })),
      [blocks],
      { timeBlocks: BLOCKS },
    );
    expect(own).toMatchObject({ codes: [], bills: [['20', '10', '30', '10', '22']] });
  });

  it('are not guessed: more given than made leaves own use unknown', () => {
    const kept = keep([on('self-consumption')], [april({ import: '10', export: '8.001', generation: '8' })]);
    expect(kept).toMatchObject({ codes: ['settlement/not-given'], bills: [] });
    const equal = keep([on('self-consumption')], [april({ import: '10', export: '8', generation: '8' })]);
    expect(equal.bills).toEqual([['0']]);
  });

  it('that are missing are an error where they are needed, and nothing where they are not', () => {
    expect(keep([on('import')], [april({ export: '3' })]).codes).toEqual(['settlement/not-given']);
    expect(keep([on('import')], [april({ import: '3' })])).toMatchObject({ codes: [], bills: [['6']] });
  });

  it('count as 0 where the document says so of a measure', () => {
    const measures = { extra: { label: 'Extra', unit: 'kWh', whenMissing: 'zero' } } as const;
    expect(keep([on('extra')], [april({})], { measures }).bills).toEqual([['0']]);
    expect(keep([on('extra')], [april({ extra: '0.5' })], { measures }).bills).toEqual([['1']]);
  });

  it('take nine digits and three decimals', () => {
    expect(keep([on('import', '1')], [april({ import: '999999999.999' })]).bills).toEqual([['1000000000']]);
    expect(keep([on('import')], [april({ import: '0' })]).bills).toEqual([['0']]);
  });
});

describe('periods', () => {
  const one = april({ import: '10' });

  it('go on where the one before ended, and stop at the first that does not', () => {
    const gap = { ...one, from: '2025-05-02', to: '2025-06-01' };
    const after = { ...one, from: '2025-06-01', to: '2025-07-01' };
    expect(keep([on('import')], [one, gap, after])).toMatchObject({ codes: ['period/gap'], bills: [['20']] });
  });

  it('say everything that is wrong with one of them at once', () => {
    const wrong = { ...one, from: '2025-02-30', quantities: { import: '-1', imports: '2' } };
    expect(keep([on('import')], [wrong]).codes).toEqual([
      'period/no-such-day',
      'period/not-a-quantity',
      'period/unknown-quantity',
    ]);
  });

  it('are not begun where the account is wrong', () => {
    const account = { since: '2025-02-29', opening: { bank: '1' }, quantities: { power: '3' } };
    expect(keep([on('import')], [one], { account })).toMatchObject({
      codes: ['period/no-such-day', 'period/unknown-quantity', 'period/unknown-ledger'],
      bills: [],
    });
  });
});

describe('a power that changes inside a period', () => {
  const load: Charge = {
    ...words('load'),
    kind: 'per-kilowatt',
    on: 'sanctioned-load',
    rate: '30',
    scaledBy: 'days',
  };
  const changing = (from: string, to = '5'): UnitsPeriod => ({
    ...april({ 'sanctioned-load': '4', import: '30' }),
    changes: [{ from, quantities: { 'sanctioned-load': to } }],
  });
  const dayRules = { days: { clause: 'T 4', rule: 'days-over', divisor: '30' } } as const;
  const split = {
    dayRules,
    versionChange: { rule: 'split-by-days', clause: 'T 3', units: 'exact', factor: 'days-of-part' },
  } as const;

  it('is charged by its days, and units are shared by them', () => {
    // Ten days of 4 kW and twenty of 5 kW; a third and two thirds of 30 units.
    const kept = keep([load, on('import')], [changing('2025-04-11')], split);
    expect(kept).toMatchObject({ codes: [], bills: [['40', '20', '100', '40']] });
  });

  it('on the second day or the last splits off one day', () => {
    expect(keep([load], [changing('2025-04-02')], split).bills).toEqual([['4', '145']]);
    expect(keep([load], [changing('2025-04-30')], split).bills).toEqual([['116', '5']]);
  });

  it('changes as often as it does', () => {
    const twice = changing('2025-04-11');
    const changes = [
      ...(twice.changes ?? []),
      { from: '2025-04-21', quantities: { 'sanctioned-load': '7' } },
    ];
    expect(keep([load], [{ ...twice, changes }], split).bills).toEqual([['40', '50', '70']]);
  });

  it('is what it was on the day whose account bills the whole period', () => {
    const first = { dayRules, versionChange: { rule: 'in-force-on-first-day', clause: 'T 3' } } as const;
    const last = { dayRules, versionChange: { rule: 'in-force-on-last-day', clause: 'T 3' } } as const;
    expect(keep([load], [changing('2025-04-30')], first).bills).toEqual([['120']]);
    expect(keep([load], [changing('2025-04-30')], last).bills).toEqual([['150']]);
  });

  it('does not reach into the next period, which says its own', () => {
    const may = { ...april({ 'sanctioned-load': '6', import: '0' }), from: '2025-05-01', to: '2025-05-31' };
    expect(keep([load], [changing('2025-04-11'), may], split).bills).toEqual([['40', '100'], ['180']]);
  });
});
