import { expect } from 'vitest';
import { checkPapers } from './examples.ts';
import { printed, rightBills, type Draw } from './random-papers.ts';

/** Print the right bills of a draw and check them: nothing differs, and something is compared. */
export function expectClean(draw: Draw): void {
  const bills = rightBills(draw);
  expect(bills.length).toBeGreaterThan(0);
  for (const { verdict, compared, difference } of checkPapers(printed(draw, bills), { causes: [] })) {
    expect(compared.filter(({ agrees }) => !agrees)).toEqual([]);
    expect(['right', 'right-but-surprising']).toContain(verdict);
    // What no right figure was found for would agree with anything.
    expect(compared.filter(({ computed }) => computed === null).map(({ name }) => name)).toEqual([]);
    expect(difference).not.toBeNull();
  }
}
