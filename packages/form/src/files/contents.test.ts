import { parseDay, type DayNumber } from '@unitbook/engine';
import { collectMeterFile, type CollectedFile, type MeterSink, type Stream } from '@unitbook/meter-files';
import { expect, it } from 'vitest';
import { writingFor } from '../writing/writing.ts';
import { contentsOf, seriesTotal } from './contents.ts';

const writing = writingFor('en-IN', 'INR');
const DAY = parseDay('2025-05-01') as DayNumber;

const stream = (register: string, rest: Partial<Stream> = {}): Stream => ({
  point: '',
  meter: '',
  register,
  quantity: 'import',
  rate: null,
  unit: 'kWh',
  ...rest,
});

function collected(fill: (sink: MeterSink) => void): CollectedFile {
  const { sink, result } = collectMeterFile();
  fill(sink);
  return result({ offset: null });
}

it('tells a channel of intervals: its span, its sum, gaps, what is missing and what is estimated', () => {
  const E1 = stream('E1', { meter: 'M1' });
  const start = DAY * 1440;
  const file = collected((sink) => {
    const common = { stream: E1, minutes: 15, places: 3, line: 2 };
    sink.intervals({ ...common, start, values: new Float64Array([250, 120]), qualities: null });
    sink.intervals({
      ...common,
      start: start + 60,
      values: new Float64Array([5, NaN, 1000]),
      qualities: new Uint8Array([1, 4, 0]),
    });
  });
  // 0.250 + 0.120 + 0.005 + 1.000; the gap is from 00:30 to 01:00, and 01:15 has no value: two gaps, 45 minutes.
  expect(contentsOf(file, writing)).toEqual([
    {
      stream: E1,
      name: 'E1 of meter M1',
      words: 'taken from the grid',
      first: '1 May 2025, 00:00',
      last: '1 May 2025, 01:45',
      amount: '1.375',
      unit: 'units',
      notes: ['5 intervals of 15 min', '1 estimated', '2 gaps, 45 min in all', '1 interval without a value'],
    },
  ]);
});

it('tells a register: its first and last reading, and what it counted between them', () => {
  const T1 = stream('1-0:2.8.1', { quantity: 'export', rate: '1' });
  const reading = { stream: T1, minute: null, quality: 'actual', line: 1 } as const;
  const file = collected((sink) => {
    sink.register({ ...reading, day: DAY, value: '002935.80' });
    sink.register({ ...reading, day: (DAY + 31) as DayNumber, value: '003151.0', quality: 'substituted' });
  });
  expect(contentsOf(file, writing)).toEqual([
    {
      stream: T1,
      name: '1-0:2.8.1',
      words: 'given to the grid, rate 1',
      first: '2,935.8 on 1 May 2025',
      last: '3,151 on 1 June 2025',
      amount: '215.2',
      unit: 'units',
      notes: ['2 readings', '1 estimated'],
    },
  ]);
});

it('tells no advance of one reading, nor of a register that went back', () => {
  const reading = { stream: stream('1.8.0'), minute: 600, quality: 'actual', line: 1 } as const;
  const one = collected((sink) => {
    sink.register({ ...reading, day: DAY, value: '7' });
  });
  expect(contentsOf(one, writing)[0]).toMatchObject({
    first: '7 on 1 May 2025, 10:00',
    last: '',
    amount: '',
    notes: ['1 reading', 'none estimated'],
  });
  const back = collected((sink) => {
    sink.register({ ...reading, day: DAY, value: '7' });
    sink.register({ ...reading, day: (DAY + 1) as DayNumber, value: '6' });
  });
  expect(contentsOf(back, writing)[0]).toMatchObject({
    amount: '',
    notes: ['2 readings', 'none estimated', 'the last is below the first'],
  });
});

it('adds up exactly beyond what a double holds', () => {
  const large = 9_007_199_254_740_991;
  expect(seriesTotal({ values: new Float64Array([large, large, NaN, 1]), places: 3 })).toEqual({
    whole: 18_014_398_509_481_983n,
    places: 3,
  });
});
