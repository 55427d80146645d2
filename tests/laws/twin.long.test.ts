import { describe, expect, it } from 'vitest';
import { compareWithTwin } from './twin-comparison.ts';

const BILLS = 1_000_000;

describe('a million generated bills', () => {
  it('are those of the decimal twin, line by line', () => {
    const found = compareWithTwin(BILLS, 100, 20_261_125);
    expect(found.differences).toEqual([]);
    expect(found.bills).toBe(BILLS);
    // Lines left unrounded and units beyond any home need more digits than there are; they say so, and guess nothing.
    expect(found.refusedRounded).toBe(0);
    expect(found.refused).toBeLessThan(BILLS / 30);
  });
});
