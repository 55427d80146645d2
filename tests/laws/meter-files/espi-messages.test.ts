import { describe, expect, it } from 'vitest';
import { ESPI_FINDINGS } from '../../../packages/meter-files/src/espi/index.ts';
import { said } from '../../messages/message-case.ts';
import { ESPI_CASES } from '../../messages/espi-cases.ts';

describe('every finding about an ESPI feed', () => {
  it.each(ESPI_CASES)('says where, what and what to do: $code, $when', (one) => {
    const { code, severity = 'error', at, found, expected, remedy, offer } = one;
    const all = one.make().map(said);
    const told = one.isAmongOthers === true ? all.filter((finding) => finding.code === code) : all;
    expect(told).toEqual([
      { code, severity, at, found, expected, remedy, ...(offer === undefined ? {} : { offer }) },
    ]);
  });

  it('can be brought about', () => {
    const covered = new Set(ESPI_CASES.map(({ code }) => code));
    expect(Object.keys(ESPI_FINDINGS).filter((code) => !covered.has(code))).toEqual([]);
    expect(ESPI_CASES.filter(({ code }) => !Object.hasOwn(ESPI_FINDINGS, code))).toEqual([]);
  });
});
