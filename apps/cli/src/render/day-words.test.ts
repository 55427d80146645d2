import { parseDay, type DayNumber } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { periodWords } from './day-words.ts';

it.each([
  ['2025-04-01', '2025-05-01', '1 Apr – 1 May 2025'],
  ['2025-12-01', '2026-01-01', '1 Dec – 1 Jan 2026'],
  ['2023-02-28', '2024-02-28', '28 Feb 2023 – 28 Feb 2024'],
  ['2023-05-31', '2025-06-30', '31 May 2023 – 30 Jun 2025'],
])('writes %s to %s as %s', (from, to, words) => {
  expect(periodWords({ from: parseDay(from) as DayNumber, to: parseDay(to) as DayNumber })).toBe(words);
});
