import { describe, expect, it } from 'vitest';
import { openCell, rowOffsets, splitRow } from './cells.ts';
import { LONGEST_CELL, LONGEST_LINE, RecordSplitter } from './record-splitter.ts';

/** The rows of a text as "line: text", and what is broken as "line:column code". */
function split(...pieces: readonly string[]): readonly string[] {
  const told: string[] = [];
  const splitter = new RecordSplitter(',', {
    row: (text, line) => told.push(`${line}: ${text}`),
    broken: (code, { line, column }) => told.push(`${line}:${column} ${code}`),
  });
  for (const piece of pieces) splitter.write(piece);
  splitter.end();
  return told;
}

describe('rows', () => {
  it.each([
    ['a,b\nc', ['1: a,b', '2: c']],
    ['\ufeffa\r\n\r\nb\rc\n', ['1: a', '3: b', '4: c']],
    ['a\r', ['1: a']],
    ['', []],
    ['\ufeff', []],
    ['a,"b\nc",d\ne', ['1: a,"b\nc",d', '3: e']],
    ['"a ""b""",c\nd', ['1: "a ""b""",c', '2: d']],
    ['a"b,c\nd', ['1: a"b,c', '2: d']],
    ['"a" ,b\n', ['1: "a" ,b']],
    ['"a\n""\n",b\nc', ['1: "a\n""\n",b', '4: c']],
  ])('of %j', (text, rows) => {
    expect(split(text)).toEqual(rows);
    expect(split(...Array.from(text))).toEqual(rows);
  });

  it('keep a return and a line feed in different pieces together', () => {
    expect(split('a\r', '\nb\r', 'c')).toEqual(['1: a', '2: b', '3: c']);
  });
});

describe('a quotation mark that is not closed', () => {
  it('leaves its row out, and reading goes on with the next line', () => {
    expect(split('a,b\nc,"d\ne,f\n"g",h\n')).toEqual([
      '1: a,b',
      '2:3 table/quote-not-closed',
      '3: e,f',
      '4: "g",h',
    ]);
  });

  it('is told where its cell begins, in a row of several lines', () => {
    expect(split('"a\nb","c\nd\n')).toEqual(['2:4 table/quote-not-closed', '3: d']);
  });

  it('is told at once where a lone mark stands in its cell', () => {
    expect(split('a,"12" kWh\nb,1\n')).toEqual(['1:3 table/quote-not-closed', '2: b,1']);
  });

  it('is told of each line for itself after that', () => {
    expect(split('"a x\n"b x\n"c x\nd\n')).toEqual([
      '1:1 table/quote-not-closed',
      '2:1 table/quote-not-closed',
      '3:1 table/quote-not-closed',
      '4: d',
    ]);
  });

  it('is given up after the longest cell there can be', () => {
    const fits = `"${'x'.repeat(LONGEST_CELL - 4)}\ny"`;
    expect(split(`${fits},a\n`)).toEqual([`1: ${fits},a`]);
    const lines = Array.from({ length: 3000 }, (_, at) => `${at},12`);
    const told = split(['"open', ...lines].join('\n'));
    expect(told[0]).toBe('1:1 table/quote-not-closed');
    expect(told.slice(1)).toEqual(lines.map((line, at) => `${at + 2}: ${line}`));
  });

  it('costs no more than reading each line twice', () => {
    const lines = Array.from({ length: 200_000 }, () => '"a');
    expect(split(lines.join('\n')).length).toBe(200_000);
  });
});

describe('a line without end', () => {
  it('is left out, and not kept', () => {
    const long = 'x'.repeat(LONGEST_LINE);
    expect(split(`${long}\nb`)).toEqual([`1: ${long}`, '2: b']);
    expect(split(`${long}x\nb`)).toEqual(['1:1 table/line-too-long', '2: b']);
    expect(split('a\n', long, long, long, 'x\nb\n')).toEqual(['1: a', '2:1 table/line-too-long', '3: b']);
    expect(split(long, 'x')).toEqual(['1:1 table/line-too-long']);
  });
});

describe('the cells of a row', () => {
  it.each([
    ['a,b', ['a', 'b'], [0, 2]],
    ['"4,1",5', ['4,1', '5'], [0, 6]],
    ['"a""b",c', ['a"b', 'c'], [0, 7]],
    ['a"b,c', ['a"b', 'c'], [0, 4]],
    [',,', ['', '', ''], [0, 1, 2]],
    ['"a" ,"b"', ['a', 'b'], [0, 5]],
    ['"a\nb",c', ['a\nb', 'c'], [0, 6]],
    ['', [''], [0]],
    ['"",', ['', ''], [0, 3]],
  ])('of %j', (text, cells, offsets) => {
    expect(splitRow(text, ',')).toEqual(cells);
    expect(rowOffsets(text, ',')).toEqual(offsets);
    expect(openCell(text.replaceAll('\n', ' '), ',', false)).toBeNull();
  });
});
