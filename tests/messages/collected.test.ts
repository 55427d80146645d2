import { describe, expect, it } from 'vitest';
import { COLLECTED_FINDINGS } from '../../packages/meter-files/src/collected/index.ts';
import { COLLECTED_CASES } from './collected-cases.ts';
import { said } from './message-case.ts';

describe('every finding about a meter file of any format', () => {
  it.each(COLLECTED_CASES)('says where, what and what to do: $code, $when', (one) => {
    const { code, severity = 'error', at, found, expected, remedy, offer } = one;
    const all = one.make().map(said);
    const told = one.isAmongOthers === true ? all.filter((finding) => finding.code === code) : all;
    expect(told).toEqual([
      { code, severity, at, found, expected, remedy, ...(offer === undefined ? {} : { offer }) },
    ]);
  });

  it('can be brought about, and no two cases are alike', () => {
    const covered = [...new Set(COLLECTED_CASES.map(({ code }) => code))].sort();
    expect(covered).toEqual(Object.keys(COLLECTED_FINDINGS).sort());
    expect(new Set(COLLECTED_CASES.map(({ code, when }) => `${code} ${when}`)).size).toBe(
      COLLECTED_CASES.length,
    );
  });
});
