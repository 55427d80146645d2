import { ENGINE_FINDINGS } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { CHARGE_CASES } from './charge-cases.ts';
import { CHECK_CASES } from './check-cases.ts';
import { DISPUTE_CASES } from './dispute-cases.ts';
import { DATE_CASES } from './date-cases.ts';
import { DOCUMENT_CASES } from './document-cases.ts';
import { EXTEND_CASES } from './extend-cases.ts';
import { GROUP_CASES } from './group-cases.ts';
import { LARGE_CASES } from './large-cases.ts';
import { said } from './message-case.ts';
import { METER_CHANGE_CASES } from './meter-change-cases.ts';
import { PAIR_CASES } from './pair-cases.ts';
import { PERIOD_CASES } from './period-cases.ts';
import { PLANT_CASES } from './plant-cases.ts';
import { QUOTE_CASES } from './quote-cases.ts';
import { QUOTE_PROFILE_CASES } from './quote-profile-cases.ts';
import { QUOTE_WARNING_CASES } from './quote-warning-cases.ts';
import { READING_CASES } from './reading-cases.ts';
import { SCHEME_CASES } from './scheme-cases.ts';
import { SETTLED_CASES } from './settled-cases.ts';
import { SHARING_CASES } from './sharing-cases.ts';
import { TIME_BLOCK_CASES } from './time-block-cases.ts';
import { TYPED_CASES } from './typed-cases.ts';
import { UNITS_CASES } from './units-cases.ts';

const CASES = [
  ...DOCUMENT_CASES,
  ...CHARGE_CASES,
  ...DATE_CASES,
  ...PLANT_CASES,
  ...READING_CASES,
  ...TYPED_CASES,
  ...PAIR_CASES,
  ...METER_CHANGE_CASES,
  ...PERIOD_CASES,
  ...LARGE_CASES,
  ...EXTEND_CASES,
  ...SHARING_CASES,
  ...TIME_BLOCK_CASES,
  ...SCHEME_CASES,
  ...UNITS_CASES,
  ...SETTLED_CASES,
  ...GROUP_CASES,
  ...QUOTE_CASES,
  ...QUOTE_PROFILE_CASES,
  ...QUOTE_WARNING_CASES,
  ...CHECK_CASES,
  ...DISPUTE_CASES,
];

describe('every finding', () => {
  it.each(CASES)('says where, what and what to do: $code, $when', (one) => {
    const { code, severity = 'error', at, found, expected, remedy, offer } = one;
    const all = one.make().map(said);
    const told = one.isAmongOthers === true ? all.filter((finding) => finding.code === code) : all;
    expect(told).toEqual([
      { code, severity, at, found, expected, remedy, ...(offer === undefined ? {} : { offer }) },
    ]);
  });

  it('can be brought about', () => {
    const covered = new Set(CASES.map(({ code }) => code));
    expect(Object.keys(ENGINE_FINDINGS).filter((code) => !covered.has(code))).toEqual([]);
  });

  it('has a code of the engine, and no two cases are alike', () => {
    expect(CASES.map(({ code }) => code).filter((code) => !Object.hasOwn(ENGINE_FINDINGS, code))).toEqual([]);
    expect(new Set(CASES.map(({ code, when }) => `${code} ${when}`)).size).toBe(CASES.length);
  });
});
