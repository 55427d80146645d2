import {
  calendarDay,
  checkPlant,
  cheapestCleaningDays,
  exactText,
  meanDirtLoss,
  meterBand,
  meterBandText,
  parseDay,
  plantMonths,
  quotientText,
  type DayNumber,
  type Figure,
  type Plant,
  type PlantDocument,
  type PlantMonth,
} from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { unexplained } from '../support/recompute.ts';

const day = (text: string): DayNumber => {
  const found = parseDay(text);
  if (found === null) throw new Error(`${text} is no day`);
  return found;
};

const plantOf = (kWp: string, more: Partial<PlantDocument> = {}): Plant => {
  const { value, findings } = checkPlant({ format: 'unitbook-plant-1', capacity: [{ kWp }], ...more });
  if (value === null) throw new Error(findings.map(({ found }) => found).join('; '));
  return value;
};

interface Made {
  readonly from: string;
  readonly to: string;
  readonly wattHours: number;
  /** Whole Wh per m² of the whole period. */
  readonly irradiation?: number;
}

/** What is said of one period; every figure in it follows from what it shows. */
function monthOf(plant: Plant, { from, to, ...made }: Made): PlantMonth {
  const [month] = plantMonths([{ period: { from: day(from), to: day(to) }, ...made }], plant).value;
  if (month === undefined) throw new Error('no month');
  const figures = Object.values(month).filter(
    (value): value is Figure => typeof value === 'object' && value !== null && 'operation' in value,
  );
  expect(figures.length).toBeGreaterThan(2);
  expect(figures.flatMap(unexplained)).toEqual([]);
  return month;
}

/** A figure as a paper prints it: rounded half-up to its decimals. */
const printed = (figure: Figure | null, places: number, times = 1): string =>
  figure === null
    ? 'none'
    : quotientText(BigInt(figure.numerator) * BigInt(times), figure.denominator, places);

/**
 * KCAEFT 100 kW multi-season table (IEC 61724-1 metrics), masujournal.org, data to November 2025:
 * https://masujournal.org/view_journal.php?id=720. Reference yields 4.20, 5.05 and 5.35 hours a day.
 */
describe('a plant of 100 kWp in three seasons', () => {
  const plant = plantOf('100');
  const august = { from: '2025-08-01', to: '2025-09-01', wattHours: 10_478_000, irradiation: 130_200 };
  const october = { from: '2025-10-01', to: '2025-11-01', wattHours: 12_096_000, irradiation: 156_550 };
  const november = { from: '2025-11-01', to: '2025-12-01', wattHours: 12_061_000, irradiation: 160_500 };

  it.each([
    ['August', august, '3.38', '0.805', '14.08'],
    ['November', november, '4.02', '0.751', '16.75'],
  ])('%s: yield, performance ratio, utilisation as printed', (_, made, daily, ratio, use) => {
    const month = monthOf(plant, made);
    expect(printed(month.specificYield, 2)).toBe(daily);
    expect(printed(month.performanceRatio, 3)).toBe(ratio);
    expect(printed(month.capacityUtilisation, 2, 100)).toBe(use);
  });

  it('October: as printed, but for the ratio, which the table takes from its rounded yield', () => {
    const month = monthOf(plant, october);
    expect(printed(month.specificYield, 2)).toBe('3.90');
    expect(printed(month.capacityUtilisation, 2, 100)).toBe('16.26');
    // 12,096 ÷ 100 ÷ 156.55 = 0.77266; the table prints 0.772, which is 3.90 ÷ 5.05.
    expect(printed(month.performanceRatio, 3)).toBe('0.773');
    const rounded = monthOf(plant, { ...october, wattHours: 12_090_000 });
    expect(printed(rounded.specificYield, 4)).toBe('3.9000');
    expect(printed(rounded.performanceRatio, 3)).toBe('0.772');
  });

  it('August makes 338.0 units a day, where the table prints 337.7', () => {
    expect(quotientText(august.wattHours, 31_000, 1)).toBe('338.0');
    expect(printed(monthOf(plantOf('1'), august).specificYield, 1)).toBe('338.0');
  });

  it('a monsoon month with 0.841 of November is fine where its irradiation is expected', () => {
    const [one, other] = [monthOf(plant, august).specificYield, monthOf(plant, november).specificYield];
    if (one === null || other === null) throw new Error('no yields');
    const share = BigInt(one.numerator) * BigInt(other.denominator) * 1000n;
    expect(quotientText(share, Number(BigInt(one.denominator) * BigInt(other.numerator)), 0)).toBe('841');
    const irradiation = ['5', '5', '5', '5', '5', '5', '5', '4.2', '5', '5.05', '5.35', '5'];
    const expected = {
      irradiation,
      unit: 'kWh/m2/day',
      performanceRatio: '0.78',
      source: 'the table',
    } as const;
    const months = [august, october, november].map((made) => monthOf(plantOf('100', { expected }), made));
    expect(months.map(({ judgement }) => judgement)).toEqual(['fine', 'fine', 'fine']);
  });
});

/**
 * Performance Analysis of a Rooftop Grid-Connected PV System in NE India, Energies 18(8) 1921, MDPI, 2025:
 * https://www.mdpi.com/1996-1073/18/8/1921. 58,911.3 kWh from July 2018 to June 2023 of 77,769 predicted.
 */
describe('a plant of 10 kWp over five years', () => {
  const made = { from: '2018-07-01', to: '2023-07-01', wattHours: 58_911_300 };
  /** 12 × 1,296.15 × 5 = 77,769. */
  const monthly = Array.from({ length: 12 }, () => '1296.15');

  it('yield, utilisation and share of the prediction as printed', () => {
    const month = monthOf(plantOf('10', { expected: { monthly } }), made);
    expect(month.daysInService).toBe(1826);
    expect(printed(month.specificYield, 1)).toBe('3.2');
    expect(printed(month.capacityUtilisation, 2, 100)).toBe('13.44');
    expect(month.expected && exactText(month.expected.numerator, month.expected.denominator)).toBe('77769');
    expect(printed(month.share, 2, 100)).toBe('75.75');
    expect(month.judgement).toBe('look-at-it');
  });

  it('3.2985 without its 40 outage days', () => {
    const diary = [{ date: '2020-06-01', through: '2020-07-10', did: 'outage' }] as const;
    const month = monthOf(plantOf('10', { diary: [...diary] }), made);
    expect(month.daysInService).toBe(1786);
    expect(printed(month.specificYieldInService, 4)).toBe('3.2985');
    expect(printed(month.specificYield, 4)).toBe('3.2262');
  });
});

describe('yields that papers print', () => {
  it('8 kW at Durban in 2018 (IJMET 10(4), IAEME, 2019): 4.93 and 5.66 hours, 87.1 %, 20.54 %', () => {
    // 4.93 × 8 × 365 = 14,395.6 kWh; 5.66 × 365 = 2,065.9 kWh per m².
    const made = { from: '2018-01-01', to: '2019-01-01', wattHours: 14_395_600, irradiation: 2_065_900 };
    const month = monthOf(plantOf('8'), made);
    expect(printed(month.specificYield, 2)).toBe('4.93');
    expect(printed(month.performanceRatio, 3)).toBe('0.871');
    expect(printed(month.capacityUtilisation, 2, 100)).toBe('20.54');
  });

  /** Six-year 1.39 MW rooftop plant, north India, abstract: https://synapsesocial.com/papers/W7164840594 */
  it('1.39 MW: 2.29 of 4.47 hours are a ratio of 0.5123 and 9.54 %; its energy tells another yield', () => {
    // 2.29 × 1390 × 365 = 1,161,831.5 kWh; 4.47 × 365 = 1,631.55 kWh per m².
    const year = { from: '2019-01-01', to: '2020-01-01', wattHours: 1_161_831_500, irradiation: 1_631_550 };
    const month = monthOf(plantOf('1390'), year);
    expect(printed(month.performanceRatio, 4)).toBe('0.5123');
    expect(printed(month.capacityUtilisation, 2, 100)).toBe('9.54');
    const six = { from: '2017-01-01', to: '2023-01-01', wattHours: 8_887_910_000 };
    expect(printed(monthOf(plantOf('1390'), six).specificYield, 3)).toBe('2.918');
  });

  /** Own worked example: 14,000 ÷ (10 × 8,760) and ÷ (10 × 8,784). */
  it('a leap year has 8,784 hours', () => {
    const year = (from: string, to: string) => monthOf(plantOf('10'), { from, to, wattHours: 14_000_000 });
    const common = year('2023-01-01', '2024-01-01').capacityUtilisation;
    const leap = year('2024-01-01', '2025-01-01').capacityUtilisation;
    expect([printed(common, 3, 100), printed(leap, 3, 100)]).toEqual(['15.982', '15.938']);
    expect([common, leap].map((use) => use?.inputs[2]?.numerator)).toEqual([8760, 8784]);
  });
});

/**
 * Irradiation of a measured year in kWh per m² from the comparison of specific energy yields, Table 1,
 * EPJ Photovoltaics, 2023: https://www.epj-pv.org/articles/epjpv/full_html/2023/01/pv220042/T1.html.
 * The yields at ratios of 0.75 and 0.80 are worked out from them: 1941.8 × 0.75 = 1456.35.
 */
describe('expected of 1 kWp by irradiation and a performance ratio', () => {
  it.each([
    ['Chennai', '160', '181.8', '1456', '1553'],
    ['Cologne-Bonn', '80', '99', '734', '783'],
    ['Datong', '120', '160.9', '1111', '1185'],
    ['Riyadh', '180', '209.2', '1642', '1751'],
    ['Rio', '140', '150.5', '1268', '1352'],
  ])('%s', (source, eleven, last, low, high) => {
    const irradiation = [...Array.from({ length: 11 }, () => eleven), last];
    const at = (performanceRatio: string): string => {
      const expected = { irradiation, unit: 'kWh/m2/month', performanceRatio, source } as const;
      const made = { from: '2023-01-01', to: '2024-01-01', wattHours: 1_000_000 };
      return printed(monthOf(plantOf('1', { expected }), made).expected, 0);
    };
    expect([at('0.75'), at('0.8')]).toEqual([low, high]);
  });
});

/** Own worked examples for a rate of 0.34 % a day; the rate is of a composite climate, Solar Energy, Elsevier, 2022. */
describe('dirt that grows every day', () => {
  it('0.34 % × (N − 1) ÷ 2 on the mean', () => {
    expect([7, 14, 30].map((days) => meanDirtLoss('0.34', days))).toEqual(['1.02', '2.21', '4.93']);
    expect(meanDirtLoss('0.34', 1)).toBe('0');
  });

  it('costs least with √(2 × 500 ÷ (0.0034 × 40 × 6)) = 35.0 days between', () => {
    const costs = { cost: '500', percentPerDay: '0.34', unitsPerDay: '40', price: '6' };
    expect(cheapestCleaningDays(costs)).toBe('35.0');
    expect(cheapestCleaningDays({ ...costs, price: '0' })).toBeNull();
  });
});

/** Own worked examples by the method of JCGM 100:2008 (GUM): √(4² + 2.8²) = 4.88, 4 + 2.8 = 6.80. */
describe('own use as the difference of two meters of class 1', () => {
  const between = (made: number, given: number) =>
    meterBand([
      { wattHours: made * 1000, classText: '1' },
      { wattHours: -given * 1000, classText: '1' },
    ]);

  it('400 less 280 units: 120 ± 4.88, at worst ± 6.80', () => {
    const band = between(400, 280);
    expect(band?.wattHours).toBe(120_000);
    expect(band && meterBandText(band)).toEqual({
      worst: '6.80',
      rootSum: '4.88',
      rootSumPercent: '4.07',
      worstPercent: '5.67',
    });
  });

  it('400 less 380 units: 20 ± 27.6 %', () => {
    const band = between(400, 380);
    // √(16 + 14.44) = 5.51725 of 20.
    expect(band && meterBandText(band).rootSumPercent).toBe('27.59');
  });
});

it('the days of the five years are those of the calendar', () => {
  expect(day('2023-07-01') - day('2018-07-01')).toBe(1826);
  expect(calendarDay(day('2020-02-29')).day).toBe(29);
});
