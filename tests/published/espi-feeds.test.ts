import { dayNumber, dayText, type DayNumber } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { clockChangeDays, localMinute } from '../../packages/meter-files/src/espi/index.ts';
import { readFeed, type ReadFeed } from '../laws/meter-files/print-espi.ts';

const FEEDS = import.meta.glob<string>('./data/espi/*.xml', {
  query: '?raw',
  import: 'default',
  eager: true,
});
const feed = (name: string): string => FEEDS[`./data/espi/${name}.xml`] ?? '';

/** The readings of a feed of one flow, by a regular expression: start and value in the order of the file. */
function bareReadings(text: string): { start: bigint; value: bigint; line: number }[] {
  const block = /<IntervalReading>.*?<start>(\d+)<\/start>.*?(<value>(\d+)<\/value>).*?<\/IntervalReading>/gs;
  return [...text.matchAll(block)].map((match) => ({
    start: BigInt(match[1] ?? ''),
    value: BigInt(match[3] ?? ''),
    line: text.slice(0, match.index + match[0].indexOf(match[2] ?? '')).split('\n').length,
  }));
}

/** The intervals of a feed that was read, one by one. */
const intervals = ({ streams }: ReadFeed): { start: bigint; value: bigint }[] =>
  streams.flatMap(({ chunks }) =>
    chunks.flatMap(({ start, minutes, values }) =>
      values.map((value, at) => ({ start: BigInt(start + at * minutes) * 60n, value: BigInt(value) })),
    ),
  );

const sum = (values: readonly { value: bigint }[]): bigint =>
  values.reduce((total, { value }) => total + value, 0n);

/** Samples of the standard NAESB ESPI by EnergyOS.org (2013) and Green Button Alliance (2021): data/espi/SOURCE.md. */
const SAMPLES = [
  {
    name: 'coastal_single_family_2011_hourly_forward',
    count: 362,
    minutes: 60,
    first: 1293868800n,
    last: 1295168400n,
    point: 'Coastal Single Family',
    register: 'Hourly Electricity Consumption',
  },
  {
    name: 'openespi_test_usage_data_1',
    count: 480,
    minutes: 15,
    first: 1330578000n,
    last: 1331009100n,
    point: 'Front Electric Meter',
    register: 'Fifteen Minute Electricity Consumption',
  },
] as const;

describe.each(SAMPLES)(
  'the published feed $name',
  ({ name, count, minutes, first, last, point, register }) => {
    const text = feed(name);
    const bare = bareReadings(text);
    const read = readFeed([text]);

    it('gives every reading, and no finding', () => {
      expect(bare.length).toBe(count);
      expect(intervals(read)).toEqual(bare.map(({ start, value }) => ({ start, value })));
      expect(sum(intervals(read))).toBe(sum(bare));
      expect(read.findings).toEqual([]);
    });

    it('goes from its first to its last reading without a gap', () => {
      const starts = intervals(read).map(({ start }) => start);
      expect([starts[0], starts.at(-1)]).toEqual([first, last]);
      expect(starts.every((start, at) => start === first + BigInt(at * minutes * 60))).toBe(true);
    });

    it('is one stream of import in Wh, to the place', () => {
      expect(read.streams.map(({ stream }) => stream)).toEqual([
        { point, register, meter: '', quantity: 'import', rate: null, unit: 'Wh' },
      ]);
      const chunks = read.streams.flatMap((one) => one.chunks);
      expect(new Set(chunks.map((chunk) => [chunk.places, chunk.minutes].join(' ')))).toEqual(
        new Set([`3 ${String(minutes)}`]),
      );
      const firsts = chunks.map(({ start }) => bare.find((one) => one.start === BigInt(start) * 60n)?.line);
      expect(read.lines).toEqual(firsts);
    });

    it('says that the clock is changed on the second Sunday of March and the first of November', () => {
      // Energy Policy Act of 2005 (USA), section 110; the days of 2011 and 2012 by the calendar.
      const days = read.localTime === null ? [] : clockChangeDays(read.localTime, 2011, 2012);
      expect(days.map(dayText)).toEqual(['2011-03-13', '2011-11-06', '2012-03-11', '2012-11-04']);
    });
  },
);

it('marks the two values of the published feed that were not measured', () => {
  const [stream] = readFeed([feed('openespi_test_usage_data_1')]).streams;
  const marks = stream?.chunks.flatMap(({ qualities }) => qualities) ?? [];
  // The first has quality 8 (estimated), the second 7 (edited by hand); no other has a quality.
  expect(marks.slice(0, 3)).toEqual([1, 3, 0]);
  expect(marks.filter((mark) => mark !== 0).length).toBe(2);
});

describe('a year of hours by the headers of the published feed of 2011', () => {
  const text = feed('coastal_single_family_2011_hourly_forward');
  const head = text.slice(0, text.indexOf('<IntervalReading>'));
  const foot = text.slice(text.lastIndexOf('</IntervalReading>') + '</IntervalReading>'.length);
  const YEAR = 8760;
  const readings = Array.from({ length: YEAR }, (_, hour) => {
    const start = 1293868800 + hour * 3600;
    const period = `<timePeriod><duration>3600</duration><start>${String(start)}</start></timePeriod>`;
    return `<IntervalReading>${period}<value>${String(hour)}</value></IntervalReading>`;
  });
  const read = readFeed([head + readings.join('\n') + foot]);

  it('is 8760 hours in chunks without a gap', () => {
    const all = intervals(read);
    expect(all.length).toBe(YEAR);
    expect(all.every(({ start }, at) => start === 1293868800n + BigInt(at) * 3600n)).toBe(true);
    // 0 + 1 + … + 8759 = 8759 × 8760 / 2
    expect(sum(all)).toBe(38_364_420n);
    expect(read.findings).toEqual([]);
  });

  it('has a local day of 23 hours and one of 25, and begins and ends at local midnight', () => {
    const { localTime } = read;
    const hours = new Map<number, number>();
    for (const { start } of intervals(read)) {
      const minute = localTime === null ? NaN : localMinute(localTime, Number(start / 60n));
      const day = Math.floor(minute / 1440);
      hours.set(day, (hours.get(day) ?? 0) + 1);
    }
    const odd = [...hours].filter(([, count]) => count !== 24);
    expect(odd.map(([day, count]) => [dayText(day as DayNumber), count])).toEqual([
      ['2011-03-13', 23],
      ['2011-11-06', 25],
    ]);
    expect(hours.size).toBe(365);
  });
});

describe('the feed with two flows', () => {
  const read = readFeed([feed('two-flows')]);
  const point = 'House with a solar plant';
  const stream = (register: string, quantity: string, unit: string) => ({
    point,
    meter: '',
    register,
    quantity,
    rate: null,
    unit,
  });
  const april = dayNumber({ year: 2024, month: 4, day: 1 });
  const may = dayNumber({ year: 2024, month: 5, day: 1 });
  const at = (day: DayNumber, value: string) => ({ day, minute: 0, value, quality: 'actual' });

  it('keeps import and export apart, both positive, and breaks at the half-hour that is missing', () => {
    // 1712417400 s = 28540290 min (15:30 UTC); 17:30 is 28540410, 17:00 is 28540380.
    expect(read.streams.filter(({ chunks }) => chunks.length > 0)).toEqual([
      {
        stream: stream('Import, half-hours', 'import', 'Wh'),
        registers: [],
        chunks: [
          { start: 28540290, minutes: 30, places: 3, values: [412, 388, 400], qualities: [0, 0, 1] },
          { start: 28540410, minutes: 30, places: 3, values: [0, 95], qualities: [0, 0] },
        ],
      },
      {
        stream: stream('Export, half-hours', 'export', '10^1 Wh'),
        registers: [],
        // In units of 10 Wh, which is 0.01 kWh: two places.
        chunks: [{ start: 28540380, minutes: 30, places: 2, values: [7, 31, 104], qualities: [0, 0, 0] }],
      },
    ]);
  });

  it('gives the registers in kWh at local midnight, in summer and in winter', () => {
    expect(read.streams.filter(({ registers }) => registers.length > 0)).toEqual([
      {
        stream: stream('Import register', 'import', 'kWh'),
        chunks: [],
        registers: [at(april, '4342'), at(may, '4640')],
      },
      {
        stream: stream('Export register', 'export', 'kWh'),
        chunks: [],
        registers: [at(april, '2935'), at(may, '3151')],
      },
    ]);
  });

  it('has nothing to tell, and lines where the values stand', () => {
    expect(read.findings).toEqual([]);
    // Export half-hours come last: their type is the last entry.
    expect(read.lines).toEqual([81, 95, 171, 175, 215, 219, 123]);
  });

  it('puts the clock back at 3:00 on 7 April 2024, to 2:00', () => {
    const { localTime } = read;
    if (localTime === null) throw new Error('no local time');
    expect(clockChangeDays(localTime, 2024, 2024).map(dayText)).toEqual(['2024-04-07', '2024-10-06']);
    const seventh = dayNumber({ year: 2024, month: 4, day: 7 }) * 1440;
    const minuteOfDay = (utc: number): number => localMinute(localTime, utc) - seventh;
    // 16:29 UTC is 2:59 in summer (UTC+10:30), 16:30 UTC is 2:00 in winter (UTC+9:30).
    expect([minuteOfDay(28540349), minuteOfDay(28540350)]).toEqual([2 * 60 + 59, 2 * 60]);
  });
});
