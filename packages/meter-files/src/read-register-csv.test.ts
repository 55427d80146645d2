import { describe, expect, it } from 'vitest';
import { LARGEST_FILE } from './decode.ts';
import { readRegisterCsv } from './read-register-csv.ts';

const codes = (input: string | Uint8Array): readonly string[] =>
  readRegisterCsv(input).findings.map((finding) => finding.code);

describe('a list that can be read', () => {
  it('gives a row for each line, as typed', () => {
    const { value, findings } = readRegisterCsv(
      'date,import,export,generation\n2025-05-01,4342.1,2935.8,7318.0\n',
    );
    expect(value).toEqual([{ date: '2025-05-01', import: '4342.1', export: '2935.8', generation: '7318.0' }]);
    expect(findings).toEqual([]);
  });

  it('finds the columns by name, in any order, case and spacing', () => {
    const { value, findings } = readRegisterCsv(
      ' EXPORT ; Printed Days;Confirmed;date;Import;STATUS\n2;31;reading/same-as-before:import reading/days-unusual:date;2025-05-01;1;Estimated',
    );
    expect(value).toEqual([
      {
        date: '2025-05-01',
        import: '1',
        export: '2',
        status: 'estimated',
        printedDays: '31',
        confirmed: ['reading/same-as-before:import', 'reading/days-unusual:date'],
      },
    ]);
    expect(findings).toEqual([]);
  });

  it.each([
    [',', '"4342,1"'],
    [';', '4342,1'],
    ['\t', '4342,1'],
  ])('knows the separator %j from the header', (mark, cell) => {
    const read = readRegisterCsv(
      ['date,import,export'.replaceAll(',', mark), ['2025-05-01', cell, '1'].join(mark)].join('\n'),
    );
    expect(read.source?.header.delimiter).toBe(mark);
    expect(read.value[0]?.import).toBe('4342,1');
  });

  it('takes CRLF, a mark at the beginning, blank lines and empty cells at the end', () => {
    const { value, findings } = readRegisterCsv(
      '\ufeff\r\ndate,import,export,,\r\n\r\n2025-05-01,1,2,,\r\n,,,,\r\n2025-06-01,3,4\r\n',
    );
    expect(value.map((row) => row.import)).toEqual(['1', '3']);
    expect(findings).toEqual([]);
  });

  it('takes UTF-16 with its mark and says so', () => {
    const text = '\ufeffdate,import,export\n2025-05-01,1,2';
    const little = Uint8Array.from(Buffer.from(text, 'utf16le'));
    const big = Uint8Array.from(Buffer.from(text, 'utf16le').swap16());
    for (const bytes of [little, big]) {
      expect(readRegisterCsv(bytes).value).toEqual([{ date: '2025-05-01', import: '1', export: '2' }]);
      expect(codes(bytes)).toEqual(['readings-file/utf-16']);
    }
  });

  it('keeps the line breaks of a quoted cell within the cell', () => {
    const { value } = readRegisterCsv('date,import,export\n"2025-\n05-01","1","2"\n2025-06-01,3,4');
    expect(value.map((row) => row.date)).toEqual(['2025-\n05-01', '2025-06-01']);
  });

  it('reads a hundred thousand rows', () => {
    const rows = Array.from({ length: 100_000 }, (_, index) => `2025-05-01,${String(index)},2`);
    expect(readRegisterCsv(['date,import,export', ...rows].join('\n')).value.length).toBe(100_000);
  });
});

describe('a file that is no list', () => {
  it.each([
    ['', 'readings-file/empty'],
    [' \r\n\t\r\n', 'readings-file/empty'],
    ['2025-05-01,1,2', 'readings-file/no-header'],
    ['date|import|export\n', 'readings-file/no-header'],
    ['dat\0e', 'readings-file/binary'],
  ])('says of %j: %s', (text, code) => {
    expect(codes(text)).toEqual([code]);
    expect(readRegisterCsv(text).source).toBeNull();
  });

  it.each([
    [[0x25, 0x50, 0x44, 0x46, 0x2d], 'a PDF document'],
    [[0xff, 0xd8, 0xff, 0xe0], 'a picture'],
    [[0x50, 0x4b, 3, 4, 20], 'a workbook or another packed file'],
    [[0x64, 1, 2], 'bytes that are no text'],
  ])('tells what the bytes %j are', (bytes, found) => {
    const [finding] = readRegisterCsv(Uint8Array.from(bytes)).findings;
    expect([finding?.code, finding?.found]).toEqual(['readings-file/binary', found]);
  });

  it.each([
    [Buffer.from('date,import', 'utf16le'), 'text in UTF-16 without the mark that says so'],
    [Buffer.from([0x64, 0xe9, 0x65]), 'bytes that are no UTF-8'],
    [
      Buffer.from([0xff, 0xfe, 0x64, 0x00, 0x65]),
      'bytes that are no UTF-16, in spite of the mark at the beginning',
    ],
  ])('tells an encoding it cannot read: %#', (bytes, found) => {
    const [finding] = readRegisterCsv(Uint8Array.from(bytes)).findings;
    expect([finding?.code, finding?.found]).toEqual(['readings-file/encoding', found]);
  });

  it('takes a file of the largest size and refuses one byte more', () => {
    const header = 'date,import,export\n';
    const largest = header + ' '.repeat(LARGEST_FILE - header.length);
    expect(codes(largest)).toEqual([]);
    expect(codes(`${largest} `)).toEqual(['readings-file/too-large']);
  });
});

describe('columns', () => {
  it('lists a column that is not known, with those that are, and reads on', () => {
    const { value, findings } = readRegisterCsv('date,import,export,note\n2025-05-01,1,2,x');
    expect(value.length).toBe(1);
    expect(findings.map(({ code, position }) => [code, position])).toEqual([
      ['readings-file/unknown-column', { line: 1, column: 20 }],
    ]);
    expect(findings[0]?.expected).toContain(
      'date, import, export, generation, event, status, printed_days, confirmed, import_1, export_1 and so on for rates',
    );
  });

  it('reads no row when a column is missing or stands twice, and says all of it', () => {
    const text = 'date,import,import,foo\n2025-05-01,1,2,3';
    expect(readRegisterCsv(text).value).toEqual([]);
    expect(codes(text)).toEqual([
      'readings-file/same-column-twice',
      'readings-file/unknown-column',
      'readings-file/missing-column',
    ]);
  });
});

describe('rows that cannot be read', () => {
  const read = readRegisterCsv(
    [
      'date,import,export,status,confirmed',
      '2025-04-01,1,2',
      '2025-05-01;3;4;;',
      '2025-06-01,5,6,guessed,',
      '2025-07-01,7,8,,yes',
      '2025-08-01,9,10,,,11',
      '2025-09-01,11,12,=A1,',
      '2025-10-01,13,14,,',
      '2025-11-01,"15,16,,',
      '2025-12-01,17,18,,',
    ].join('\n'),
  );

  it('tells each with its place', () => {
    expect(read.findings.map(({ code, position }) => [code, position?.line, position?.column])).toEqual([
      ['readings-file/mixed-separators', 3, 1],
      ['readings-file/status', 4, 16],
      ['readings-file/confirmed', 5, 17],
      ['readings-file/too-many-cells', 6, 19],
      ['readings-file/formula', 7, 18],
      ['readings-file/quote-not-closed', 9, 12],
    ]);
  });

  it('returns the rows around them, and where they are missing', () => {
    expect(read.value.map((row) => row.date)).toEqual(['2025-04-01', '2025-10-01']);
    expect(read.gaps).toEqual([1, 2]);
  });

  it('leaves a formula in a register to the engine, as typed', () => {
    expect(readRegisterCsv('date,import,export\n2025-04-01,=1+1,@SUM(A1)').value[0]?.import).toBe('=1+1');
  });

  it('takes commas in a line separated by semicolons for decimal marks', () => {
    expect(codes('date;import;export\n2025-04-01;1,5;2,5')).toEqual([]);
    expect(codes('date;import;export\n2025-04-01,15,25')).toEqual(['readings-file/mixed-separators']);
  });
});

it('reads rates, changes of meters and estimates of one register', () => {
  const text = [
    'date,Import 1,import_2,export,event,status',
    '2025-04-01,300,200,5,,estimated:import+export',
    '2025-04-16,310,205,9,final,',
    '2025-04-16,0,0,0,First,',
    '2025-05-01,10,20,30,,actual',
  ].join('\n');
  const { value, findings } = readRegisterCsv(text);
  expect(findings).toEqual([]);
  expect(value).toEqual([
    {
      date: '2025-04-01',
      export: '5',
      rates: { import: { '1': '300', '2': '200' } },
      estimated: ['import', 'export'],
    },
    { date: '2025-04-16', export: '9', rates: { import: { '1': '310', '2': '205' } }, event: 'final' },
    { date: '2025-04-16', export: '0', rates: { import: { '1': '0', '2': '0' } }, event: 'first' },
    { date: '2025-05-01', export: '30', rates: { import: { '1': '10', '2': '20' } }, status: 'actual' },
  ]);
});

it('says which event or status it cannot read, and where', () => {
  const { findings, source } = readRegisterCsv(
    'date,import,export_a,event,status\n2025-04-01,3,2,last,guess:import',
  );
  expect(findings.map(({ code, position }) => [code, position?.line, position?.column])).toEqual([
    ['readings-file/event', 2, 16],
    ['readings-file/status', 2, 21],
  ]);
  expect(source?.header.columns).toEqual(['date', 'import', 'export_a', 'event', 'status']);
});

it.each(['kWh', 'Wh', 'total', 'units', 'energy'])('takes "import %s" for no rate', (word) => {
  const { source, findings } = readRegisterCsv(`date,import ${word},export_${word}\n2025-04-01,1,2`);
  expect(source).toBeNull();
  expect(findings.map(({ code }) => code)).toContain('readings-file/unknown-column');
});
