import { describe, expect, it } from 'vitest';
import { dayText } from '../quantity/index.ts';
import { readTypedDay } from './day-text.ts';

function read(text: string): readonly (string | null)[] | null {
  const typed = readTypedDay(text);
  return typed === null ? null : [typed.day, typed.other].map((day) => (day === null ? null : dayText(day)));
}

describe('days as people type them', () => {
  it.each([
    ['2025-05-01'],
    [' 2025-05-01 '],
    ['1 May 2025'],
    ['01 may 2025'],
    ['1st May 2025'],
    ['1-May-2025'],
    ['1 May, 2025'],
    ['1.May.2025'],
  ])('reads "%s" as 1 May 2025, in one way only', (text) => {
    expect(read(text)).toEqual(['2025-05-01', null]);
  });

  it.each([
    ['2 September 2025', '2025-09-02'],
    ['3rd Sept. 2025', '2025-09-03'],
    ['22nd February 2024', '2024-02-22'],
    ['29 Feb 2024', '2024-02-29'],
    ['13/05/2025', '2025-05-13'],
    ['31.12.2024', '2024-12-31'],
    ['5/5/2025', '2025-05-05'],
    ['05/13/2025', '2025-05-13'],
    ['31/12/24', '2024-12-31'],
    ['1 May 25', '2025-05-01'],
  ])('reads "%s" as %s, in one way only', (text, day) => {
    expect(read(text)).toEqual([day, null]);
  });

  it.each([
    ['1/5/2025', '2025-05-01', '2025-01-05'],
    ['01-05-2025', '2025-05-01', '2025-01-05'],
    ['12.11.2025', '2025-11-12', '2025-12-11'],
    ['1 5 2025', '2025-05-01', '2025-01-05'],
    ['1/5/25', '2025-05-01', '2025-01-05'],
  ])('reads "%s" with the day first, as %s, and says that it could be %s', (text, day, other) => {
    expect(read(text)).toEqual([day, other]);
  });

  it.each([
    '',
    'May 2025',
    '2025',
    '2025-02-29',
    '29 Feb 2025',
    '31/4/2025',
    '0/5/2025',
    '13/13/2025',
    '32 May 2025',
    '1 Mai 2025',
    '1 Marble 2025',
    'yesterday',
  ])('refuses "%s"', (text) => {
    expect(read(text)).toBeNull();
  });
});
