import { describe, expect, it } from 'vitest';
import { OBIS_FINDINGS } from '../../../packages/meter-files/src/obis/index.ts';
import { said } from '../../messages/message-case.ts';
import { OBIS_CASES } from '../../messages/obis-cases.ts';

describe('every finding about a telegram or a list of registers', () => {
  it.each(OBIS_CASES)('says where, what and what to do: $code, $when', (one) => {
    const { code, severity = 'error', at, found, expected, remedy, offer } = one;
    const all = one.make().map(said);
    const told = one.isAmongOthers === true ? all.filter((finding) => finding.code === code) : all;
    expect(told).toEqual([
      { code, severity, at, found, expected, remedy, ...(offer === undefined ? {} : { offer }) },
    ]);
  });

  it('can be brought about', () => {
    const covered = new Set(OBIS_CASES.map(({ code }) => code));
    expect(Object.keys(OBIS_FINDINGS).filter((code) => !covered.has(code))).toEqual([]);
    expect(OBIS_CASES.filter(({ code }) => !Object.hasOwn(OBIS_FINDINGS, code))).toEqual([]);
  });
});
