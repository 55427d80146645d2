import { expect, it } from 'vitest';
import { faultReport } from './fault.ts';
import { counted, listed, streamWords, unitWords } from './words.ts';

it('counts and lists in words', () => {
  expect([0, 1, 2].map((count) => counted(count, 'day'))).toEqual(['0 days', '1 day', '2 days']);
  expect([[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map(listed)).toEqual(['', 'a', 'a and b', 'a, b and c']);
});

it('says what registers count, in units of 1 kWh', () => {
  expect(streamWords({ quantity: 'export', rate: '2' })).toBe('given to the grid, rate 2');
  expect(unitWords({ quantity: 'import', unit: 'Wh' })).toBe('units');
  expect(unitWords({ quantity: 'other', unit: 'VArh' })).toBe('VArh');
});

it('reports a fault without the way through our code', () => {
  expect(faultReport('reading 12 bytes', new RangeError('odd'))).toBe(
    'Unitbook, reading a meter file\nDoing: reading 12 bytes\nFault: RangeError: odd',
  );
  expect(faultReport('x', 'text')).toContain('Fault: Thrown: text');
});
