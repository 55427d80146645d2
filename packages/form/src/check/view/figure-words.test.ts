import { expect, it } from 'vitest';
import { writingFor } from '../../writing/writing.ts';
import { differenceText, figureText, isOpposite, sumText } from './figure-words.ts';

const writing = writingFor('en-IN', 'INR');

it('writes money to the coin, and units and readings as they are', () => {
  expect(figureText('line.energy', { numerator: 36, denominator: 5 }, writing)).toBe('7.20');
  expect(figureText('payable', { numerator: 230, denominator: 1 }, writing)).toBe('230.00');
  expect(figureText('reading.import.present', { numerator: 4_640_300, denominator: 1000 }, writing)).toBe(
    '4,640.3',
  );
  expect(figureText('units.billed', { numerator: 1, denominator: 3 }, writing)).toBe('1/3');
  expect(sumText({ numerator: 58_023, denominator: 100 }, writing)).toBe('₹580.23');
});

it('gives a difference its sign, and says what is not known', () => {
  const one = { name: 'line.fuel', printed: { numerator: 1, denominator: 1 }, agrees: false } as const;
  const off = (numerator: number) =>
    differenceText({ ...one, computed: one.printed, difference: { numerator, denominator: 100 } }, writing);
  expect([off(8640), off(-8640)]).toEqual(['+86.40', '−86.40']);
  expect(differenceText({ ...one, computed: null, difference: null }, writing)).toBe('not known');
  const same = { ...one, computed: one.printed, difference: { numerator: 0, denominator: 1 }, agrees: true };
  expect(differenceText(same, writing)).toBe('');
});

it('knows a line that was typed without its minus, however it is written', () => {
  expect(isOpposite({ numerator: 36, denominator: 1 }, { numerator: -3600, denominator: 100 })).toBe(true);
  expect(isOpposite({ numerator: 36, denominator: 1 }, { numerator: 36, denominator: 1 })).toBe(false);
  expect(isOpposite({ numerator: 0, denominator: 1 }, { numerator: 0, denominator: 1 })).toBe(false);
  expect(isOpposite({ numerator: 75n, denominator: 100 }, { numerator: -3, denominator: 4 })).toBe(true);
});
