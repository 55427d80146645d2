import { describe, expect, it } from 'vitest';
import type { Quotient } from '../../quantity/index.ts';
import { makeRegister, type AccuracyClass } from '../../readings/index.ts';
import { quotientOf, readPrintedBill, type PrintedBill } from '../printed.ts';
import { powerFactor } from './power-factor.ts';
import type { SurpriseTerms } from './surprise.ts';
import { twoDevices } from './two-devices.ts';

const DAYS = { from: '2025-05-01', to: '2025-05-31' };

function bill(units: Readonly<Record<string, string>>): PrintedBill {
  const { value } = readPrintedBill({ ...DAYS, units }, []);
  if (value === null) throw new Error('the bill cannot be read');
  return value;
}

/** Terms of which a surprise only looks at some. */
const terms = (known: Partial<SurpriseTerms>): SurpriseTerms => known as SurpriseTerms;

describe('two devices', () => {
  function told(
    metered: string,
    app: string,
    classes: readonly (AccuracyClass | undefined)[] = [],
  ): string | null {
    const [own, other] = classes;
    const register = makeRegister({
      id: 'generation',
      digits: '5',
      decimals: '2',
      multiplyingFactor: '1',
      accuracyClass: own,
    });
    const { period } = bill({});
    const facts = { period, registers: { generation: { register, previous: 0, present: 0, passed: false } } };
    const right: ReadonlyMap<string, Quotient> = new Map([['units.generation', quotientOf(metered)]]);
    const generation = quotientOf(app);
    const own2 = other === undefined ? {} : { accuracyClass: other };
    const found = twoDevices(
      terms({
        facts: facts as unknown as SurpriseTerms['facts'],
        right,
        app: { period, generation, ...own2 },
      }),
    );
    return found?.what ?? null;
  }

  it('differ within their classes', () => {
    // Project reference "causes", S8 (2026): 96.1 on the inverter, 98.33 on the meter. Class 1 at low current is 1.5 %
    // of each, by IEC 62053-21 (2003): 0.015 × 194.43 = 2.91645.
    expect(told('98.33', '96.1')).toBe(
      '96.1 on the inverter, 98.33 on the meter: by their classes they may be 2.92 apart',
    );
  });

  it('do not where they are too good for it', () => {
    // Class 0.5S at low current is 1 % of each: 1.9443, and 2.23 are between them.
    expect(told('98.33', '96.1', ['0.5S', '0.5S'])).toBeNull();
  });

  it('may differ by the limit, and by no more', () => {
    // 0.015 × 400 = 6.
    expect(told('203', '197')).not.toBeNull();
    expect(told('203', '196.9')).toBeNull();
    expect(told('197', '203')).not.toBeNull();
  });

  it('that show the same surprise nobody', () => {
    expect(told('98.33', '98.33')).toBeNull();
  });
});

describe('the power factor', () => {
  const told = (
    now: Readonly<Record<string, string>>,
    then: Readonly<Record<string, string>>,
  ): string | null => powerFactor(terms({ printed: bill(now), printedBefore: bill(then) }))?.what ?? null;

  it('falls where kWh shrink and kvarh stay', () => {
    // Project reference "causes", S10 (2026): 10,000 kWh and 3,287 kvarh make 0.95, 4,000 kWh 0.77.
    expect(told({ import: '4000', reactive: '3287' }, { import: '10000', reactive: '3287' })).toBe(
      'power factor 0.77 of 4000 kWh and 3287 kvarh, after 0.95 of 10000 kWh and 3287 kvarh: less is taken from the grid, and the kvarh stay',
    );
  });

  it('is told exactly at a whole factor', () => {
    // 3, 4 and 5 make 0.6, 4, 3 and 5 make 0.8.
    expect(told({ import: '3', reactive: '4' }, { import: '4', reactive: '3' })).toMatch(
      /^power factor 0\.60 .* after 0\.80/,
    );
  });

  it('surprises nobody where it stays or rises, or kWh grew', () => {
    expect(told({ import: '4000', reactive: '1314.8' }, { import: '10000', reactive: '3287' })).toBeNull();
    expect(told({ import: '4000', reactive: '1000' }, { import: '10000', reactive: '3287' })).toBeNull();
    expect(told({ import: '12000', reactive: '5000' }, { import: '10000', reactive: '3287' })).toBeNull();
  });

  it('is not told of where kvarh are not printed', () => {
    expect(told({ import: '4000' }, { import: '10000', reactive: '3287' })).toBeNull();
  });
});
