import { dayText } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { minuteOf } from '../../../../tests/support/meter-chunks.ts';
import { intervalLayout, readTable, registerLayout, valuesOf } from '../../../../tests/support/table.ts';
import { VALUE_QUALITIES } from '../stream.ts';
import type { TableColumn, TableLayout } from './layout-document.ts';
import { tableReader } from './read-table.ts';

const NOON = minuteOf('2025-05-01 12:00');

/** A table of intervals from noon on, one row for each cell or cells. */
const quarters = (...cells: readonly string[]): string =>
  [
    'time,import',
    ...cells.map(
      (cell, at) =>
        `2025-05-01 ${String(12 + Math.floor(at / 4))}:${String((at % 4) * 15).padStart(2, '0')},${cell}`,
    ),
  ].join('\n');

const withUnit = (is: 'import' | 'other' | 'net', unit: 'kWh' | 'Wh' | 'MWh'): Partial<TableLayout> => ({
  columns: [{ is: 'date-time' }, { is, unit }],
});

describe('a layout', () => {
  const sink = { intervals: () => undefined, register: () => undefined, finding: () => undefined };

  it('has to be confirmed', () => {
    expect(() => tableReader(registerLayout({ confirmed: false }), sink)).toThrow(RangeError);
  });

  it('has to fit together', () => {
    expect(() => tableReader(intervalLayout({ columns: [{ is: 'date-time' }] }), sink)).toThrow(RangeError);
    expect(() => tableReader(registerLayout({ holds: 'intervals' }), sink)).toThrow(/without "label"/);
  });
});

describe('energy', () => {
  it.each([
    ['kWh', '12.345', 12345, 3],
    ['Wh', '250', 250, 3],
    ['Wh', '250.5', 2505, 4],
    ['MWh', '1.2345', 12345, 1],
    ['MWh', '1.5', 1500, 0],
    ['MWh', '7', 7000, 0],
  ] as const)('in %s is handed on in kWh: %s', (unit, text, whole, places) => {
    const { chunks } = readTable(intervalLayout(withUnit('import', unit)), quarters(text));
    expect(chunks.map((chunk) => [chunk.values[0], chunk.places, chunk.stream.unit])).toEqual([
      [whole, places, unit],
    ]);
  });

  it.each([
    ['Wh', '6342', '6.342'],
    ['MWh', '1.5', '1500'],
    ['kWh', '006342.10', '006342.10'],
  ] as const)('of a register in %s keeps its digits: %s', (unit, text, value) => {
    const { registers } = readTable(
      registerLayout(withUnit('import', unit)),
      `time,import\n2025-05-01,${text}`,
    );
    expect(registers.map((one) => one.value)).toEqual([value]);
  });

  it('that is none is handed on as it is', () => {
    const { chunks } = readTable(intervalLayout(withUnit('other', 'Wh')), quarters('250'));
    expect(chunks.map(({ values, places }) => [...values, places])).toEqual([[250, 0]]);
  });

  it('below 0 is a net value, or what an inverter draws, and else told', () => {
    const { chunks, findings } = readTable(intervalLayout(withUnit('net', 'kWh')), quarters('-0.25', '0.5'));
    expect([findings, chunks.map(({ values }) => [...values])]).toEqual([[], [[-25, 50]]]);
    const made: TableLayout['columns'] = [{ is: 'date-time' }, { is: 'generation', unit: 'kWh' }];
    expect(readTable(intervalLayout({ columns: made }), quarters('-0.002')).findings).toEqual([]);
    const counted = readTable(registerLayout({ columns: made }), 'time,import\n2025-05-01,-1');
    expect(counted.findings.map(({ code }) => code)).toEqual(['table/negative']);
  });

  it('with other decimals is put into those of the run', () => {
    const { chunks } = readTable(intervalLayout(), quarters('1', '0.5', '0.25', '2.5'));
    expect(chunks.map(({ values, places }) => [[...values], places])).toEqual([[[100, 50, 25, 250], 2]]);
  });

  it('begins another chunk where no decimals suit both', () => {
    const { chunks, findings } = readTable(
      intervalLayout(),
      quarters('99999999999999', '0.1', '0.01', '0.001', '99999999999999'),
    );
    expect(findings).toEqual([]);
    expect(chunks.map(({ start, values, places }) => [start - NOON, [...values], places])).toEqual([
      [0, [999999999999990, 1], 1],
      [30, [10, 1], 3],
      [60, [99999999999999], 0],
    ]);
  });
});

describe('runs', () => {
  it('end at a gap, at a step back and at a time that comes again', () => {
    const rows = ['12:00,1', '12:15,2', '12:45,3', '12:30,4', '12:30,5', '12:45,6'];
    const text = ['time,import', ...rows.map((row) => `2025-05-01 ${row}`)].join('\n');
    const { chunks, findings } = readTable(intervalLayout(), text);
    expect(findings).toEqual([]);
    expect(chunks.map(({ start, values, line }) => [start - NOON, [...values], line])).toEqual([
      [0, [1, 2], 2],
      [45, [3], 4],
      [30, [4], 5],
      [30, [5, 6], 6],
    ]);
  });

  it('have at most 4096 values', () => {
    const count = 4097;
    const rows = Array.from({ length: count }, (_, at) => {
      const minute = at % 1440;
      const time = `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
      return `2025-05-0${1 + Math.floor(at / 1440)} ${time},${at}`;
    });
    const { chunks } = readTable(intervalLayout({ minutes: '1' }), ['time,import', ...rows].join('\n'));
    expect(chunks.map(({ values }) => values.length)).toEqual([4096, 1]);
    expect(valuesOf(chunks).map(([, whole]) => whole)).toEqual([...Array(count).keys()]);
  });

  it('have their missing values, and say so', () => {
    const { chunks, findings } = readTable(intervalLayout(), quarters('1', '', '#N/A', '4'));
    expect(findings.map(({ code }) => code)).toEqual(['table/no-value', 'table/spreadsheet-error']);
    expect(chunks.map(({ values }) => [...values])).toEqual([[1, NaN, NaN, 4]]);
    expect(chunks.map(({ qualities }) => [...(qualities ?? [])].map((at) => VALUE_QUALITIES[at]))).toEqual([
      ['actual', 'missing', 'missing', 'actual'],
    ]);
  });

  it('of thousands of points are handed on without keeping them all', () => {
    const layout = intervalLayout({
      header: ['point', 'time', 'import'],
      columns: [{ is: 'point' }, { is: 'date-time' }, { is: 'import', unit: 'kWh' }],
    });
    const times = ['12:00', '12:15', '12:30', '12:45'];
    const points = Array.from({ length: 70_000 }, (_, at) => `P${at}`);
    const rows = times.flatMap((time, at) => points.map((point) => `${point},2025-05-01 ${time},${at}`));
    const { chunks, findings } = readTable(layout, ['point,time,import', ...rows].join('\n'));
    expect(findings).toEqual([]);
    // 64 × 4096 = 262144 values are held at most: the 280000 of this table are handed on in two goes.
    expect(valuesOf(chunks).length).toBe(280_000);
    expect(new Set(chunks.map(({ stream }) => stream)).size).toBe(70_000);
    const last = chunks.filter(({ stream }) => stream.point === 'P69999');
    expect(valuesOf(last).map(([, whole]) => whole)).toEqual([0, 1, 2, 3]);
  });
});

describe('streams', () => {
  const columns: TableColumn[] = [
    { is: 'point' },
    { is: 'meter' },
    { is: 'date' },
    { is: 'time' },
    { is: 'import', rate: '1', unit: 'kWh' },
    { is: 'quality', words: { A: 'actual', E: 'estimated', N: 'missing' } },
    { is: 'export', unit: 'Wh' },
    { is: 'quality', words: { S: 'substituted', A: 'actual' } },
    { is: 'nothing' },
  ];
  const header = ['Point', 'Meter', 'Day', 'Time', 'T1', 'Q1', '', 'Q2', 'Note'];
  const layout = intervalLayout({
    header,
    columns,
    delimiter: ';',
    decimalMark: ',',
    dateOrder: 'day-month-year',
  });
  const text = [
    header.join(';'),
    'P;M1;1.5.2025;12:00;1,5;A;250;S;x',
    'P;M2;1.5.2025;12:00;2,5;E;0;A;',
    'P;M1;1.5.2025;12:15;3,5;N;500;A',
    'P;M2;1.5.2025;12:15;;N;1;A;;;',
    ';;;;;;;;',
    ' ; ;;;;;;;',
  ].join('\n');

  it('are one for each column of a point and a meter, as the file names them', () => {
    const { chunks, findings } = readTable(layout, text);
    expect(findings).toEqual([]);
    const told = chunks.map(({ stream, values, places, qualities, line, start }) => [
      ...[stream.point, stream.meter, stream.register, stream.quantity, stream.rate, stream.unit],
      ...[[...values], places, [...(qualities ?? [])].map((at) => VALUE_QUALITIES[at]), line, start - NOON],
    ]);
    expect(told).toEqual([
      ['P', 'M1', 'T1', 'import', '1', 'kWh', [15, NaN], 1, ['actual', 'missing'], 2, 0],
      ['P', 'M1', '7', 'export', null, 'Wh', [250, 500], 3, ['substituted', 'actual'], 2, 0],
      ['P', 'M2', 'T1', 'import', '1', 'kWh', [25, NaN], 1, ['estimated', 'missing'], 3, 0],
      ['P', 'M2', '7', 'export', null, 'Wh', [0, 1], 3, [], 3, 0],
    ]);
  });

  it('have qualities of registers', () => {
    const { registers } = readTable({ ...layout, holds: 'registers' }, text);
    expect(
      registers.map(({ stream, value, quality, minute }) => [stream.meter, value, quality, minute]),
    ).toEqual([
      ['M1', '1.5', 'actual', 720],
      ['M1', '0.250', 'substituted', 720],
      ['M2', '2.5', 'estimated', 720],
      ['M2', '0.000', 'actual', 720],
      ['M1', '0.500', 'actual', 735],
      ['M2', '0.001', 'actual', 735],
    ]);
  });
});

describe('the header', () => {
  it('is found whatever its case, spaces and quotation marks, below other lines', () => {
    const { registers, findings } = readTable(
      registerLayout({ header: ['Time', 'Import  kWh'] }),
      '\ufeffMeter,7,8\r\n\r\n"TIME "," import kWh",\r\n2025-05-01,7,\r\n',
    );
    expect(findings.map(({ code }) => code)).toEqual(['table/lines-above']);
    expect(registers.map(({ value, line }) => [value, line])).toEqual([['7', 4]]);
  });

  it('can run over lines', () => {
    const layout = registerLayout({ header: ['time', 'import\nkWh'] });
    const { registers } = readTable(layout, 'time,"import\nkWh"\n2025-05-01,7\n');
    expect(registers.map(({ value, line }) => [value, line])).toEqual([['7', 3]]);
  });

  it('has to stand within 21 lines', () => {
    const above = Array.from({ length: 21 }, () => 'note');
    const { registers, findings } = readTable(
      registerLayout(),
      [...above, 'time,import', '2025-05-01,7'].join('\n'),
    );
    expect(findings.map(({ code }) => code)).toEqual(['table/other-header']);
    expect(registers).toEqual([]);
  });

  it('need not be there where no column has a name', () => {
    const { registers, findings } = readTable(
      registerLayout({ header: ['', ''] }),
      '2025-05-01,7\n2025-06-01,8\n',
    );
    expect(findings).toEqual([]);
    expect(registers.map(({ stream, value, line }) => [stream.register, value, line])).toEqual([
      ['2', '7', 1],
      ['2', '8', 2],
    ]);
  });
});

describe('rows', () => {
  it('are read around those that cannot be, and all of those are told', () => {
    const { registers, findings } = readTable(
      registerLayout(),
      [
        'time,import',
        'x,1',
        '2025-05-01,1',
        '2025-05-02',
        '2025-05-03,=1',
        '2025-05-04,4',
        '2025-05-05,5,5',
        '2025-05-06,"6',
      ].join('\n'),
    );
    expect(registers.map(({ day, value }) => `${dayText(day)} ${value}`)).toEqual([
      '2025-05-01 1',
      '2025-05-04 4',
    ]);
    expect(
      findings.map(({ code, position }) => `${position?.line ?? 0}:${position?.column ?? 0} ${code}`),
    ).toEqual([
      '2:1 table/bad-date',
      '4:1 table/cell-count',
      '5:12 table/formula',
      '7:14 table/cell-count',
      '8:12 table/quote-not-closed',
    ]);
  });

  it('tell the place of a cell in the line on which it begins', () => {
    const { findings } = readTable(
      registerLayout({
        header: ['note', 'time', 'import'],
        columns: [{ is: 'nothing' }, { is: 'date' }, { is: 'import', unit: 'kWh' }],
      }),
      'note,time,import\n"two\nlines",2025-05-01,x\n',
    );
    expect(findings.map(({ position }) => position)).toEqual([{ line: 3, column: 19 }]);
  });

  it('end a day at 24:00', () => {
    const { registers } = readTable(registerLayout(), 'time,import\n2025-05-31 24:00,1\n');
    expect(registers.map(({ day, minute }) => [dayText(day), minute])).toEqual([['2025-06-01', 0]]);
    const { chunks } = readTable(intervalLayout({ label: 'end' }), 'time,import\n2025-05-31 24:00,1\n');
    expect(chunks.map(({ start }) => start)).toEqual([minuteOf('2025-05-31 23:45')]);
  });
});
