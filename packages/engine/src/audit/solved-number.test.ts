import { describe, expect, it } from 'vitest';
import { lineRounding, rateFor, roundedLine, times } from './solved-number.ts';

const whole = (numerator: number) => ({ numerator, denominator: 1 });
const CENTS = { step: '0.01', mode: 'half-up' } as const;

describe('rateFor', () => {
  it('finds the rate with the fewest decimals', () => {
    // 640 × 1.90 = 1,216.00.
    expect(rateFor(whole(1216), whole(640), { rounding: CENTS })).toBe('1.9');
  });

  it('finds a rate behind a rounded line', () => {
    // 7 × 0.127 = 0.889, shown as 0.89; 7 × 0.13 = 0.91 is not it.
    expect(rateFor({ numerator: 89, denominator: 100 }, whole(7), { rounding: CENTS })).toBe('0.127');
  });

  it('finds none that is finer than asked, and none for nothing', () => {
    expect(rateFor(whole(1), whole(3), { rounding: null })).toBeNull();
    expect(rateFor({ numerator: 89, denominator: 100 }, whole(7), { rounding: CENTS, most: 2 })).toBeNull();
    expect(rateFor(whole(1), whole(0), { rounding: null })).toBeNull();
  });

  it('keeps the sign', () => {
    expect(rateFor(whole(-10), whole(4), { rounding: null })).toBe('-2.5');
  });
});

describe('roundedLine', () => {
  it('rounds as the line does, or not at all', () => {
    const amount = { numerator: 23_112, denominator: 1000 };
    expect(roundedLine(amount, CENTS)).toEqual({ numerator: 2311, denominator: 100 });
    expect(roundedLine(amount, null)).toBe(amount);
  });
});

describe('times', () => {
  it('is exact', () => {
    // 3.1 × 278 = 861.8.
    expect(times('3.10', whole(278))).toEqual({ numerator: 8618n, denominator: 10 });
  });
});

describe('lineRounding', () => {
  it('is that of the charge before that of the document', () => {
    const rounding = { clause: 'x', line: CENTS, total: 'none' as const };
    const document = { rounding } as Parameters<typeof lineRounding>[0];
    expect(lineRounding(document, {})).toEqual(CENTS);
    expect(lineRounding(document, { rounding: 'none' })).toBeNull();
  });
});
