import Papa from 'papaparse';
import { dayText, wholeToDecimal, type DayNumber } from '@unitbook/engine';
import {
  nem12Reader,
  readTableLayout,
  tableReader,
  type MeterReader,
  type MeterSink,
  type TableLayout,
} from '@unitbook/meter-files';
import { measure, type Subject } from './measure.ts';

const DAYS = 365;
const FIRST_DAY = 19_358;
const MINUTES = 5;
const OF_DAY = 1440 / MINUTES;
/** A file is read in pieces of so many characters. */
const PIECE = 65_536;

/** Whole watt-hours of an interval: nothing at night, something different each time by day. */
function wattHours(day: number, at: number): number {
  const light = Math.max(0, 144 - Math.abs(at - 144) - 70);
  return light === 0 ? 0 : (light * 7 + ((day * 31 + at * 17) % 97)) % 1000;
}

const text = (day: number, at: number): string => wholeToDecimal(wattHours(day, at), 3);

/** A year of 5-minute values of two streams, as NEM12. */
function nem12Text(): string {
  const lines = ['100,NEM12,202401010000,A,B'];
  for (const register of ['E1', 'B1']) {
    lines.push(`200,N1,E1B1,${register},${register},,M1,kWh,${String(MINUTES)},`);
    for (let day = 0; day < DAYS; day += 1) {
      const values = Array.from({ length: OF_DAY }, (_, at) => text(day, at));
      const date = dayText((FIRST_DAY + day) as DayNumber).replaceAll('-', '');
      lines.push(`300,${date},${values.join(',')},A,,,,`);
    }
  }
  return `${lines.join('\n')}\n900\n`;
}

/** The same as a table of a row for each interval. */
function tableText(): string {
  const lines = ['time,import kWh,export kWh'];
  for (let day = 0; day < DAYS; day += 1) {
    const date = dayText((FIRST_DAY + day) as DayNumber);
    for (let at = 0; at < OF_DAY; at += 1) {
      const minute = at * MINUTES;
      const clock = [Math.floor(minute / 60), minute % 60].map((part) => String(part).padStart(2, '0'));
      lines.push(`${date} ${clock.join(':')},${text(day, at)},${text(day, at + 3)}`);
    }
  }
  return `${lines.join('\n')}\n`;
}

function layout(): TableLayout {
  const { value, findings } = readTableLayout(
    JSON.stringify({
      format: 'unitbook-columns-1',
      header: ['time', 'import kWh', 'export kWh'],
      holds: 'intervals',
      delimiter: ',',
      decimalMark: '.',
      grouping: '',
      dateOrder: 'year-month-day',
      clock: 'local',
      label: 'start',
      minutes: String(MINUTES),
      columns: [{ is: 'date-time' }, { is: 'import', unit: 'kWh' }, { is: 'export', unit: 'kWh' }],
      confirmed: true,
    }),
  );
  if (value === null) throw new Error(JSON.stringify(findings));
  return value;
}

/** Read a file in pieces; returns the sum of its values, in whole steps of the chunk. */
function readAll(file: string, open: (sink: MeterSink) => MeterReader): { values: number; sum: number } {
  let [values, sum] = [0, 0];
  const reader = open({
    intervals: (chunk) => {
      for (const value of chunk.values) sum += value * 10 ** (3 - chunk.places);
      values += chunk.values.length;
    },
    register: () => undefined,
    finding: (finding) => {
      throw new Error(JSON.stringify(finding));
    },
  });
  for (let at = 0; at < file.length; at += PIECE) reader.write(file.slice(at, at + PIECE));
  reader.end();
  return { values, sum };
}

const split = (file: string): number =>
  Papa.parse<string[]>(file, { delimiter: ',', newline: '\n' }).data.length;

const times = (count: number, run: () => number): number => {
  let sum = 0;
  for (let at = 0; at < count; at += 1) sum += run();
  return sum;
};

/** A kind of file: intervals per second, and the time of the bare parser beside ours. */
export interface MeterSpeed {
  readonly name: string;
  readonly intervals: number;
  /** Nanoseconds for an interval. */
  readonly ours: number;
  readonly splitting: number;
}

/** The sum that both files should come to, without any text. */
function expectedSum(shift: number): number {
  let sum = 0;
  for (let day = 0; day < DAYS; day += 1)
    for (let at = 0; at < OF_DAY; at += 1) sum += wattHours(day, at) + wattHours(day, at + shift);
  return sum;
}

/** Measure how fast interval files are read, against the bare parser splitting the same text. */
export function measureMeterFiles(): readonly MeterSpeed[] {
  const tableLayout = layout();
  const files = [
    { name: 'NEM12', file: nem12Text(), shift: 0, open: (sink: MeterSink) => nem12Reader(sink) },
    { name: 'CSV', file: tableText(), shift: 3, open: (sink: MeterSink) => tableReader(tableLayout, sink) },
  ];
  const subjects = files.flatMap(({ name, file, open }): Subject[] => [
    { name, run: (count) => times(count, () => readAll(file, open).sum) },
    { name: `${name} split`, run: (count) => times(count, () => split(file)) },
  ]);
  const counted = files.map(({ name, file, shift, open }) => {
    const { values, sum } = readAll(file, open);
    if (sum !== expectedSum(shift) || values !== 2 * DAYS * OF_DAY)
      throw new Error(`${name} is read wrongly`);
    return values;
  });
  const timings = measure(subjects, { warmUpMs: 1500, sampleMs: 300, samples: 9 });
  return files.map(({ name }, at) => {
    const intervals = counted[at] ?? NaN;
    const of = (subject: string): number => (timings.get(subject) ?? NaN) / intervals;
    return { name, intervals, ours: of(name), splitting: of(`${name} split`) };
  });
}
