import { describe, expect, it } from 'vitest';
import { periodOf, valueOf } from '../../../../tests/support/make.ts';
import { unexplained } from '../../../../tests/support/recompute.ts';
import { decimalToWhole, type RoundingMode } from '../quantity/index.ts';
import { makeRegister, type MeterSpan, type Reading, type ReadingPair } from '../readings/index.ts';
import { countUnits, type UnitsRule } from './count-units.ts';

function readingOf(text: string, day: 'first' | 'last'): Reading {
  const { from, to } = periodOf('2025-04-01', '2025-05-01');
  return {
    day: day === 'first' ? from : to,
    event: null,
    isEstimated: false,
    estimated: [],
    import: decimalToWhole(text, 3),
    export: 0,
    generation: null,
    rates: null,
    printedDays: null,
    confirmed: [],
    path: [],
  };
}

function spanOf(): MeterSpan {
  const register = (id: 'import' | 'export') =>
    makeRegister({ id, digits: '5', decimals: '1', multiplyingFactor: '1' });
  const totals = { import: register('import'), export: register('export'), generation: null };
  return {
    from: null,
    begun: [],
    serials: { grid: 'P-1', generation: null },
    totals,
    counted: [totals.import, totals.export],
  };
}

function pairOf(from: string, to: string, passed: boolean): ReadingPair {
  const [first, last] = [readingOf(from, 'first'), readingOf(to, 'last')];
  return {
    from: first,
    to: last,
    period: { from: first.day, to: last.day },
    rolledOver: passed ? ['import'] : [],
    stretches: null,
    span: spanOf(),
  };
}

interface Counting {
  readonly roundedAt: UnitsRule['roundedAt'];
  readonly decimals?: UnitsRule['decimals'];
  readonly rounding?: RoundingMode;
  readonly factor?: string;
  readonly digits?: string;
  readonly passed?: boolean;
}

/** The figure of the units counted on the import register from one reading to another. */
function count(from: string, to: string, how: Counting) {
  const register = makeRegister({
    id: 'import',
    digits: how.digits ?? '5',
    decimals: '3',
    multiplyingFactor: how.factor ?? '1',
  });
  const { roundedAt, decimals = '0', rounding = 'down' } = how;
  const rule: UnitsRule = { clause: 'T 1', roundedAt, decimals, rounding };
  const figure = countUnits(register, pairOf(from, to, how.passed ?? false), rule);
  expect(unexplained(figure).map(({ id }) => id)).toEqual([]);
  return figure;
}

const units = (...parameters: Parameters<typeof count>): string => valueOf(count(...parameters));

describe('units counted', () => {
  it('at the reading cut each reading, at the difference cut their difference', () => {
    // 4120.6 → 4342.1: 4342 − 4120 = 222, while 221.5 is cut to 221.
    expect(units('4120.6', '4342.1', { roundedAt: 'reading' })).toBe('222');
    expect(units('4120.6', '4342.1', { roundedAt: 'difference' })).toBe('221');
    // 2935.8 → 3151.0: 3151 − 2935 = 216, while 215.2 is cut to 215.
    expect(units('2935.8', '3151.0', { roundedAt: 'reading' })).toBe('216');
    expect(units('2935.8', '3151.0', { roundedAt: 'difference' })).toBe('215');
  });

  it('keep the decimals that the rule has', () => {
    for (const roundedAt of ['reading', 'difference'] as const) {
      expect(units('4120.6', '4342.1', { roundedAt, decimals: '1' })).toBe('221.5');
      expect(units('4120.604', '4342.1', { roundedAt, decimals: '3' })).toBe('221.496');
    }
    expect(units('4120.604', '4342.108', { roundedAt: 'reading', decimals: '2' })).toBe('221.5');
    expect(units('4120.604', '4342.109', { roundedAt: 'difference', decimals: '2' })).toBe('221.5');
  });

  it('are rounded as the rule rounds', () => {
    const half = (rounding: RoundingMode): string =>
      units('100', '321.5', { roundedAt: 'difference', rounding });
    expect((['half-up', 'half-even', 'half-down', 'up', 'down'] as const).map(half)).toEqual([
      '222',
      '222',
      '221',
      '222',
      '221',
    ]);
  });

  it('are none between equal readings', () => {
    expect(units('4120.6', '4120.6', { roundedAt: 'reading' })).toBe('0');
  });
});

describe('the multiplying factor', () => {
  it.each(['reading', 'difference'] as const)(
    'makes 510 units of 25.5 with a factor of 20, %s',
    (roundedAt) => {
      expect(units('1210.5', '1236.0', { roundedAt, factor: '20' })).toBe('510');
    },
  );

  it('is applied before the decimals are cut', () => {
    // 100.7 × 1.25 = 125.875 and 140.9 × 1.25 = 176.125: 176 − 125 = 51; 40.2 × 1.25 = 50.25
    expect(units('100.7', '140.9', { roundedAt: 'reading', factor: '1.25' })).toBe('51');
    expect(units('100.7', '140.9', { roundedAt: 'difference', factor: '1.25' })).toBe('50');
    expect(units('100.7', '140.9', { roundedAt: 'difference', factor: '1.25', decimals: '2' })).toBe('50.25');
  });

  it('can be below 1', () => {
    expect(units('0', '1000', { roundedAt: 'difference', factor: '0.5' })).toBe('500');
  });

  it('is shown with where it comes from', () => {
    const figure = count('1210.5', '1236.0', { roundedAt: 'difference', factor: '20' });
    expect(figure.parameters).toEqual([
      { name: 'multiplying factor', text: '20', unit: 'ratio', clause: 'account' },
    ]);
  });

  it('stays exact with the longest readings and factors', () => {
    // 99999999.999 × 1000.001 = 100000099998.999999: cut to whole units, one below what doubles make of it.
    expect(units('0', '99999999.999', { roundedAt: 'difference', factor: '1000.001', digits: '8' })).toBe(
      '100000099998',
    );
  });
});

describe('a register that passed its full scale', () => {
  it.each([
    ['5', '99950', '120', '170'],
    ['6', '999950', '120', '170'],
    ['7', '9999950', '120', '170'],
    ['4', '9950', '120', '170'],
    ['5', '99870', '212', '342'],
  ])('with %s digits counts on: %s → %s is %s', (digits, from, to, expected) => {
    expect(units(from, to, { roundedAt: 'reading', digits, passed: true })).toBe(expected);
  });

  it('counts decimals on', () => {
    expect(units('99999.5', '12.3', { roundedAt: 'reading', decimals: '1', passed: true })).toBe('12.8');
    // 100012 − 99999, and 12.8 cut
    expect(units('99999.5', '12.3', { roundedAt: 'reading', passed: true })).toBe('13');
    expect(units('99999.5', '12.3', { roundedAt: 'difference', passed: true })).toBe('12');
  });

  it('is shown with its full scale', () => {
    const figure = count('99950', '120', { roundedAt: 'reading', passed: true });
    expect(figure.inputs[0]).toMatchObject({ operation: 'sum', numerator: 100_120_000 });
    expect(figure.inputs[0]?.inputs[1]).toMatchObject({ numerator: 100_000_000, clause: 'account' });
  });
});
