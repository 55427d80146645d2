import { parseDay, type DayNumber } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { writingFor } from '../writing/writing.ts';
import { endMoment, intervalMoment, offsetWords, readingMoment, startMoment } from './moments.ts';

const writing = writingFor('en-IN', 'INR');
const DAY = parseDay('2025-05-01') as DayNumber;
const MIDNIGHT = DAY * 1440;

it('names the moment of a reading', () => {
  expect(readingMoment(DAY, null, writing)).toBe('1 May 2025');
  expect(readingMoment(DAY, 15, writing)).toBe('1 May 2025, 00:15');
});

it('begins an interval at 00:00 of the day that begins, and ends it at 24:00 of the day that ends', () => {
  expect(startMoment(MIDNIGHT, writing)).toBe('1 May 2025, 00:00');
  expect(endMoment(MIDNIGHT, writing)).toBe('30 April 2025, 24:00');
  expect(endMoment(MIDNIGHT + 1, writing)).toBe('1 May 2025, 00:01');
});

it('names the day of an interval once', () => {
  expect(intervalMoment(MIDNIGHT, MIDNIGHT + 1440, writing)).toBe('1 May 2025, 00:00 to 24:00');
  expect(intervalMoment(MIDNIGHT - 15, MIDNIGHT + 15, writing)).toBe(
    '30 April 2025, 23:45 to 1 May 2025, 00:15',
  );
});

it('names clocks', () => {
  expect([0, 600, -210].map(offsetWords)).toEqual(['UTC', 'UTC+10:00', 'UTC−03:30']);
});
