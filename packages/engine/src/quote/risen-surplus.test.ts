import { describe, expect, it } from 'vitest';
import { demoTariff } from '../../../../tests/support/demo.ts';
import { parseDay, type DayNumber } from '../quantity/index.ts';
import { priceAt, readTariff, type TariffDocument } from '../tariff/index.ts';
import { rateBeforeRises, withRisenSurplus } from './risen-surplus.ts';

const TARIFF = demoTariff().document;
const START = parseDay('2025-04-01') as DayNumber;
const LIFE = { start: START, years: 4 };

function closeRate(document: TariffDocument): string {
  const [rule] = document.settlements;
  return rule?.scheme === 'unit-netting' ? (rule.close.rate ?? '') : '';
}

/** What the rate of surplus comes to in the March of each year of the life. */
function inMarch(document: TariffDocument, years: readonly number[]): readonly string[] {
  return years.map((year) => {
    const from = parseDay(`${String(year)}-03-01`) as DayNumber;
    const to = parseDay(`${String(year)}-04-01`) as DayNumber;
    const price = priceAt(document, closeRate(document), { from, to });
    return 'text' in price ? price.text : price.problem;
  });
}

describe('what surplus is paid', () => {
  it('stays as it is where nothing is said', () => {
    expect(withRisenSurplus(TARIFF, undefined, LIFE)).toBe(TARIFF);
  });

  it('rises every year from the rate of the tariff, rounded once to the step', () => {
    const risen = withRisenSurplus(TARIFF, { percent: '3', step: '0.01' }, LIFE);
    // 2.60 × 1.03 = 2.678, × 1.0609 = 2.75834, × 1.092727 = 2.8410902.
    expect(inMarch(risen, [2026, 2027, 2028, 2029])).toEqual(['2.6', '2.68', '2.76', '2.84']);
    expect(readTariff(JSON.stringify(risen)).findings).toEqual([]);
  });

  it('falls below 0 %, and is rounded to steps that are no power of ten', () => {
    const falling = withRisenSurplus(TARIFF, { percent: '-10', step: '0.25' }, LIFE);
    // 2.34, 2.106 and 1.8954 in quarters; what has not risen is as the tariff has it.
    expect(inMarch(falling, [2026, 2027, 2028, 2029])).toEqual(['2.6', '2.25', '2', '2']);
  });

  it('counts from the year whose rates the tariff has', () => {
    const later = withRisenSurplus(TARIFF, { percent: '3', step: '0.01' }, { ...LIFE, ratesOfYear: 2 });
    expect(inMarch(later, [2026, 2028, 2029])).toEqual(['2.6', '2.6', '2.68']);
  });

  it('follows a price that changes, by a factor of eight decimals', () => {
    const rule = TARIFF.settlements[0] as TariffDocument['settlements'][number] & { scheme: 'unit-netting' };
    const clause = rule.close.clause;
    const document: TariffDocument = {
      ...TARIFF,
      prices: {
        pool: {
          is: 'series',
          clause,
          inForce: 'first-day',
          values: [
            { from: '2020-01-01', rate: '2.00' },
            { from: '2027-01-01', rate: '4.00' },
          ],
        },
      },
      settlements: [{ ...rule, close: { ...rule.close, rate: 'pool' } }],
    };
    const risen = withRisenSurplus(document, { percent: '3', step: '0.01' }, LIFE);
    // 2.00; 4.00 × 1.03 = 4.12; 4.00 × 1.0609 = 4.2436.
    expect(inMarch(risen, [2026, 2027, 2028])).toEqual(['2', '4.12', '4.24']);
    expect(readTariff(JSON.stringify(risen)).findings).toEqual([]);
    expect(rateBeforeRises(risen, closeRate(risen))).toBe('pool');
  });

  it('is told as the tariff has it', () => {
    const risen = withRisenSurplus(TARIFF, { percent: '3', step: '0.01' }, LIFE);
    expect(rateBeforeRises(risen, closeRate(risen))).toBe('2.60');
    expect(rateBeforeRises(TARIFF, '2.60')).toBe('2.60');
  });
});
