import { describe, expect, it } from 'vitest';
import { periodOf, THIRTY_DAYS } from '../../../../tests/support/make.ts';
import { decimalPlaces, decimalToWhole, isDecimalText, type Period } from '../quantity/index.ts';
import { operandsOf, type Definition } from '../tariff/index.ts';
import { resultOf } from './operations.ts';
import type { Operand, SettleContext } from './settle-context.ts';

const VALUES = { import: 120_000, export: 80_500, demand: 4_250, none: 0 } as const;
const NAMES = Object.keys(VALUES);
const words = { id: 'x', label: 'X', clause: 'T 1' } as const;

function operand(text: string): Operand {
  if (!isDecimalText(text)) return { at: NAMES.indexOf(text), whole: 0, scale: 1, text };
  const places = Math.max(3, decimalPlaces(text));
  return { at: -1, whole: decimalToWhole(text, places), scale: 10 ** places, text };
}

/** The result in thousandths, with 120 taken and 80.5 given. */
function result(definition: Definition, period: Period = THIRTY_DAYS): number {
  const values = Float64Array.from(Object.values(VALUES));
  const context: SettleContext = {
    values,
    given: [],
    period,
    past: [],
    account: { since: null, settlementDay: null },
  };
  return resultOf(definition, operandsOf(definition).map(operand), context);
}

const of = (
  is: 'sum' | 'difference' | 'excess' | 'least' | 'greatest' | 'product',
  ...names: string[]
): Definition => ({
  is,
  ...words,
  of: names,
});
const half = (step: string) => ({ step, mode: 'half-up' }) as const;

describe('what quantities come to', () => {
  it.each([
    ['sum', ['import', 'export', '0.5'], 201_000],
    ['difference', ['import', 'export', '1'], 38_500],
    ['difference', ['export', 'import'], -39_500],
    ['excess', ['export', 'import'], 0],
    ['excess', ['export', '80.499'], 1],
    ['excess', ['export', '80.5'], 0],
    ['least', ['import', 'export', '80.501'], 80_500],
    ['greatest', ['export', 'import', '0'], 120_000],
    ['product', ['import', '0.05'], 6_000],
    ['product', ['demand', 'demand', '2'], 36_125],
    ['product', ['import', '-1'], -120_000],
  ] as const)('%s of %j', (is, names, expected) => {
    expect(result(of(is, ...names))).toBe(expected);
  });

  it('are refused where they are finer than a thousandth, and rounded where the rule says so', () => {
    // 120 × 0.000 004 = 0.000 48
    expect(() => result(of('product', 'import', '0.000004'))).toThrow('settlement/finer-than-units');
    expect(result({ ...of('product', 'import', '0.000004'), rounding: half('0.001') } as Definition)).toBe(0);
    expect(result({ ...of('product', 'import', '0.000005'), rounding: half('0.001') } as Definition)).toBe(1);
  });

  it('are rounded as sums and the like, too', () => {
    expect(result({ ...of('sum', 'export', '0.499'), rounding: half('1') } as Definition)).toBe(81_000);
    expect(result({ ...of('difference', 'export', '0.001'), rounding: half('1') } as Definition)).toBe(
      80_000,
    );
    const down = { step: '1', mode: 'floor' } as const;
    expect(result({ ...of('difference', 'export', 'import'), rounding: down } as Definition)).toBe(-40_000);
  });

  it('are a quotient, of a divisor above 0', () => {
    const ratio = (by: string): Definition => ({
      is: 'quotient',
      ...words,
      of: 'import',
      by,
      rounding: half('0.001'),
    });
    // 120 ÷ 80.5 = 1.4906…
    expect(result(ratio('export'))).toBe(1_491);
    expect(() => result(ratio('none'))).toThrow('settlement/divided-by-nothing');
  });

  it('are a percentage of a sum', () => {
    const share: Definition = { is: 'percent', ...words, percent: '12.5', of: ['import', 'export'] };
    // 200.5 × 12.5 % = 25.0625
    expect(() => result(share)).toThrow('settlement/finer-than-units');
    expect(result({ ...share, rounding: { step: '0.001', mode: 'half-even' } })).toBe(25_062);
  });
});

describe('a part', () => {
  const part = (parts: { above?: string; upTo?: string }): Definition => ({
    is: 'part',
    ...words,
    of: 'import',
    ...parts,
  });

  it.each([
    [{}, 120_000],
    [{ above: '119.999' }, 1],
    [{ above: '120' }, 0],
    [{ above: '120.001' }, 0],
    [{ upTo: '119' }, 119_000],
    [{ upTo: '121' }, 120_000],
    [{ above: '100', upTo: '110' }, 10_000],
    [{ above: 'export', upTo: '500' }, 39_500],
  ])('of 120, %j', (limits, expected) => {
    expect(result(part(limits))).toBe(expected);
  });
});

describe('a choice', () => {
  const choice = (limit: string): Definition => ({
    is: 'choice',
    ...words,
    by: 'import',
    steps: [{ upTo: limit, take: 'export' }, { take: '7' }],
  });

  it('takes a step up to its limit, and that included', () => {
    expect([choice('119.999'), choice('120'), choice('120.001')].map((one) => result(one))).toEqual([
      7_000, 80_500, 80_500,
    ]);
  });
});

describe('a share of the days', () => {
  const share = (days: string, when: 'longer' | 'always'): Definition => ({
    is: 'days-share',
    ...words,
    of: 'import',
    days,
    when,
    rounding: half('0.001'),
  });

  it.each([
    ['30 of 30 days', '30', 'longer', THIRTY_DAYS, 120_000],
    ['30 of 31 days', '30', 'longer', periodOf('2025-05-01', '2025-06-01'), 116_129],
    ['30 of 29 days', '30', 'longer', periodOf('2025-05-01', '2025-05-30'), 120_000],
    ['30 of 29 days, always', '30', 'always', periodOf('2025-05-01', '2025-05-30'), 124_138],
    [
      'those of the first month',
      'month-of-first-day',
      'always',
      periodOf('2025-02-10', '2025-03-12'),
      112_000,
    ],
    ['those of the last month', 'month-of-last-day', 'always', periodOf('2025-02-10', '2025-03-12'), 124_000],
    [
      'those of the month of the last day, which is no longer the next',
      'month-of-last-day',
      'always',
      periodOf('2025-02-01', '2025-03-01'),
      120_000,
    ],
  ] as const)('counts %s', (_, days, when, period, expected) => {
    expect(result(share(days, when), period)).toBe(expected);
  });
});
