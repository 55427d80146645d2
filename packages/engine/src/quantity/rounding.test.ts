import { Decimal } from 'decimal.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ROUNDING_MODES, roundLargeQuotient, roundQuotient, type RoundingMode } from './rounding.ts';

/**
 * 2.5, 3.5, −2.5, 2.6 and −2.6 to whole numbers. The first seven rows follow the definitions of the
 * General Decimal Arithmetic model; the last two break the tie towards the sign they name.
 */
const TENTHS = [25, 35, -25, 26, -26] as const;
const TO_WHOLE: Readonly<Record<RoundingMode, readonly number[]>> = {
  up: [3, 4, -3, 3, -3],
  down: [2, 3, -2, 2, -2],
  ceiling: [3, 4, -2, 3, -2],
  floor: [2, 3, -3, 2, -3],
  'half-up': [3, 4, -3, 3, -3],
  'half-down': [2, 3, -2, 3, -3],
  'half-even': [2, 4, -2, 3, -3],
  'half-ceiling': [3, 4, -2, 3, -3],
  'half-floor': [2, 3, -3, 3, -3],
};

/** The same modes of decimal.js, by its own numbers. */
const TWIN: Readonly<Record<RoundingMode, Decimal.Rounding>> = {
  up: Decimal.ROUND_UP,
  down: Decimal.ROUND_DOWN,
  ceiling: Decimal.ROUND_CEIL,
  floor: Decimal.ROUND_FLOOR,
  'half-up': Decimal.ROUND_HALF_UP,
  'half-down': Decimal.ROUND_HALF_DOWN,
  'half-even': Decimal.ROUND_HALF_EVEN,
  'half-ceiling': Decimal.ROUND_HALF_CEIL,
  'half-floor': Decimal.ROUND_HALF_FLOOR,
};

/** Digits enough to tell any quotient below from a half: it lies at least 1 / (2 · denominator) away. */
const Twin = Decimal.clone({ precision: 120, toExpPos: 120 });

function twin(numerator: string, denominator: string, mode: RoundingMode): string {
  const rounded = new Twin(numerator).div(denominator).toDecimalPlaces(0, TWIN[mode]);
  return rounded.isZero() ? '0' : rounded.toFixed();
}

const anyMode = fc.constantFrom(...ROUNDING_MODES);
const largeWhole = fc.bigInt(-(10n ** 40n), 10n ** 40n);

describe('rounding a quotient', () => {
  it.each(ROUNDING_MODES)('rounds ties and others %s as the mode is defined', (mode) => {
    expect(TENTHS.map((tenths) => roundQuotient(tenths, 10, mode))).toEqual(TO_WHOLE[mode]);
    expect(TENTHS.map((tenths) => roundLargeQuotient(BigInt(tenths), 10n, mode))).toEqual(
      TO_WHOLE[mode].map(BigInt),
    );
  });

  it.each(ROUNDING_MODES)('leaves whole quotients alone, %s', (mode) => {
    expect([-30, 0, 30].map((tenths) => roundQuotient(tenths, 10, mode))).toEqual([-3, 0, 3]);
    expect([-30n, 0n, 30n].map((tenths) => roundLargeQuotient(tenths, 10n, mode))).toEqual([-3n, 0n, 3n]);
  });

  it('rounds to hundredths half-up what binary fractions round wrong: 1.005, 2.675, −1.475', () => {
    expect([1005, 2675, -1475].map((value) => roundQuotient(value, 10, 'half-up'))).toEqual([101, 268, -148]);
  });

  it('rounds 1.01 to 1.09 to five hundredths as cash is rounded', () => {
    const cents = [101, 102, 103, 104, 105, 106, 107, 108, 109];
    expect(cents.map((cent) => roundQuotient(cent, 5, 'half-up') * 5)).toEqual([
      100, 100, 105, 105, 105, 105, 105, 110, 110,
    ]);
  });

  it('never returns a negative zero', () => {
    for (const mode of ['half-up', 'half-even', 'half-down', 'down', 'ceiling'] as const) {
      expect(roundQuotient(-1, 4, mode)).toBe(0);
    }
  });

  it('tells the largest numbers from a half', () => {
    // 9007199254740991 ÷ 2 is a tie between …495 and …496; ÷ 9007199254740991 is 1.
    expect(roundQuotient(9007199254740991, 2, 'half-even')).toBe(4503599627370496);
    expect(roundQuotient(9007199254740991, 2, 'half-down')).toBe(4503599627370495);
    expect(roundQuotient(-9007199254740991, 2, 'half-ceiling')).toBe(-4503599627370495);
    expect(roundQuotient(9007199254740989, 9007199254740991, 'down')).toBe(0);
    expect(roundLargeQuotient(10n ** 30n + 5n, 10n, 'half-even')).toBe(10n ** 29n);
    expect(roundLargeQuotient(-(10n ** 30n) - 5n, 10n, 'half-up')).toBe(-(10n ** 29n) - 1n);
  });

  it('agrees with decimal.js on every mode', () => {
    fc.assert(
      fc.property(
        fc.maxSafeInteger(),
        fc.integer({ min: 1, max: 2 ** 31 - 1 }),
        anyMode,
        (top, bottom, mode) => {
          expect(String(roundQuotient(top, bottom, mode))).toBe(twin(String(top), String(bottom), mode));
        },
      ),
      { numRuns: 2000 },
    );
  });

  it('agrees with decimal.js on exact halves and one either side of them', () => {
    const half = fc.record({
      odd: fc.integer({ min: -1_000_000, max: 1_000_000 }).map((value) => 2 * value + 1),
      bottom: fc.integer({ min: 1, max: 1_000_000 }),
      off: fc.constantFrom(-1, 0, 1),
      mode: anyMode,
    });
    fc.assert(
      fc.property(half, ({ odd, bottom, off, mode }) => {
        const top = odd * bottom + off;
        expect(String(roundQuotient(top, 2 * bottom, mode))).toBe(
          twin(String(top), String(2 * bottom), mode),
        );
      }),
      { numRuns: 2000 },
    );
  });

  it('agrees with decimal.js on numbers of forty digits', () => {
    fc.assert(
      fc.property(largeWhole, fc.bigInt(1n, 10n ** 20n), anyMode, (top, bottom, mode) => {
        expect(roundLargeQuotient(top, bottom, mode).toString()).toBe(
          twin(top.toString(), bottom.toString(), mode),
        );
      }),
      { numRuns: 1000 },
    );
  });

  it('rounds large and ordinary numbers alike', () => {
    fc.assert(
      fc.property(
        fc.maxSafeInteger(),
        fc.integer({ min: 1, max: 1_000_000 }),
        anyMode,
        (top, bottom, mode) => {
          expect(roundLargeQuotient(BigInt(top), BigInt(bottom), mode)).toBe(
            BigInt(roundQuotient(top, bottom, mode)),
          );
        },
      ),
      { numRuns: 1000 },
    );
  });
});
