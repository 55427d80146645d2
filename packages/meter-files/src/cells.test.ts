import { describe, expect, it } from 'vitest';
import { cellOffsets, splitCells } from './cells.ts';

describe('cellOffsets', () => {
  it.each([
    ['', [0]],
    ['a,b', [0, 2]],
    ['"4,1",5', [0, 6]],
    ['"a""b",c', [0, 7]],
    ['a"b,c', [0, 4]],
    [',,', [0, 1, 2]],
  ])('of %j are %j', (line, offsets) => {
    expect(cellOffsets(line, ',')).toEqual(offsets);
  });
});

describe('splitCells', () => {
  it('takes quotation marks and spaces off', () => {
    expect(splitCells(' a ,"b ""c""",', ',')).toEqual(['a', 'b "c"', '']);
  });
});
