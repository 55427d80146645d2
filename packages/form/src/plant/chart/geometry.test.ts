import { addDays, dayText, parseDay, type DayNumber } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { hatchPath, monthStarts, placeMarks, scalesOf, tickStep } from './geometry.ts';

const day = (text: string): DayNumber => parseDay(text) ?? (0 as DayNumber);
const first = day('2025-04-01');

it('puts days from left to right and yields from the bottom up, within the margins', () => {
  const frame = { width: 120, height: 70, left: 15, right: 5, top: 8, bottom: 12 };
  const { x, y } = scalesOf(frame, { from: first, to: addDays(first, 10) }, 50_000);
  expect([0, 5, 10].map((days) => x(addDays(first, days)))).toEqual([15, 65, 115]);
  expect([0, 25_000, 50_000].map(y)).toEqual([58, 33, 8]);
});

it('draws few lines of a scale', () => {
  expect([1, 6, 7, 10, 11].map(tickStep)).toEqual([1, 1, 2, 2, 3]);
});

it('keeps hatching within its box', () => {
  const path = hatchPath({ x: 10, y: 20, width: 9, height: 30 }, 6);
  const points = [...path.matchAll(/[ML]([\d.]+) ([\d.]+)/g)].map(([, x = '', y = '']) =>
    [x, y].map(parseFloat),
  );
  expect(points.length).toBeGreaterThan(4);
  for (const [x = 0, y = 0] of points) {
    expect(x >= 10 && x <= 19).toBe(true);
    expect(y >= 20 && y <= 50).toBe(true);
  }
  expect(hatchPath({ x: 0, y: 0, width: 0, height: 0 }, 6)).toBe('');
});

it('lets no mark lie on another', () => {
  const x = (of: DayNumber): number => (of - first) * 4;
  const mark = (days: number, sign: string) => ({ day: addDays(first, days), sign });
  const placed = placeMarks([mark(0, 'A'), mark(1, 'B'), mark(2, '12'), mark(5, 'C')], x, 8);
  // A takes −4 to 4; B 0 to 8, above it; 12 takes 0 to 16, above both; C 16 to 24 has room at the bottom.
  expect(placed.map(({ row }) => row)).toEqual([0, 1, 2, 0]);
});

it('finds where months begin, the first day of a span among them', () => {
  const starts = monthStarts({ from: day('2024-12-01'), to: day('2025-03-01') });
  expect(starts.map(dayText)).toEqual(['2024-12-01', '2025-01-01', '2025-02-01']);
  expect(monthStarts({ from: day('2025-04-02'), to: day('2025-05-01') })).toEqual([]);
});
