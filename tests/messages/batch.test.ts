import { describe, expect, it } from 'vitest';
import { BATCH_FINDINGS } from '../../apps/cli/src/batch/index.ts';
import { BATCH_CASES } from './batch-cases.ts';

describe('every finding about a table of bills', () => {
  it.each(BATCH_CASES)('says where, what and what to do: $code, $when', async (one) => {
    const { code, at, found, expected, remedy } = one;
    expect(await one.make()).toEqual([{ code, at, found, expected, remedy }]);
  });

  it('can be brought about, and no two cases are alike', () => {
    expect([...new Set(BATCH_CASES.map(({ code }) => code))].sort()).toEqual(
      Object.keys(BATCH_FINDINGS).sort(),
    );
    expect(new Set(BATCH_CASES.map(({ code, when }) => `${code} ${when}`)).size).toBe(BATCH_CASES.length);
  });
});
