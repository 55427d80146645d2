import { describe, expect, it } from 'vitest';
import { accountOf, accountText, type AccountParts } from '../../../../tests/support/demo.ts';
import { valueOf } from '../../../../tests/support/make.ts';
import type { Figure } from '../quantity/index.ts';
import { readAccount, readReadings, type ReadingPair, type ReadingRow } from '../readings/index.ts';
import type { UnitsRule } from './count-units.ts';
import { energyRatios, measureEnergy } from './measure-energy.ts';

const WHOLE_UNITS: UnitsRule = { clause: 'T 1', decimals: '0', rounding: 'down', roundedAt: 'reading' };

/** The energy of thirty days from readings of 0 on every register. */
function measure(units: Omit<ReadingRow, 'date'>, parts: AccountParts = {}) {
  const account = accountOf(parts);
  const generation = account.registers.generation === null ? {} : { generation: '0' };
  const rows = [
    { date: '2025-04-01', import: '0', export: '0', ...generation },
    { date: '2025-05-01', ...units },
  ];
  const [pair] = readReadings(rows, account).value;
  const { value, findings } = measureEnergy(pair as ReadingPair, account, WHOLE_UNITS);
  return { energy: value, codes: findings.map((finding) => finding.code), findings, account };
}

const textOf = (figure: Figure | null): string | null => (figure === null ? null : valueOf(figure));

describe('the balance of a period', () => {
  it('takes own use as generation less export, and use as import plus own use', () => {
    const { energy, codes } = measure({ import: '412', export: '278', generation: '580' });
    expect(codes).toEqual([]);
    expect([energy.selfConsumption, energy.totalUse].map(textOf)).toEqual(['302', '714']);
    expect([energy.days, energy.isEstimated]).toEqual([30, false]);
  });

  it('is not known without a generation meter', () => {
    const { energy, codes } = measure({ import: '412', export: '278' }, { generationMeter: false });
    expect(codes).toEqual(['energy/self-consumption-unknown']);
    expect([energy.generation, energy.selfConsumption, energy.totalUse]).toEqual([null, null, null]);
    expect([energy.import, energy.export].map(textOf)).toEqual(['412', '278']);
  });

  it('has no own use where everything was given', () => {
    const { energy, codes } = measure({ import: '412', export: '580', generation: '580' });
    expect(codes).toEqual([]);
    expect([energy.selfConsumption, energy.totalUse].map(textOf)).toEqual(['0', '412']);
  });

  it.each([
    ['one unit more', '581', 'energy/export-about-generation'],
    ['exactly 3 % more', '597.4', 'energy/export-about-generation'], // 580 × 1.03 = 597.4, counted 597
    ['one unit past 3 %', '598', 'energy/export-above-generation'],
  ])('is not known where more was given than made: %s', (_, given, code) => {
    const { energy, codes } = measure({ import: '412', export: given, generation: '580' });
    expect(codes).toEqual([code]);
    expect([energy.selfConsumption, energy.totalUse]).toEqual([null, null]);
  });

  it('asks about a low yield: below 0.3 units per kWp and day', () => {
    // 5 kWp and 30 days: 45 units are exactly 0.3.
    expect(measure({ import: '412', export: '10', generation: '45' }).codes).toEqual([]);
    expect(measure({ import: '412', export: '10', generation: '44' }).codes).toEqual(['energy/yield-low']);
    expect(measure({ import: '412', export: '0', generation: '0' }).codes).toEqual(['energy/yield-low']);
  });

  it('keeps what was answered as a note', () => {
    const confirmed = ['energy/export-above-generation:export', 'energy/yield-low:generation'];
    const { findings } = measure({ import: '412', export: '60', generation: '44', confirmed });
    expect(findings.map(({ code, severity }) => [code, severity])).toEqual([
      ['energy/export-above-generation', 'note'],
      ['energy/yield-low', 'note'],
    ]);
  });

  it('says that it is estimated where a reading is', () => {
    expect(
      measure({ import: '412', export: '278', generation: '580', status: 'estimated' }).energy.isEstimated,
    ).toBe(true);
  });
});

describe('the ratios of a period', () => {
  it('are own use by generation and own use by use: 30 % and 44.44 %', () => {
    const { energy, account } = measure({ import: '150', export: '280', generation: '400' });
    expect([energy.selfConsumption, energy.totalUse].map(textOf)).toEqual(['120', '270']);
    const ratios = energyRatios(energy, account);
    expect(ratios.selfConsumptionShare).toMatchObject({
      numerator: 120_000,
      denominator: 400_000,
      unit: 'ratio',
    });
    expect(textOf(ratios.selfConsumptionShare)).toBe('0.3');
    expect(textOf(ratios.selfSufficiency)).toBe('4/9');
    // 400 units ÷ 5 kWp ÷ 30 days
    expect(textOf(ratios.specificYield)).toBe('8/3');
  });

  it('have a yield of 3.6 units per kWp and day for 371 units of 3.3 kWp in 31 days', () => {
    const { energy, account } = measure(
      { import: '0', export: '0', generation: '371' },
      { plantCapacity: '3.3' },
    );
    const may = energyRatios({ ...energy, days: 31 }, account).specificYield;
    // 371 ÷ (3.3 × 31) = 3710/1023
    expect(textOf(may)).toBe('3710/1023');
    expect(may?.unit).toBe('kWh/kWp/day');
  });

  it('are not known where the balance is not', () => {
    const { energy, account } = measure({ import: '412', export: '278' }, { generationMeter: false });
    expect(energyRatios(energy, account)).toEqual({
      selfConsumptionShare: null,
      selfSufficiency: null,
      specificYield: null,
    });
    const above = measure({ import: '412', export: '598', generation: '580' });
    expect(energyRatios(above.energy, above.account)).toMatchObject({
      selfConsumptionShare: null,
      selfSufficiency: null,
    });
  });

  it('are not divided by nothing', () => {
    const { energy, account } = measure({ import: '0', export: '0', generation: '0' });
    const ratios = energyRatios(energy, account);
    expect([ratios.selfConsumptionShare, ratios.selfSufficiency]).toEqual([null, null]);
    expect(textOf(ratios.specificYield)).toBe('0');
  });
});

describe('the balance of two meters, by their classes', () => {
  const given = (exported: string, classes: readonly [string, string] | null) => {
    const document = JSON.parse(accountText()) as { meters: Record<'grid' | 'generation', object> };
    const [grid, generation] = classes ?? [];
    const meters = {
      grid: { ...document.meters.grid, ...(grid === undefined ? {} : { accuracyClass: grid }) },
      generation: {
        ...document.meters.generation,
        ...(generation === undefined ? {} : { accuracyClass: generation }),
      },
    };
    const { value } = readAccount(JSON.stringify({ ...document, meters }));
    if (value === null) throw new Error('no account');
    const readings = [
      { date: '2025-04-01', import: '0', export: '0', generation: '0' },
      { date: '2025-05-01', import: '412', export: exported, generation: '1000' },
    ];
    const [pair] = readReadings(readings, value).value;
    return measureEnergy(pair as ReadingPair, value, WHOLE_UNITS).findings.map(({ code }) => code);
  };

  // 1000 units made. Classes 1 and 1: 1.5 % each at a low current; 0.2S and 0.5S: 0.4 and 1.0 %.
  it.each([
    ['1010', null, 'energy/export-about-generation'],
    ['1030', null, 'energy/export-about-generation'],
    ['1031', null, 'energy/export-above-generation'],
    ['1050', null, 'energy/export-above-generation'],
    ['1050', ['2', '2'], 'energy/export-about-generation'],
    ['1051', ['2', '2'], 'energy/export-above-generation'],
    ['1014', ['0.2S', '0.5S'], 'energy/export-about-generation'],
    ['1015', ['0.2S', '0.5S'], 'energy/export-above-generation'],
  ] as const)('%s given of 1000 made, classes %j: %s', (exported, classes, code) => {
    expect(given(exported, classes)).toEqual([code]);
  });
});
