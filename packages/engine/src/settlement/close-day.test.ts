import { expect, it } from 'vitest';
import { periodOf } from '../../../../tests/support/make.ts';
import { holdsDayOfYear } from './close-day.ts';

it.each([
  ['on its first day', '2025-03-31', '2025-04-30', '03-31', true],
  ['on its last day', '2025-03-01', '2025-04-01', '03-31', true],
  ['that the next period begins with', '2025-03-01', '2025-03-31', '03-31', false],
  ['long before', '2025-04-01', '2025-05-01', '03-31', false],
  ['in the second of two years', '2024-12-15', '2025-01-15', '01-01', true],
  ['in the first of two years', '2024-12-15', '2025-01-15', '12-31', true],
  ['in a year and more', '2024-04-02', '2025-04-02', '04-01', true],
  ['29 February in a leap year', '2024-02-29', '2024-03-30', '02-29', true],
  ['29 February, read on that day, in a leap year', '2024-01-30', '2024-02-29', '02-29', false],
  ['29 February as the 28th in a common year', '2025-02-28', '2025-03-28', '02-29', true],
  ['29 February, read on the 28th, in a common year', '2025-01-28', '2025-02-28', '02-29', false],
  ['29 February as the 28th in 2100', '2100-02-01', '2100-03-01', '02-29', true],
])('finds a day of the year %s: from %s to %s, %s', (_, from, to, monthDay, held) => {
  expect(holdsDayOfYear(periodOf(from, to), monthDay)).toBe(held);
});
