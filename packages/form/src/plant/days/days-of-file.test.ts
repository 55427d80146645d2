import { parseDay, type DayNumber } from '@unitbook/engine';
import { collectMeterFile, type CollectedFile, type MeteredQuantity } from '@unitbook/meter-files';
import { expect, it } from 'vitest';
import { mergedDays } from './day-file.ts';
import { daysOfFile } from './days-of-file.ts';

const day = (text: string): DayNumber => parseDay(text) ?? (0 as DayNumber);
const first = day('2025-04-01');
const DAY = 1440;

interface Values {
  readonly quantity: MeteredQuantity;
  readonly minutes: number;
  readonly places: number;
  readonly values: readonly number[];
  /** Minutes after the first midnight. */
  readonly from?: number;
}

function fileOf(...streams: readonly Values[]): CollectedFile {
  const { sink, result } = collectMeterFile();
  for (const { quantity, minutes, places, values, from = 0 } of streams) {
    const stream = { point: '', meter: '', register: quantity, quantity, rate: null, unit: 'kWh' };
    sink.intervals({
      stream,
      start: first * DAY + from,
      minutes,
      places,
      values: Float64Array.from(values),
      qualities: null,
      line: 2,
    });
  }
  return result({ offset: null });
}

it('takes a value of each day over as whole watt-hours', () => {
  const { days } = daysOfFile(
    fileOf({ quantity: 'generation', minutes: DAY, places: 1, values: [142, NaN, 0] }),
    null,
  );
  expect(days).toEqual([
    { day: first, wattHours: 14_200 },
    { day: first + 1, wattHours: null },
    { day: first + 2, wattHours: 0 },
  ]);
});

it('rounds what is finer than a watt-hour half-up', () => {
  const { days } = daysOfFile(
    fileOf({ quantity: 'generation', minutes: DAY, places: 5, values: [1_234_550, 1_234_549] }),
    null,
  );
  expect(days.map(({ wattHours }) => wattHours)).toEqual([12_346, 12_345]);
});

it('adds intervals up, tells when the plant ran and what went to the grid', () => {
  // 24 hours: half a unit from 8 to 9 and a whole one from 16 to 17.
  const hours = Array.from({ length: 24 }, (_, hour) => (hour === 8 ? 500 : hour === 16 ? 1000 : 0));
  const { days } = daysOfFile(
    fileOf(
      { quantity: 'generation', minutes: 60, places: 3, values: hours },
      { quantity: 'export', minutes: 60, places: 3, values: hours.map((value) => value / 2) },
    ),
    null,
  );
  expect(days).toEqual([
    { day: first, wattHours: 1500, exportWattHours: 750, firstMinute: 480, lastMinute: 1019 },
  ]);
});

it('has no value for a day that is not whole, and does not mind gaps of other quantities', () => {
  const hours = Array.from({ length: 24 }, () => 100);
  const { days } = daysOfFile(
    fileOf(
      { quantity: 'generation', minutes: 60, places: 3, values: [...hours, ...hours.slice(1)] },
      { quantity: 'export', minutes: 60, places: 3, values: hours.slice(2) },
    ),
    null,
  );
  expect(days.map(({ wattHours, exportWattHours }) => [wattHours, exportWattHours])).toEqual([
    [2400, undefined],
    [null, undefined],
  ]);
});

it('holds no days where nothing was made', () => {
  expect(daysOfFile(fileOf({ quantity: 'import', minutes: DAY, places: 0, values: [3] }), null).days).toEqual(
    [],
  );
});

it('lets the file that was opened last count, day by day', () => {
  const one = { name: 'a', zone: null, findings: [], days: [{ day: first, wattHours: 1 }] };
  const other = {
    name: 'b',
    zone: null,
    findings: [],
    days: [
      { day: (first - 1) as DayNumber, wattHours: 3 },
      { day: first, wattHours: 2 },
    ],
  };
  expect(mergedDays([one, other]).map(({ wattHours }) => wattHours)).toEqual([3, 2]);
});
