import { describe, expect, it } from 'vitest';
import { readingText, readRegisterText } from './register-text.ts';
import { makeRegister } from './register.ts';

interface Parts {
  readonly digits?: string;
  readonly decimals?: string;
  /** The reading before, in thousandths. */
  readonly before?: number | null;
}

function read(text: string, { digits = '5', decimals = '1', before = null }: Parts = {}) {
  const register = makeRegister({ id: 'import', digits, decimals, multiplyingFactor: '1' });
  const { value, findings } = readRegisterText(text, { register, before, path: ['readings', 1, 'import'] });
  return { value, codes: findings.map(({ code }) => code), offers: findings.map(({ offer }) => offer) };
}

describe('what was typed for a register', () => {
  it.each([
    ['4640.3', 4_640_300],
    ['0', 0],
    ['00012.3', 12_300],
    ['000000000012.3', 12_300],
    ['99999.9', 99_999_900],
    ['4640.30', 4_640_300],
    ['4640.3000', 4_640_300],
    ['4640,3', 4_640_300],
    ['12,892.4', 12_892_400],
    ['४६४०.३', 4_640_300],
  ])('reads "%s" in thousandths', (text, value) => {
    expect(read(text)).toEqual({ value, codes: [], offers: [] });
  });

  it('takes as many digits and decimals as the register has', () => {
    expect(read('99999999.999', { digits: '8', decimals: '3' }).value).toBe(99_999_999_999);
    expect(read('9999', { digits: '4', decimals: '0' }).value).toBe(9_999_000);
    expect(read('10000', { digits: '4', decimals: '0' })).toMatchObject({
      value: null,
      codes: ['reading/too-many-digits'],
    });
    expect(read('4640.35')).toMatchObject({ value: null, codes: ['reading/too-many-decimals'] });
    expect(read('4640.3', { decimals: '0' })).toMatchObject({
      value: null,
      codes: ['reading/too-many-decimals'],
    });
    expect(read('4640.0', { decimals: '0' }).value).toBe(4_640_000);
  });

  it('offers the point before digits that are too many by no more than the decimals', () => {
    expect(read('128924')).toEqual({ value: null, codes: ['reading/too-many-digits'], offers: ['12892.4'] });
    expect(read('1289241')).toEqual({ value: null, codes: ['reading/too-many-digits'], offers: [undefined] });
    expect(read('12892412', { decimals: '3' }).offers).toEqual(['12892.412']);
  });

  it('asks about the screen test, eights only', () => {
    expect(read('888888', { digits: '6' })).toMatchObject({
      value: 888_888_000,
      codes: ['reading/screen-test'],
    });
    expect(read('88888')).toMatchObject({ value: 88_888_000, codes: ['reading/screen-test'] });
    expect(read('88888.8')).toMatchObject({ value: 88_888_800, codes: ['reading/screen-test'] });
    expect(read('88888.0').codes).toEqual([]);
    expect(read('88887').codes).toEqual([]);
    expect(read('8888', { digits: '5' }).codes).toEqual([]);
  });

  it('lets the reading before decide what a single comma marks', () => {
    expect(read('12,892', { before: 12_480_000 }).value).toBe(12_892_000);
    expect(read('12,892', { before: 12_000, decimals: '3' }).value).toBe(12_892);
    // Without three decimals the register cannot show 12.892.
    expect(read('12,892').value).toBe(12_892_000);
    expect(read('12,892', { decimals: '3' })).toMatchObject({
      value: null,
      codes: ['reading/comma-unclear'],
    });
  });

  it.each([
    ['', 'reading/missing-register'],
    ['   ', 'reading/missing-register'],
    ['=B2', 'reading/formula'],
    ['1,2,3', 'reading/mixed-separators'],
    ['l2892', 'reading/letter'],
    ['abc', 'reading/not-a-number'],
    ['-58', 'reading/negative'],
    ['-58,5', 'reading/negative'],
  ])('refuses "%s": %s', (text, code) => {
    expect(read(text)).toMatchObject({ value: null, codes: [code] });
  });

  it('refuses a number below 0 with a comma that could be either mark', () => {
    expect(read('-1,234', { before: 1_200_000 })).toMatchObject({ value: null, codes: ['reading/negative'] });
  });

  it('prints a reading as people read it', () => {
    expect([0, 12_300, 100_000, 4_640_305, 99_999_000].map(readingText)).toEqual([
      '0',
      '12.3',
      '100',
      '4640.305',
      '99999',
    ]);
  });
});

describe('a register', () => {
  it('has a full scale of its digits and an exact factor', () => {
    const register = makeRegister({ id: 'export', digits: '6', decimals: '2', multiplyingFactor: '1.250' });
    expect(register).toMatchObject({
      id: 'export',
      digits: 6,
      decimals: 2,
      fullScale: 1_000_000_000,
      factor: { numerator: 125, denominator: 100, text: '1.250' },
    });
  });
});
