import { describe, expect, it } from 'vitest';
import type { TableLayout } from './layout-document.ts';
import { movePoint, NumberCell } from './number-cell.ts';

type Marks = Pick<TableLayout, 'decimalMark' | 'grouping'>;

const POINT: Marks = { decimalMark: '.', grouping: '' };
const COMMA: Marks = { decimalMark: ',', grouping: '' };
const THOUSANDS: Marks = { decimalMark: '.', grouping: ',' };
const GERMAN: Marks = { decimalMark: ',', grouping: '.' };
const SWISS: Marks = { decimalMark: '.', grouping: "'" };
const FRENCH: Marks = { decimalMark: ',', grouping: ' ' };

describe('a number', () => {
  it.each([
    ['0', POINT, 0, 0, '0'],
    ['12.345', POINT, 12345, 3, '12.345'],
    [' 12.30 ', POINT, 1230, 2, '12.30'],
    ['007.5', POINT, 75, 1, '007.5'],
    ['.5', POINT, 5, 1, '0.5'],
    ['5.', POINT, 5, 0, '5'],
    ['-0.25', POINT, -25, 2, '-0.25'],
    ['\u22120.25', POINT, -25, 2, '-0.25'],
    ['-0.0', POINT, 0, 1, '0.0'],
    ['+5', POINT, 5, 0, '5'],
    ['12,5', COMMA, 125, 1, '12.5'],
    ['1,234.5', THOUSANDS, 12345, 1, '1234.5'],
    ['1,16,444', THOUSANDS, 116444, 0, '116444'],
    ['1234.5', THOUSANDS, 12345, 1, '1234.5'],
    ['1.234.567,89', GERMAN, 123456789, 2, '1234567.89'],
    ['1\u2019234.5', SWISS, 12345, 1, '1234.5'],
    ['1\u202f234,5', FRENCH, 12345, 1, '1234.5'],
    ['999999999999999', POINT, 999999999999999, 0, '999999999999999'],
    ['99999999999999.9', POINT, 999999999999999, 1, '99999999999999.9'],
    ['0.000000000000001', POINT, 1, 15, '0.000000000000001'],
    ['0.1000000000000000', POINT, 100000000000000, 15, '0.1000000000000000'],
  ] as const)('%j is read by its digits', (text, marks, whole, places, plain) => {
    const cell = new NumberCell(marks);
    expect(cell.read(text)).toBe('number');
    expect([cell.whole, cell.places, cell.text(text)]).toEqual([whole, places, plain]);
    expect(Object.is(cell.whole, -0)).toBe(false);
  });
});

describe('a cell that is no number', () => {
  it.each([
    ['', POINT, 'empty'],
    ['  ', POINT, 'empty'],
    ['12,5', POINT, 'table/number-marks'],
    ['12.5', COMMA, 'table/number-marks'],
    ['1,5', THOUSANDS, 'table/number-marks'],
    ['12,34', THOUSANDS, 'table/number-marks'],
    ['1.234', COMMA, 'table/number-marks'],
    ['1.2.3', POINT, 'table/number-marks'],
    ['1 234', POINT, 'table/number-marks'],
    ['1000000000000000', POINT, 'table/too-many-digits'],
    ['0.30000000000000004', POINT, 'table/too-many-digits'],
    ['0.0000000000000001', POINT, 'table/too-many-digits'],
    ['#N/A', POINT, 'table/spreadsheet-error'],
    ['#####', POINT, 'table/spreadsheet-error'],
    ['1,2E+05', COMMA, 'table/exponent'],
    ['1.2e5', POINT, 'table/exponent'],
    ['=A1+B1', POINT, 'table/formula'],
    ['@SUM(A1)', POINT, 'table/formula'],
    ['+A1', POINT, 'table/formula'],
    ['.', POINT, 'table/bad-number'],
    ['-', POINT, 'table/bad-number'],
    ['12 kWh', POINT, 'table/bad-number'],
    ['NaN', POINT, 'table/bad-number'],
    ['0x10', POINT, 'table/bad-number'],
    ['٣', POINT, 'table/bad-number'],
  ] as const)('%j is told as what it is', (text, marks, kind) => {
    expect(new NumberCell(marks).read(text)).toBe(kind);
  });
});

describe('movePoint', () => {
  it.each([
    ['5', 0, '5'],
    ['5', -3, '0.005'],
    ['12345.6', -3, '12.3456'],
    ['006342', -3, '006.342'],
    ['1.5', 3, '1500'],
    ['1.23456', 3, '1234.56'],
    ['-0.5', 3, '-0500'],
  ])('%s by %d is %s', (text, by, moved) => {
    expect(movePoint(text, by)).toBe(moved);
  });
});
