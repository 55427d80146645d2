import { dayText, parseDay, type DayNumber } from '@unitbook/engine';
import {
  collectMeterFile,
  type CollectedFile,
  type MeteredQuantity,
  type Stream,
} from '@unitbook/meter-files';
import { describe, expect, it } from 'vitest';
import { generationOfDays } from './of-days.ts';

const day = (text: string): DayNumber => parseDay(text) as DayNumber;

/** Intervals of one quantity from a day on. */
interface Given {
  readonly quantity: MeteredQuantity;
  readonly from: string;
  readonly minutes: number;
  readonly places: number;
  readonly values: readonly number[];
}

function fileOf(given: readonly Given[], offset: number | null = null): CollectedFile {
  const { sink, result } = collectMeterFile();
  for (const { quantity, from, minutes, places, values } of given) {
    const stream: Stream = { point: '', meter: '', register: quantity, quantity, rate: null, unit: 'kWh' };
    const start = day(from) * 1440;
    sink.intervals({
      stream,
      start,
      minutes,
      places,
      values: Float64Array.from(values),
      qualities: null,
      line: 2,
    });
  }
  return result({ offset });
}

const daily = (places: number, ...values: readonly number[]): Given => ({
  quantity: 'generation',
  from: '2025-05-01',
  minutes: 1440,
  places,
  values,
});

const daysOf = (file: CollectedFile, zone: string | null = null) =>
  generationOfDays(file, zone).value?.days ?? [];

describe('generation of days', () => {
  it('is in whole watt-hours, and what is finer goes on to the next day', () => {
    // 1.0006, 1.0006 and 1.0006 kWh: 1000.6 + 1000.6 + 1000.6 = 3001.8 Wh
    const made = daysOf(fileOf([daily(4, 10_006, 10_006, 10_006)])).map(({ wattHours }) => wattHours);
    expect(made).toEqual([1000, 1001, 1000]);
    expect(daysOf(fileOf([daily(0, 12, 0)])).map(({ wattHours }) => wattHours)).toEqual([12_000, 0]);
  });

  it('below 0 is taken for 0, and told', () => {
    const { value } = generationOfDays(fileOf([daily(1, 50, -1, -2, 40)]), null);
    expect(value?.days.map(({ wattHours }) => wattHours)).toEqual([5000, 0, 0, 4000]);
    expect(value?.findings.map(({ code, found }) => [code, found])).toEqual([
      [
        'command/day-below-zero',
        'less than 0 units of generation on 2 days, the first 2025-05-02, the last 2025-05-03',
      ],
    ]);
  });

  it('is not known on a day of which something is missing', () => {
    const values = Array.from({ length: 47 }, () => 1);
    const file = fileOf([{ quantity: 'generation', from: '2025-05-01', minutes: 60, places: 0, values }]);
    expect(daysOf(file).map(({ wattHours }) => wattHours)).toEqual([24_000, null]);
  });

  it('has the first and the last minute with sun, and what was given to the grid', () => {
    // From 7:00 to 17:59 on the first day; nothing on the second.
    const sun = Array.from({ length: 48 }, (_, hour) => (hour >= 7 && hour < 18 ? 2 : 0));
    const given = Array.from({ length: 48 }, (_, hour) => (hour === 12 ? 5 : 0));
    const file = fileOf([
      { quantity: 'generation', from: '2025-05-01', minutes: 60, places: 0, values: sun },
      { quantity: 'export', from: '2025-05-01', minutes: 60, places: 1, values: given },
    ]);
    expect(daysOf(file)).toEqual([
      { day: day('2025-05-01'), wattHours: 22_000, exportWattHours: 500, firstMinute: 420, lastMinute: 1079 },
      { day: day('2025-05-02'), wattHours: 0, exportWattHours: 0 },
    ]);
  });

  it('goes by local days', () => {
    // 24 hours of UTC from 1 May on are 2:00 to 2:00 in Berlin: neither day is whole.
    const values = Array.from({ length: 48 }, () => 1);
    const file = fileOf([{ quantity: 'generation', from: '2025-05-01', minutes: 60, places: 0, values }], 0);
    expect(daysOf(file, 'Europe/Berlin').map(({ day: one, wattHours }) => [dayText(one), wattHours])).toEqual(
      [
        ['2025-05-01', null],
        ['2025-05-02', 24_000],
        ['2025-05-03', null],
      ],
    );
  });

  it('makes a month where every day of it is known', () => {
    // 30 April, all of May, 1 June: May is whole. Without 31 May it is not.
    const year = (count: number): Given => ({
      quantity: 'generation',
      from: '2025-04-30',
      minutes: 1440,
      places: 0,
      values: Array.from({ length: count }, () => 10),
    });
    const { value } = generationOfDays(fileOf([year(33)]), null);
    expect(value?.periods).toEqual([
      { period: { from: day('2025-05-01'), to: day('2025-06-01') }, wattHours: 310_000 },
    ]);
    expect(generationOfDays(fileOf([year(31)]), null).value?.periods).toEqual([]);
  });

  it('is asked for where there is none', () => {
    const { value, findings } = generationOfDays(fileOf([{ ...daily(0, 1), quantity: 'import' }]), null);
    expect(value).toBeNull();
    expect(findings.map(({ code }) => code)).toEqual(['command/no-generation']);
  });
});
