import { describe, expect, it } from 'vitest';
import { addLine, linesText, noLines } from './line-ranges.ts';

const textOf = (lines: readonly number[]): string => {
  const ranges = noLines();
  for (const line of lines) addLine(ranges, line);
  return linesText(ranges);
};

/** 1, 3, 5 …: each a range of its own. */
const odd = (count: number): number[] => Array.from({ length: count }, (_, index) => 2 * index + 1);

describe('lines', () => {
  it.each([
    [[], 'no line'],
    [[3], 'line 3'],
    [[3, 3], 'line 3'],
    [[3, 4], 'lines 3 to 4'],
    [[3, 4, 9, 2], 'lines 3 to 4, 9, 2'],
  ])('of %j are %j', (lines, text) => {
    expect(textOf(lines)).toBe(text);
  });

  it('are counted from the twenty-first range on', () => {
    const twenty = odd(20);
    const text = `lines ${twenty.join(', ')}`;
    expect(textOf(twenty)).toBe(text);
    // The last range can still grow, as long as nothing lies behind it.
    expect(textOf([...twenty, 40])).toBe(`lines ${odd(19).join(', ')}, 39 to 40`);
    expect(textOf([...twenty, 41, 43, 43])).toBe(`${text} and 2 more, the last of them 43`);
    expect(textOf([...twenty, 41, 40])).toBe(`${text} and 2 more, the last of them 40`);
  });
});
