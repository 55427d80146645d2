import { CARBON_FACTORS, combinedMargin, type CarbonFactor } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { workedQuote } from '../support/demo-quote.ts';

/** The factors of a kind and edition, each with its variant. */
const listed = (kind: CarbonFactor['kind'], version: string): readonly (readonly [string, string])[] =>
  CARBON_FACTORS.filter((one) => one.kind === kind && one.version.startsWith(version)).map(
    ({ variant, factor }) => [variant, factor],
  );

/**
 * CO2 Baseline Database for the Indian Power Sector, Central Electricity Authority: version 20, 2024, as the trade
 * press quotes it, and version 21, 2025, as a table of five years quotes it (rows 163 and 164). t CO2 for a MWh is
 * kg for a kWh.
 */
describe('the factors of a grid', () => {
  it('are told apart by edition, year and variant', () => {
    expect(listed('average', 'version 20: fiscal year 2023-24')).toEqual([
      ['weighted average with renewables', '0.727'],
    ]);
    expect(listed('average', 'version 21: fiscal year 2023-24')).toEqual([
      ['weighted average without imports', '0.7290'],
    ]);
    expect(listed('average', 'version 21: fiscal year 2024-25')).toEqual([
      ['weighted average without imports', '0.7117'],
      ['weighted average with imports', '0.7097'],
    ]);
  });
});

/**
 * Operating and build margins of the same database, quoted with it, 2025 (row 165); the weights are from memory:
 * 75 and 25 percent for wind and solar, 50 and 50 for others. Published to three and four decimals.
 */
describe('a combined margin', () => {
  const margin = (kind: CarbonFactor['kind'], year: string): string => {
    const [one] = listed(kind, `version 21: fiscal year ${year}`);
    if (one === undefined) throw new Error(`no ${kind} of ${year}`);
    return one[1];
  };
  const combined = (year: string, operatingPercent: string): string =>
    combinedMargin({
      operating: margin('operating-margin', year),
      build: margin('build-margin', year),
      operatingPercent,
    });

  it.each([
    // (0.9643 × 75 + 0.5522 × 25) ÷ 100; (0.9643 + 0.5522) ÷ 2; (0.9646 + 0.5119) ÷ 2
    ['2023-24', '75', '0.861275', '0.861'],
    ['2023-24', '50', '0.75825', '0.758'],
    ['2024-25', '50', '0.73825', '0.7383'],
  ])('of %s with %s percent is %s, published as %s', (year, percent, exact, published) => {
    expect(combined(year, percent)).toBe(exact);
    // Half a step of the last published decimal, in whole millionths.
    const millionths = (text: string) => Number.parseInt(text.replace('0.', '').padEnd(6, '0'), 10);
    const half = published.length === 5 ? 500 : 50;
    expect(Math.abs(millionths(exact) - millionths(published))).toBeLessThanOrEqual(half);
  });
});

/**
 * Climate Change 2014: Mitigation of Climate Change, Annex III, Table A.III.2, Intergovernmental Panel on Climate
 * Change, 2014, as it is quoted elsewhere: medians of 41, 48, 820, 490 and 11 g CO2e for a kWh (row 166).
 */
it('lists the life-cycle medians of five ways to make electricity', () => {
  const panel = CARBON_FACTORS.filter(({ version }) => version.includes('Table A.III.2'));
  expect(panel.map(({ of, factor }) => [of, factor])).toEqual([
    ['solar modules on roofs', '0.041'],
    ['solar modules in fields', '0.048'],
    ['coal', '0.820'],
    ['gas, combined cycle', '0.490'],
    ['wind on land', '0.011'],
  ]);
});

/**
 * Life Cycle Greenhouse Gas Emissions of Crystalline Silicon Photovoltaic Electricity Generation, Hsu et al., National
 * Renewable Energy Laboratory, 2012: medians of 57 and 45 g, half of all from 44 to 73 and from 39 to 49 (row 167).
 */
it('lists the life cycle of modules before and after studies were harmonised', () => {
  expect(listed('life-cycle', '1,700 kWh/m² a year')).toEqual([
    ['median as published; half of all from 0.044 to 0.073', '0.057'],
    ['median, harmonised; half of all from 0.039 to 0.049', '0.045'],
  ]);
});

/** Row 168, no publication: 1,400 kWh with the factors above, worked out by hand. */
describe('what 1,400 units save', () => {
  const generation = { year: '1400', source: 'invented' };
  /** Grams of the first year, whole. */
  const grams = (factor: string): number => {
    const carbon = { factor, version: 'of the test', variant: 'of the test' };
    const text = workedQuote({ generation, carbon }).carbon?.year ?? '';
    const [whole = '', decimals = ''] = text.split('.');
    expect(decimals.slice(3)).toMatch(/^0*$/);
    return Number.parseInt(whole + decimals.slice(0, 3), 10);
  };

  it.each([
    // 1,400 × 0.727 = 1,017.8 kg; × 0.7117 = 996.38; × 0.041 = 57.4
    ['0.727', 1_017_800],
    ['0.7117', 996_380],
    ['0.041', 57_400],
  ])('at %s kg for a kWh', (factor, expected) => {
    expect(grams(factor)).toBe(expected);
  });

  it('less what modules take in their life, each factor told for itself', () => {
    expect(grams('0.727') - grams('0.041')).toBe(960_400);
  });
});
