import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decimalToWhole, ROUNDING_MODES, wholeToDecimal } from '../../quantity/index.ts';
import { loanSchedule, LONGEST_LOAN, type LoanTerms } from './loan.ts';

const PAISE = { step: '0.01', mode: 'half-up' } as const;
const TERMS: LoanTerms = {
  amount: '1000',
  yearlyPercent: '12',
  months: 3,
  kind: 'reducing',
  rounding: PAISE,
};

/** Lines as a bank prints them: payment|interest|principal|balance. */
function printed(terms: Partial<LoanTerms>): readonly string[] {
  const { lines, places } = loanSchedule({ ...TERMS, ...terms });
  return lines.map(({ payment, interest, principal, balance }) =>
    [payment, interest, principal, balance].map((amount) => wholeToDecimal(amount, places)).join('|'),
  );
}

describe('a reducing loan', () => {
  it('has interest on what is owed, and a last instalment that takes up the rest', () => {
    // 1000 × 0.01 × 1.030301 ÷ 0.030301 = 340.0221…
    expect(printed({})).toEqual([
      '340.02|10.00|330.02|669.98',
      '340.02|6.70|333.32|336.66',
      '340.03|3.37|336.66|0.00',
    ]);
    expect(loanSchedule(TERMS)).toMatchObject({
      places: 2,
      instalment: 34_002,
      paid: 102_007,
      interest: 2007,
    });
  });

  it('of one month is the amount and a month of interest', () => {
    expect(printed({ months: 1 })).toEqual(['1010.00|10.00|1000.00|0.00']);
  });

  it('without interest is the amount in parts', () => {
    expect(printed({ yearlyPercent: '0', amount: '100' })).toEqual([
      '33.33|0.00|33.33|66.67',
      '33.33|0.00|33.33|33.34',
      '33.34|0.00|33.34|0.00',
    ]);
  });

  it('has the finer grid of its amounts', () => {
    // 1000.50 ÷ 2 = 500.25, in whole steps 500.
    const whole = { step: '1', mode: 'half-up' } as const;
    expect(printed({ amount: '1000.50', yearlyPercent: '0', months: 2, rounding: whole })).toEqual([
      '500.0|0.0|500.0|500.5',
      '500.5|0.0|500.5|0.0',
    ]);
    // 0.01 × 1000 = 10 in steps of 0.05; 340.0221 → 340.00; 670 × 0.01 = 6.7; 336.7 × 0.01 = 3.367 → 3.35.
    expect(printed({ rounding: { step: '0.05', mode: 'half-up' } })).toEqual([
      '340.00|10.00|330.00|670.00',
      '340.00|6.70|333.30|336.70',
      '340.05|3.35|336.70|0.00',
    ]);
  });

  it('is paid off sooner where a coarse step is rounded up', () => {
    const terms = {
      amount: '5',
      yearlyPercent: '0',
      months: 7,
      rounding: { step: '1', mode: 'up' },
    } as const;
    expect(loanSchedule({ ...TERMS, ...terms }).lines.map(({ payment }) => payment)).toEqual([
      1, 1, 1, 1, 1, 0, 0,
    ]);
  });

  it('rounds as it is told', () => {
    const at = (mode: (typeof ROUNDING_MODES)[number]) =>
      loanSchedule({ ...TERMS, rounding: { step: '0.01', mode } }).instalment;
    expect([at('down'), at('up')]).toEqual([34_002, 34_003]);
  });

  it('of nothing has lines of nothing', () => {
    expect(printed({ amount: '0', months: 2 })).toEqual(['0.00|0.00|0.00|0.00', '0.00|0.00|0.00|0.00']);
  });
});

describe('a flat loan', () => {
  it('has interest on the whole amount to the end', () => {
    // 1000 + 3 × 10 = 1030; 1030 ÷ 3 = 343.333…
    expect(printed({ kind: 'flat' })).toEqual([
      '343.33|10.00|333.33|666.67',
      '343.33|10.00|333.33|333.34',
      '343.34|10.00|333.34|0.00',
    ]);
  });

  it('has interest that sums to the rounded whole', () => {
    // 25 in all: 8.33, 16.67, 25 up to each month; 1025 ÷ 3 = 341.666…
    expect(printed({ kind: 'flat', yearlyPercent: '10' })).toEqual([
      '341.67|8.33|333.34|666.66',
      '341.67|8.34|333.33|333.33',
      '341.66|8.33|333.33|0.00',
    ]);
  });

  it('costs more than a reducing one of the same rate', () => {
    const cost = (kind: 'reducing' | 'flat') => loanSchedule({ ...TERMS, months: 60, kind }).cost;
    // Flat: 1000 × 12 % × 5.
    expect(cost('flat')).toBe(60_000);
    expect(cost('flat') > cost('reducing')).toBe(true);
  });
});

describe('a loan', () => {
  it('counts fees beside the instalments', () => {
    const { places, fees, interest, cost, paid } = loanSchedule({ ...TERMS, fees: ['500', '118.505'] });
    expect({ places, fees, interest, cost, paid }).toEqual({
      places: 3,
      fees: 618_505,
      interest: 20_070,
      cost: 638_575,
      paid: 1_020_070,
    });
  });

  it('adds up, whatever its terms', () => {
    const terms = fc.record({
      amount: fc.integer({ min: 0, max: 1e9 }).map((whole) => wholeToDecimal(whole, 2)),
      yearlyPercent: fc.integer({ min: 0, max: 4000 }).map((whole) => wholeToDecimal(whole, 2)),
      months: fc.integer({ min: 1, max: 120 }),
      kind: fc.constantFrom('reducing' as const, 'flat' as const),
      rounding: fc.record({
        step: fc.constantFrom('0.01', '0.05', '1', '10'),
        mode: fc.constantFrom(...ROUNDING_MODES),
      }),
    });
    fc.assert(
      fc.property(terms, (one) => {
        const { lines, paid, interest, instalment, places } = loanSchedule(one);
        const sum = (part: 'payment' | 'interest' | 'principal') =>
          lines.reduce((all, line) => all + line[part], 0);
        expect([sum('payment'), sum('interest')]).toEqual([paid, interest]);
        expect(sum('principal')).toBe(decimalToWhole(one.amount, places));
        expect(
          lines
            .map(({ payment }) => payment)
            .slice(0, -1)
            .every((payment) => payment <= instalment),
        ).toBe(true);
        expect(lines.at(-1)?.balance).toBe(0);
      }),
    );
  });

  it('refuses terms that are none', () => {
    const refused = (terms: Partial<LoanTerms>) => expect(() => loanSchedule({ ...TERMS, ...terms }));
    for (const months of [0, -1, 1.5, NaN, LONGEST_LOAN + 1]) {
      refused({ months }).toThrow(`months must be whole, 1 to 600, found ${months}`);
    }
    refused({ amount: '-1' }).toThrow('nothing below 0, found -1');
    refused({ yearlyPercent: '-0.5' }).toThrow('nothing below 0, found -0.5');
    refused({ fees: ['10', '-2'] }).toThrow('nothing below 0, found -2');
    refused({ amount: '1,000' }).toThrow('is not a decimal number');
    refused({ rounding: { step: '0', mode: 'half-up' } }).toThrow('a step must be above 0, found 0');
    refused({ rounding: { step: '-1', mode: 'half-up' } }).toThrow('a step must be above 0, found -1');
    refused({ amount: '90071992547409.91', yearlyPercent: '1' }).toThrow(RangeError);
    expect(loanSchedule({ ...TERMS, months: LONGEST_LOAN }).lines.length).toBe(600);
  });
});
