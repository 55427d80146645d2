import { describe, expect, it } from 'vitest';
import { characters } from '../../../../tests/laws/meter-files/read-obis.ts';
import { lineSplitter, type Line } from './lines.ts';

function linesOf(pieces: readonly string[], longest = 100): readonly Line[] {
  const lines: Line[] = [];
  const splitter = lineSplitter(longest, (line) => lines.push(line));
  pieces.forEach(splitter.write);
  splitter.end();
  return lines;
}

const shown = (lines: readonly Line[]): readonly string[] =>
  lines.map(({ text, end, number }) => `${String(number)} ${text}${JSON.stringify(end)}`);

describe('lines', () => {
  it.each([
    ['a\r\nb\nc\rd', ['1 a"\\r\\n"', '2 b"\\n"', '3 c"\\r"', '4 d""']],
    ['', []],
    ['\n\n', ['1 "\\n"', '2 "\\n"']],
    ['\r\r\n', ['1 "\\r"', '2 "\\r\\n"']],
    ['a\r', ['1 a"\\r"']],
    ['\ufeffa\n\ufeffb', ['1 a"\\n"', '2 \ufeffb""']],
  ])('of %j are told by their ends, however the text is cut', (text, expected) => {
    expect(shown(linesOf([text]))).toEqual(expected);
    expect(shown(linesOf(characters(text)))).toEqual(expected);
    for (let at = 0; at <= text.length; at += 1) {
      expect(shown(linesOf([text.slice(0, at), '', text.slice(at)]))).toEqual(expected);
    }
  });

  it.each([
    ['abc', 'abc', false],
    ['abcd', 'abcd', false],
    ['abcde', 'abcd', true],
  ])('are cut behind the longest: %s', (text, kept, isCut) => {
    const expected = { text: kept, number: 1, column: 1, end: '\n', isCut };
    expect(linesOf([`${text}\n`], 4)).toEqual([expected]);
    expect(linesOf(characters(`${text}\n`), 4)).toEqual([expected]);
    expect(linesOf([`${text}\n`, 'x'], 4)[1]).toEqual({
      text: 'x',
      number: 2,
      column: 1,
      end: '',
      isCut: false,
    });
  });

  it('are no more once the file has ended', () => {
    const splitter = lineSplitter(4, () => undefined);
    splitter.end();
    expect(() => {
      splitter.write('a');
    }).toThrow(RangeError);
    expect(splitter.end).toThrow(RangeError);
  });
});
