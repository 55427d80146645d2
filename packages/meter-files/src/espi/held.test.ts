import { expect, it } from 'vitest';
import { HELD_READINGS, heldBlocks, type HeldBlock } from './held.ts';
import { rawReading, readingParts } from './reading.ts';

const block = (): HeldBlock => ({ at: { line: 1, column: 1 }, clock: { next: NaN }, readings: [] });

it('holds back so many readings and no more, and has room again when they are taken', () => {
  const told: unknown[] = [];
  const held = heldBlocks((code, position, values) => told.push([code, position, values?.['count']]));
  const first = block();
  const at = (line: number) => rawReading(readingParts({ line, column: 1 }));
  for (let line = 1; line <= HELD_READINGS; line += 1) held.add(first, at(line));
  expect(first.readings.length).toBe(HELD_READINGS);
  const second = block();
  held.add(second, at(HELD_READINGS + 1));
  held.add(second, at(HELD_READINGS + 2));
  expect(second.readings.length).toBe(0);
  held.free([first]);
  held.add(second, at(HELD_READINGS + 3));
  expect(second.readings.length).toBe(1);
  held.end();
  expect(told).toEqual([['espi/held-too-many', { line: HELD_READINGS + 1, column: 1 }, '2']]);
});
