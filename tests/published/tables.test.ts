import { dayText, parseDay } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import {
  proposeTable,
  type TableColumn,
  type TableLayout,
} from '../../packages/meter-files/src/table/index.ts';
import { energyOf } from '../support/nem.ts';
import { readTable, valuesOf } from '../support/table.ts';

// Measured homes: see data/tables/SOURCE.txt.
const FILES = import.meta.glob<string>('./data/tables/*.csv', {
  query: '?raw',
  import: 'default',
  eager: true,
});

const textOf = (name: string): string => {
  const text = FILES[`./data/tables/${name}.csv`];
  if (text === undefined) throw new RangeError(`no file ${name}`);
  return text.replaceAll('\r\n', '\n');
};

/** The layout of each file, written from its header by hand. */
const COMMON = {
  format: 'unitbook-columns-1',
  delimiter: ',',
  decimalMark: '.',
  grouping: '',
  dateOrder: 'year-month-day',
  confirmed: false,
} as const;

const kWh = (is: 'import' | 'export' | 'generation' | 'other', rate?: string): TableColumn =>
  rate === undefined ? { is, unit: 'kWh' } : { is, rate, unit: 'kWh' };

const LAYOUTS: Readonly<Record<string, TableLayout>> = {
  'battery-daily': {
    ...COMMON,
    header: ['start_local', 'import_kwh', 'export_kwh', 'generation_kwh', 'battery_discharge_kwh'],
    holds: 'intervals',
    clock: 'in-text',
    label: 'start',
    minutes: '1440',
    columns: [{ is: 'date-time' }, kWh('import'), kWh('export'), kWh('generation'), kWh('other')],
  },
  daily: {
    ...COMMON,
    header: ['start_local', 'import_kwh', 'export_kwh', 'generation_kwh'],
    holds: 'intervals',
    clock: 'local',
    label: 'start',
    minutes: '1440',
    columns: [{ is: 'date' }, kWh('import'), kWh('export'), kWh('generation')],
  },
  'two-rate-registers-15min': {
    ...COMMON,
    header: ['time', 'Import T1 kWh', 'Import T2 kWh', 'Export T1 kWh', 'Export T2 kWh'],
    holds: 'registers',
    clock: 'local',
    columns: [
      { is: 'date-time' },
      kWh('import', '1'),
      kWh('import', '2'),
      kWh('export', '1'),
      kWh('export', '2'),
    ],
  },
  'two-rate-registers-daily': {
    ...COMMON,
    header: ['date', 'import_normal_kwh', 'import_low_kwh', 'export_normal_kwh', 'export_low_kwh'],
    holds: 'registers',
    clock: 'local',
    columns: [
      { is: 'date' },
      kWh('import', 'normal'),
      kWh('import', 'low'),
      kWh('export', 'normal'),
      kWh('export', 'low'),
    ],
  },
  'konstanz-registers': {
    ...COMMON,
    header: ['home', 'read_at_local', 'import_kwh', 'export_kwh', 'generation_kwh'],
    holds: 'registers',
    clock: 'in-text',
    columns: [{ is: 'point' }, { is: 'date-time' }, kWh('import'), kWh('export'), kWh('generation')],
  },
};

const NAMES = Object.keys(LAYOUTS);
const layoutOf = (name: string): TableLayout => {
  const layout = LAYOUTS[name];
  if (layout === undefined) throw new RangeError(`no layout ${name}`);
  return { ...layout, confirmed: true };
};

const rowsOf = (name: string): readonly (readonly string[])[] =>
  textOf(name)
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => line.split(','));

/** A decimal text as a whole number of thousandths, by its digits alone; no file here has more decimals. */
function thousandths(text: string): bigint {
  const [whole = '', decimals = ''] = text.split('.');
  if (decimals.length > 3) throw new RangeError(text);
  return BigInt(whole + decimals.padEnd(3, '0'));
}

/** The sum of a column, added up from the lines without our reader; empty cells left out. */
const sumOf = (name: string, at: number): bigint =>
  rowsOf(name).reduce((sum, cells) => sum + (cells[at] ? thousandths(cells[at]) : 0n), 0n);

describe.each(NAMES)('the table %s', (name) => {
  it('is proposed as its header says', () => {
    expect(proposeTable(textOf(name)).layout).toEqual(LAYOUTS[name]);
    expect(proposeTable(textOf(name)).findings).toEqual([]);
  });

  it('is read without a finding but for empty cells, to the sums of its columns', () => {
    const layout = layoutOf(name);
    const { chunks, registers, findings } = readTable(layout, textOf(name));
    expect(findings).toEqual([]);
    expect(readTable(layout, textOf(name).replaceAll('\n', '\r\n'))).toEqual({
      ...readTable(layout, textOf(name)),
    });
    layout.columns.forEach((column, at) => {
      if (!('unit' in column)) return;
      const register = layout.header[at] ?? '';
      const own = registers.filter(({ stream }) => stream.register === register);
      const sum = own.reduce((total, { value }) => total + thousandths(value), energyOf(chunks, register, 3));
      expect([register, sum]).toEqual([register, sumOf(name, at)]);
      // A sum that is not 0 is not the sum of nothing.
      expect(sum > 0n).toBe(true);
    });
  });

  it('has a decision for each column and each mark', () => {
    const { decisions } = proposeTable(textOf(name));
    const about = (subject: string): readonly (number | null)[] =>
      decisions.filter((one) => one.about === subject).map(({ column }) => column);
    expect([...about('column')].sort()).toEqual([...layoutOf(name).columns.keys()]);
    for (const subject of ['delimiter', 'decimal-mark', 'grouping', 'date-order', 'clock', 'holds', 'header'])
      expect([subject, about(subject).length]).toEqual([subject, 1]);
  });
});

describe('what cannot be told', () => {
  const unsure = (name: string): readonly string[] =>
    proposeTable(textOf(name))
      .decisions.filter(({ certain }) => !certain)
      .map(({ about, column, detected }) => `${about} ${column ?? '-'} ${detected}`);

  it('is not called certain', () => {
    // Days by offsets in the text; a column of a battery may be told as anything.
    expect(unsure('battery-daily')).toEqual(['column 4 other']);
    expect(unsure('daily')).toEqual([]);
    // Whether 00:00 of September in the Netherlands is summer time is not written.
    expect(unsure('two-rate-registers-15min')).toEqual(['clock 0 local']);
    // Whole numbers show no mark, and "normal" and "low" say no hours.
    expect(unsure('two-rate-registers-daily')).toEqual([
      'decimal-mark - .',
      'grouping - ',
      'rate 1 normal',
      'rate 2 low',
      'rate 3 normal',
      'rate 4 low',
    ]);
    expect(unsure('konstanz-registers')).toEqual([]);
  });
});

describe('days around the change of clocks', () => {
  it('follow each other on the local clock', () => {
    const { chunks, clock } = readTable(layoutOf('battery-daily'), textOf('battery-daily'));
    expect(clock).toEqual({ offset: null });
    // 31 days of October and 30 of November, each begun at 01:00: one run for each of four columns.
    expect(chunks.map(({ start, values }) => [start, values.length])).toEqual(
      Array.from({ length: 4 }, () => [(parseDay('2020-10-01') ?? NaN) * 1440 + 60, 61]),
    );
  });
});

describe('registers', () => {
  it('keep the digits, the day and the minute of the file', () => {
    const { registers } = readTable(layoutOf('konstanz-registers'), textOf('konstanz-registers'));
    const [first, second] = registers.map(({ stream, day, minute, value, quality, line }) => ({
      ...stream,
      day: dayText(day),
      minute,
      value,
      quality,
      line,
    }));
    const own = {
      point: 'DE_KN_residential1',
      meter: '',
      rate: null,
      unit: 'kWh',
      day: '2016-05-05',
      minute: 0,
    };
    expect(first).toEqual({
      ...own,
      register: 'import_kwh',
      quantity: 'import',
      value: '4768.220',
      quality: 'actual',
      line: 2,
    });
    expect(second).toEqual({
      ...own,
      register: 'generation_kwh',
      quantity: 'generation',
      value: '8879.444',
      quality: 'actual',
      line: 2,
    });
    // 23:00 of the second row of the file.
    expect([registers[2]?.minute, registers[2]?.line]).toEqual([1380, 3]);
    expect(new Set(registers.map(({ stream }) => stream)).size).toBe(4 * 3 - 1);
  });

  it('have no minute where the file gives days alone', () => {
    const { registers } = readTable(layoutOf('two-rate-registers-daily'), textOf('two-rate-registers-daily'));
    expect(new Set(registers.map(({ minute }) => minute))).toEqual(new Set([null]));
    expect(registers.length).toBe(103 * 4);
  });

  it('are as many as the cells of the file', () => {
    const name = 'two-rate-registers-15min';
    const { registers } = readTable(layoutOf(name), textOf(name));
    expect(registers.map(({ value }) => value)).toEqual(rowsOf(name).flatMap((cells) => cells.slice(1)));
  });

  it('are intervals where they are read as such, in one run', () => {
    const layout = { ...layoutOf('daily'), holds: 'intervals' as const };
    const { chunks } = readTable(layout, textOf('daily'));
    expect(chunks.map(({ values }) => values.length)).toEqual([60, 60, 60]);
    expect(valuesOf(chunks).length).toBe(180);
  });
});
