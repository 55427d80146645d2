import { expect, it } from 'vitest';
import { isDay, keptDay, keptNumber } from './typed-texts.ts';

it.each([
  ['3.3', '3.3'],
  ['3,3', '3.3'],
  [' 1,16,444 ', '116444'],
  ['007.5', '7.5'],
  ['00', '0'],
  ['0.78', '0.78'],
  ['४२०', '420'],
  ['5 kWp', '5'],
  ['', ''],
  // What cannot be read stays as it is, and nothing of it is lost.
  ['12,892', '12,892'],
  ['4x', '4x'],
  ['5.', '5.'],
])('keeps the number %s as %s', (typed, kept) => {
  expect(keptNumber(typed)).toBe(kept);
});

it.each([
  ['2026-05-01', '2026-05-01'],
  ['1 May 2026', '2026-05-01'],
  ['1/5/26', '2026-05-01'],
  ['29 Feb 2025', '29 Feb 2025'],
  ['May', 'May'],
  ['', ''],
])('keeps the day %s as %s', (typed, kept) => {
  expect(keptDay(typed)).toBe(kept);
});

it('knows a day of the calendar', () => {
  expect(['2024-02-29', '2025-02-29', ''].map(isDay)).toEqual([true, false, false]);
});
