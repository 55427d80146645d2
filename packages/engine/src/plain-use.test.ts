import { describe, expect, it } from 'vitest';
import { periodOf, tariffOf } from '../../../tests/support/make.ts';
import { prepareTariff } from './bill/index.ts';
import { plainHousehold } from './plain-use.ts';
import type { Charge, TariffDocument } from './tariff/index.ts';

const ENERGY: Charge = {
  id: 'energy',
  label: 'Energy',
  clause: 'T 1',
  kind: 'per-unit',
  on: 'import',
  rate: '5.00',
};
const FEBRUARY = periodOf('2025-02-01', '2025-03-01');

/** Peak from 6 to 12 on weekdays, the rest low. */
const BLOCKS: TariffDocument['timeBlocks'] = {
  clause: 'T 1',
  blocks: [
    { id: 'peak', label: 'Peak' },
    { id: 'low', label: 'Low' },
  ],
  calendar: [
    { block: 'peak', from: '06:00', to: '12:00', days: ['mon', 'tue', 'wed', 'thu', 'fri'] },
    { block: 'low', from: '12:00', to: '06:00', days: ['mon', 'tue', 'wed', 'thu', 'fri'] },
    { block: 'low', from: '00:00', to: '24:00', days: ['sat', 'sun'] },
  ],
};

const household = (parts: Partial<TariffDocument>, own: Readonly<Record<string, string>> = {}) =>
  plainHousehold(prepareTariff(tariffOf([ENERGY], parts)), own);

describe('plainHousehold', () => {
  it('takes everything from the grid, makes nothing and gives nothing', () => {
    const { account, periodOf: of } = household({}, { 'sanctioned-load': '3' });
    expect(account.quantities).toEqual({ 'plant-capacity': '0', 'sanctioned-load': '3' });
    expect(of(FEBRUARY, 300)).toEqual({
      from: '2025-02-01',
      to: '2025-03-01',
      quantities: { import: '300', export: '0', generation: '0' },
    });
  });

  it('spreads units over the hours of time blocks, in whole units by largest remainder', () => {
    const { periodOf: of, blockMinutes } = household({ timeBlocks: BLOCKS });
    // 20 weekdays of 6 hours are 120 of 672 hours.
    expect(blockMinutes(FEBRUARY)).toEqual([7200, 33120]);
    // 300 × 120 ÷ 672 = 53.57…, 300 × 552 ÷ 672 = 246.43…
    expect(of(FEBRUARY, 300).quantities).toMatchObject({
      'import@peak': '54',
      'import@low': '246',
      'export@peak': '0',
      'generation@low': '0',
    });
    expect(of(FEBRUARY, 300, 'thousandths').quantities).toMatchObject({
      'import@peak': '53.571',
      'import@low': '246.429',
    });
  });

  it('knows what a netting inside the period leaves of its units', () => {
    const window = { of: 'import', less: 'export', within: 'hour' } as const;
    const back = { of: 'export', less: 'import', within: 'hour' } as const;
    const measures = {
      'net-import': { label: 'Left of import', unit: 'kWh', window },
      'net-export': { label: 'Left of export', unit: 'kWh', window: back },
      demand: { label: 'Demand', unit: 'kW' },
    } as const;
    const { periodOf: of } = household({ measures });
    expect(of(FEBRUARY, 300).quantities).toMatchObject({ 'net-import': '300', 'net-export': '0' });
    expect(of(FEBRUARY, 300).quantities).not.toHaveProperty('demand');
    // What is typed counts.
    const typed = household({ measures }, { 'net-import': '280' });
    expect(typed.periodOf(FEBRUARY, 300).quantities).not.toHaveProperty('net-import');
  });
});
