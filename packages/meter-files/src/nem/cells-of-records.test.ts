import { describe, expect, it } from 'vitest';
import { momentText, readDay, readMoment } from './moment.ts';
import { readQuality, UNKNOWN_QUALITY, VARIABLE } from './quality.ts';
import { cutLine, placeOf, shown } from './record.ts';
import {
  advance,
  compareNumbers,
  isAdvance,
  kilowattHours,
  readFileNumber,
  type FileNumber,
} from './register-text.ts';
import { keepStreams } from './streams.ts';
import { readUnit } from './unit.ts';

describe('cutLine', () => {
  it.each([
    ['300,20240101,1.5', ['300', '20240101', '1.5']],
    ['', ['']],
    ['a,"b,c",', ['a', 'b,c', '']],
    ['"a ""b""",c', ['a "b"', 'c']],
    ['a,b"c', ['a', 'b"c']],
  ])('cuts %j', (line, cells) => {
    expect(cutLine(line)).toEqual(cells);
  });

  it.each(['a,"b', 'a,"b"c,d', '"'])('refuses %j', (line) => {
    expect(cutLine(line)).toBeNull();
  });

  it('tells where a cell stands, behind others in quotation marks', () => {
    const text = '500,"O, P",x';
    const record = { line: 7, text, cells: cutLine(text) ?? [] };
    expect([0, 1, 2, 3].map((index) => placeOf(record, index).column)).toEqual([1, 5, 12, 1]);
    expect(placeOf(record, 2).line).toBe(7);
  });

  it('cuts long texts for a finding', () => {
    expect(shown('x'.repeat(60))).toBe('x'.repeat(60));
    expect(shown('x'.repeat(61))).toBe(`${'x'.repeat(59)}…`);
  });
});

describe('readQuality', () => {
  // VALUE_QUALITIES: actual, estimated, substituted, edited, missing
  it.each([
    ['A', 0],
    ['E64', 1],
    ['S14', 2],
    ['F14', 2],
    ['N', 4],
    ['V', VARIABLE],
    ['', UNKNOWN_QUALITY],
    ['X', UNKNOWN_QUALITY],
    ['a', UNKNOWN_QUALITY],
    ['A1', UNKNOWN_QUALITY],
    ['E641', UNKNOWN_QUALITY],
    ['ESx', UNKNOWN_QUALITY],
    ['actual', UNKNOWN_QUALITY],
    ['constructor', UNKNOWN_QUALITY],
  ])('reads %j as %d', (text, quality) => {
    expect(readQuality(text)).toBe(quality);
  });
});

describe('readUnit', () => {
  it.each([
    ['kWh', 'energy', 0],
    ['KWH', 'energy', 0],
    ['Wh', 'energy', 3],
    ['mwh', 'energy', -3],
    ['kVArh', 'other', 0],
    ['pf', 'other', 0],
    ['', 'unknown', 0],
    ['kW h', 'unknown', 0],
    ['constructor', 'unknown', 0],
  ])('reads %j as %s', (text, kind, shift) => {
    expect(readUnit(text)).toEqual({ kind, shift });
  });
});

describe('readDay and readMoment', () => {
  // Spreadsheet serials count from 1899-12-30; 1970-01-01 is 25569, 2004-02-29 is 38046.
  it('count days from 1970', () => {
    expect(readDay('19700101')).toBe(0);
    expect(readDay('20040229')).toBe(38046 - 25569);
  });

  it.each([
    '',
    '20030229',
    '20031301',
    '20030100',
    '2003010',
    '200301011',
    '2003-1-1',
    '2003 101',
    'abcdefgh',
  ])('refuse the day %j', (text) => {
    expect(readDay(text)).toBeNull();
  });

  it.each([
    ['19700102093055', 1, 570, '1970-01-02 09:30:55'],
    ['197001022359', 1, 1439, '1970-01-02 23:59:00'],
    ['19700102000000', 1, 0, '1970-01-02 00:00:00'],
    ['19700102', 1, null, '1970-01-02'],
  ])('read %s', (text, day, minute, printed) => {
    const moment = readMoment(text);
    expect(moment).toMatchObject({ day, minute });
    expect(moment === null ? '' : momentText(moment)).toBe(printed);
  });

  it.each([
    '',
    '19700102240000',
    '19700102006000',
    '19700102000060',
    '1970010209',
    '1970010209305',
    '19700230000000',
  ])('refuse the time %j', (text) => {
    expect(readMoment(text)).toBeNull();
  });
});

describe('numbers of registers', () => {
  const number = (text: string): FileNumber => {
    const read = readFileNumber(text);
    if (typeof read === 'string') throw new RangeError(read);
    return read;
  };

  it('are refused where they are none', () => {
    expect(['', '-1', 'x', '1234567890123456'].map(readFileNumber)).toEqual([
      'no-number',
      'no-number',
      'no-number',
      'too-many',
    ]);
  });

  it.each([
    ['006342.8', '007654.9', 13121n, 1, null],
    ['0000950', '0010015', 9065n, 0, null],
    ['10', '10.00', 0n, 2, null],
    // 99950 → 00020: 50 to 100000, and 20 more.
    ['99950', '00020', 70n, 0, '99999'],
    ['99950', '20', 70n, 0, '99999'],
    ['999.9', '000.1', 2n, 1, '999'],
    // 10^15 − 999,999,999,999,999 + 0.5
    ['999999999999999', '000000000000000.5', 15n, 1, '9'.repeat(15)],
  ])('%s and then %s lie %d of %d decimals apart', (previous, current, whole, places, full) => {
    expect(advance(number(previous), number(current))).toEqual({ whole, places, full });
  });

  it('are compared whatever their decimals', () => {
    expect(compareNumbers(number('1.50'), number('01.5'))).toBe(0);
    expect(compareNumbers(number('1.49'), number('1.5'))).toBe(-1);
    expect(compareNumbers(number('2'), number('1.999'))).toBe(1);
    const between = advance(number('006342.8'), number('007654.9'));
    expect(['1312.1', '1312.100', '1312', '1312.11'].map((text) => isAdvance(number(text), between))).toEqual(
      [true, true, false, false],
    );
  });

  it.each([
    ['006342.8', 0, '006342.8'],
    ['1.', 0, '1'],
    ['.5', 0, '0.5'],
    ['006342', 3, '006.342'],
    ['5', 3, '0.005'],
    ['.5', 3, '0.0005'],
    ['12345.6', 3, '12.3456'],
    ['01.5', -3, '01500'],
    ['1.23456', -3, '1234.56'],
    ['7', -3, '7000'],
  ])('%s with the point moved by %d is %s', (text, shift, moved) => {
    expect(kilowattHours(text, shift)).toBe(moved);
  });
});

describe('keepStreams', () => {
  const fields = {
    point: 'N',
    meter: 'M',
    register: 'E1',
    quantity: 'import',
    rate: null,
    unit: 'kWh',
  } as const;

  it('keeps one object for each, and no more than 10,000', () => {
    const streams = keepStreams<object>();
    const of = (point: string, apart = ''): object | null =>
      streams.of({ ...fields, point }, apart, (own) => own);
    const first = of('0');
    expect(of('0')).toBe(first);
    expect(first).toEqual({ ...fields, point: '0' });
    expect(of('0', 'x')).not.toBe(first);
    for (let at = 2; at < 10_000; at += 1) expect(of(String(at))).not.toBeNull();
    expect(of('one more')).toBeNull();
    expect(of('0')).toBe(first);
  });
});
