import { describe, expect, it } from 'vitest';
import { TABLE_FINDINGS } from '../../packages/meter-files/src/table/index.ts';
import { said } from './message-case.ts';
import { TABLE_CASES } from './table-cases.ts';

describe('every finding about a table of meter values', () => {
  it.each(TABLE_CASES)('says where, what and what to do: $code, $when', (one) => {
    const { code, severity = 'error', at, found, expected, remedy } = one;
    expect(one.make().map(said)).toEqual([{ code, severity, at, found, expected, remedy }]);
  });

  it('can be brought about, and no two cases are alike', () => {
    expect([...new Set(TABLE_CASES.map(({ code }) => code))].sort()).toEqual(
      Object.keys(TABLE_FINDINGS).sort(),
    );
    expect(new Set(TABLE_CASES.map(({ code, when }) => `${code} ${when}`)).size).toBe(TABLE_CASES.length);
  });
});
