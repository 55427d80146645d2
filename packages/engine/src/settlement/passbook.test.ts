import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { energyOf, figureOf } from '../../../../tests/support/make.ts';
import type { UnitsRule } from '../energy/index.ts';
import type { Figure } from '../quantity/index.ts';
import type { UnitNettingRule } from '../tariff/index.ts';
import { settlePeriod, type PassbookEntry } from './settle-period.ts';

const WHOLE_UNITS: UnitsRule = { clause: 'T 1', decimals: '0', rounding: 'down', roundedAt: 'reading' };

describe('the passbook', () => {
  const anyUnits = fc
    .integer({ min: 0, max: 2_000_000 })
    .map((value) => figureOf('x', (value / 1000).toString()));
  const anyRule = fc.record({
    percent: fc.constantFrom(null, '0', '33.3', '90', '100', '150'),
    excess: fc.constantFrom('carried', 'lapses'),
    surplus: fc.constantFrom('paid', 'lapses'),
    on: fc.constantFrom('03-31', '04-15', 'every-period'),
  });

  it('loses no unit and makes none up, whatever the rule', () => {
    fc.assert(
      fc.property(
        anyUnits,
        anyUnits,
        anyUnits,
        anyRule,
        (taken, given, opening, { percent, excess, surplus, on }) => {
          const paid = surplus === 'paid' ? { rate: '2.60', inBill: 'next' as const } : {};
          const rule: UnitNettingRule = {
            from: '2020-01-01',
            scheme: 'unit-netting',
            clause: 'T 7.1',
            carry: { clause: 'T 7.2' },
            ...(percent === null ? {} : { cap: { clause: 'T 7.4', percent, of: 'import', excess } }),
            close: { clause: 'T 7.3', on, surplus, ...paid },
          };
          const energy = { ...energyOf({ import: '0', export: '0' }), import: taken, export: given };
          const options = { rule, opening, unitsRule: WHOLE_UNITS, path: [] };
          const entry = settlePeriod(energy, options).value as PassbookEntry;
          const size = (figure: Figure): number => {
            expect([figure.denominator, figure.numerator >= 0]).toEqual([1000, true]);
            return figure.numerator as number;
          };
          expect(size(entry.opening) + size(entry.exported)).toBe(
            size(entry.setOff) + size(entry.paid) + size(entry.lapsed) + size(entry.closing),
          );
          expect(size(entry.imported)).toBe(size(entry.setOff) + size(entry.billed));
          expect(size(entry.creditUsed) <= size(entry.opening)).toBe(true);
          expect(entry.isClosed && size(entry.closing) > 0).toBe(false);
        },
      ),
      { numRuns: 500 },
    );
  });
});
