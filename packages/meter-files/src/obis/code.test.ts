import { describe, expect, it } from 'vitest';
import { leadingObis, obisKey, parseObis } from './code.ts';

const groups = (text: string): readonly (number | null)[] | null => {
  const code = parseObis(text);
  return code === null ? null : [code.a, code.b, code.c, code.d, code.e, code.f];
};

describe('a code', () => {
  it.each([
    ['1-0:1.8.1*255', [1, 0, 1, 8, 1, 255]],
    ['1-0:1.8.1', [1, 0, 1, 8, 1, null]],
    ['0-1:24.2.1', [0, 1, 24, 2, 1, null]],
    ['0:96.7.19', [null, 0, 96, 7, 19, null]],
    ['1.8.0', [null, null, 1, 8, 0, null]],
    ['1.8', [null, null, 1, 8, null, null]],
    ['1.8.1*1', [null, null, 1, 8, 1, 1]],
    ['1.8.1&05', [null, null, 1, 8, 1, 5]],
    ['1.0.1.8.0.255', [1, 0, 1, 8, 0, 255]],
    ['1-0:1.8.0.255', [1, 0, 1, 8, 0, 255]],
    ['01.08.00', [null, null, 1, 8, 0, null]],
    // IEC 62056-6-1: C, F, L and P stand for 96 to 99.
    ['C.1.0', [null, null, 96, 1, 0, null]],
    ['F.F', [null, null, 97, 97, null, null]],
    ['255.255.255', [null, null, 255, 255, 255, null]],
  ])('%s is read group by group', (text, expected) => {
    expect(groups(text)).toEqual(expected);
  });

  it.each([
    ['180'],
    [''],
    ['1.8.'],
    ['256.8.0'],
    ['1.8.256'],
    ['1-256:1.8.0'],
    ['1.8.0 '],
    [' 1.8.0'],
    ['1-0:1:8.0'],
    ['1,8,0'],
    ['1.8.0*'],
    ['1.8.0.1.2'],
    ['-1.8.0'],
    ['12892.4'],
    ['D.8.0'],
    ['c.1.0'],
    ['١.٨.٠'],
  ])('%j is none', (text) => {
    expect(parseObis(text)).toBeNull();
  });

  it.each([
    ['1.8.0(004342.1*kWh)', 5],
    ['1-0:1.8.0*255 4342.1', 13],
    ['1.8.0: 4342.1', 5],
    ['1.8.0:4342.1', 5],
    ['1.0.1.8.0.255 7', 13],
  ])('begins %j and takes %i characters', (line, length) => {
    expect(leadingObis(line)?.length).toBe(length);
  });

  it.each([['1.8.0.4342'], ['1.8.0-4342'], ['1.8.0_'], ['12892.4'], ['2025-05-01']])(
    'does not begin %j',
    (line) => {
      expect(leadingObis(line)).toBeNull();
    },
  );

  it.each([
    ['1.8.0', '1-0:1.8.0'],
    ['1.8', '1-0:1.8.0'],
    ['1-0:1.8.0*255', '1-0:1.8.0'],
    ['1.0.1.8.0.255', '1-0:1.8.0'],
    ['1.8.0*1', '1-0:1.8.0*1'],
    ['1-1:1.8.0', '1-1:1.8.0'],
    ['0-0:1.8.0', '0-0:1.8.0'],
  ])('%s is filled in as %s', (text, key) => {
    const code = parseObis(text);
    expect(code === null ? null : obisKey(code)).toBe(key);
  });
});
