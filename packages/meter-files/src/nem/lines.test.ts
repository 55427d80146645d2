import { describe, expect, it } from 'vitest';
import { LONGEST_LINE, lineSplitter } from './lines.ts';

/** Lines as "number text", too long ones as "number too long". */
function linesOf(pieces: Iterable<string>): readonly string[] {
  const lines: string[] = [];
  const splitter = lineSplitter({
    line: (text, number) => lines.push(`${number} ${text}`),
    tooLong: (number) => lines.push(`${number} too long`),
  });
  for (const piece of pieces) splitter.write(piece);
  splitter.end();
  return lines;
}

function* times(count: number, piece: string): Generator<string> {
  for (let at = 0; at < count; at += 1) yield piece;
}

describe('lineSplitter', () => {
  it.each([
    ['', []],
    ['a', ['1 a']],
    ['a\n', ['1 a']],
    ['\n', ['1 ']],
    ['a\nb', ['1 a', '2 b']],
    ['a\r\nb\r\n', ['1 a', '2 b']],
    ['a\rb\r', ['1 a', '2 b']],
    ['a\n\rb', ['1 a', '2 ', '3 b']],
    ['a\r\r\nb', ['1 a', '2 ', '3 b']],
    ['a\n\r\n\nb', ['1 a', '2 ', '3 ', '4 b']],
    ['\ufeffa\nb', ['1 a', '2 b']],
    ['\ufeff\n\ufeffb', ['1 ', '2 \ufeffb']],
    ['\r\n', ['1 ']],
  ])('cuts %j, whole, in two and character by character', (text, lines) => {
    expect(linesOf([text])).toEqual(lines);
    for (let at = 0; at <= text.length; at += 1)
      expect(linesOf([text.slice(0, at), '', text.slice(at)])).toEqual(lines);
    expect(linesOf(text)).toEqual(lines);
  });

  it('takes a line of as many characters as are allowed, and leaves out one of one more', () => {
    const long = 'x'.repeat(LONGEST_LINE);
    expect(linesOf([long, '\nb'])).toEqual([`1 ${long}`, '2 b']);
    expect(linesOf([`${long}x\nb\n`])).toEqual(['1 too long', '2 b']);
    expect(linesOf([long, 'x', '\nb\n'])).toEqual(['1 too long', '2 b']);
    expect(linesOf([`a\n${long}`, 'x'])).toEqual(['1 a', '2 too long']);
  });

  it('forgets a line of 50 million characters, once it is too long, and goes on behind it', () => {
    expect(linesOf([...times(50, 'x'.repeat(LONGEST_LINE)), '\r', '\nb'])).toEqual(['1 too long', '2 b']);
  });

  it('reads a line of 1,000,000 characters in as many pieces', () => {
    // Were every piece to cost as much as what is kept, this would take hours.
    const [line = ''] = linesOf(times(LONGEST_LINE, 'x'));
    expect(line.length).toBe(LONGEST_LINE + 2);
  });
});
