import { describe, expect, it } from 'vitest';
import { NEM_FINDINGS } from '../../packages/meter-files/src/nem/index.ts';
import { said } from './message-case.ts';
import { NEM_CASES } from './nem-cases.ts';

describe('every finding about a NEM12 or NEM13 file', () => {
  it.each(NEM_CASES)('says where, what and what to do: $code, $when', (one) => {
    const { code, severity = 'error', at, found, expected, remedy } = one;
    const all = one.make().map(said);
    const told = one.isAmongOthers === true ? all.filter((finding) => finding.code === code) : all;
    expect(told).toEqual([{ code, severity, at, found, expected, remedy }]);
  });

  it('can be brought about, and no two cases are alike', () => {
    expect([...new Set(NEM_CASES.map(({ code }) => code))].sort()).toEqual(Object.keys(NEM_FINDINGS).sort());
    expect(new Set(NEM_CASES.map(({ code, when }) => `${code} ${when}`)).size).toBe(NEM_CASES.length);
  });
});
