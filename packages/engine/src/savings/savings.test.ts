import { describe, expect, it } from 'vitest';
import { accountOf, demoTariff } from '../../../../tests/support/demo.ts';
import { energyOf, figureOf, tariffOf, valueOf } from '../../../../tests/support/make.ts';
import { unitNetting } from '../../../../tests/support/passbook.ts';
import { unexplained } from '../../../../tests/support/recompute.ts';
import { prepareTariff } from '../bill/index.ts';
import type { EnergyPeriod } from '../energy/index.ts';
import { settlePeriod, type PassbookEntry } from '../settlement/index.ts';
import { billMonth, type MonthBills } from './savings.ts';

/** The bills of a month of a house of 4 kW with 5 kWp. */
function month(energy: EnergyPeriod, { opening = '0', tariff = demoTariff() } = {}) {
  const rule = unitNetting(tariff.settlements[0]?.item);
  const path = ['readings', 1];
  const options = { rule, opening: figureOf('opening', opening), unitsRule: tariff.document.units, path };
  const entry = settlePeriod(energy, options).value as PassbookEntry;
  const input = { account: accountOf(), entry, payments: [], path };
  const { value, findings } = billMonth(prepareTariff(tariff), input);
  expect(findings).toEqual([]);
  return value as MonthBills;
}

function savingsOf({ savings }: MonthBills) {
  if (savings === null) return null;
  const { saving, fromSelfConsumption, fromExport, withoutExport } = savings;
  return [saving, fromSelfConsumption, fromExport, withoutExport.payable].map(valueOf);
}

const BASE = energyOf({ import: '412', export: '278', generation: '580' });

describe('what solar saved', () => {
  it('is the bill for all of the use less the bill, in whole rupees as they are paid', () => {
    const bills = month(BASE, { opening: '35' });
    expect(valueOf(bills.bill.payable)).toBe('613');
    // 714 units: 240 + 4917.00 + 285.60 + 295.02 − 75 = 5662.62
    expect(bills.withoutSolar === null ? null : valueOf(bills.withoutSolar.payable)).toBe('5663');
    // Own use: 5663 − 2981, the bill of 412 units; export: 2981 − 613.
    expect(savingsOf(bills)).toEqual(['5050', '2682', '2368', '2981']);
  });

  it('is split without remainder, and every figure follows from its inputs', () => {
    const { savings, bill, withoutSolar } = month(BASE, { opening: '35' });
    if (savings === null || withoutSolar === null) throw new Error('no savings');
    const { saving, fromSelfConsumption, fromExport } = savings;
    expect([saving, fromSelfConsumption, fromExport].flatMap(unexplained)).toEqual([]);
    expect(saving.inputs).toEqual([withoutSolar.payable, bill.payable]);
  });

  it('is nothing from own use where all was given to the grid', () => {
    expect(savingsOf(month(energyOf({ import: '412', export: '412', generation: '412' })))).toEqual([
      '2741', // 2981 − 240
      '0',
      '2741',
      '2981',
    ]);
  });

  it('is nothing from export where nothing was given to the grid', () => {
    // 714 units without solar, 412 with it
    expect(savingsOf(month(energyOf({ import: '412', export: '0', generation: '302' })))).toEqual([
      '2682',
      '2682',
      '0',
      '2981',
    ]);
  });

  it('can be below 0, where the plant itself is charged for', () => {
    const tariff = tariffOf([
      {
        id: 'grid',
        label: 'Grid charge',
        clause: 'T 1',
        kind: 'per-kilowatt',
        on: 'plant-capacity',
        rate: '50',
      },
      { id: 'energy', label: 'Energy charge', clause: 'T 2', kind: 'per-unit', on: 'billed', rate: '2' },
    ]);
    // With solar 250 + 20, without it 0 + 40.
    const bills = month(energyOf({ import: '10', export: '0', generation: '10' }), { tariff });
    expect(savingsOf(bills)).toEqual(['-230', '-230', '0', '270']);
  });

  it('charges generation and own use to the plant only', () => {
    const charge = { label: 'Duty', clause: 'T 1', kind: 'per-unit', rate: '1' } as const;
    const on = ['generation', 'self-consumption', 'export', 'import', 'total-use', 'billed'] as const;
    const tariff = tariffOf(on.map((quantity) => ({ ...charge, id: quantity, on: quantity })));
    const bills = month(BASE, { tariff });
    const amounts = (bill: MonthBills['withoutSolar']) => bill?.lines.map(({ figure }) => valueOf(figure));
    expect(amounts(bills.bill)).toEqual(['580', '302', '278', '412', '714', '134']);
    expect(amounts(bills.withoutSolar)).toEqual(['0', '0', '0', '714', '714', '714']);
    expect(amounts(bills.savings?.withoutExport ?? null)).toEqual(['580', '302', '0', '412', '714', '412']);
  });

  it('is not known where the use is not', () => {
    const bills = month(energyOf({ import: '412', export: '278' }));
    expect([bills.withoutSolar, bills.savings]).toEqual([null, null]);
    expect(valueOf(bills.bill.payable)).toBe('805');
  });
});
