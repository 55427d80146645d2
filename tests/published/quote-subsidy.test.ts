import { byRuleOfThumb, checkQuote, outlayOf, type QuoteDocument } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import subsidy from './data/quotes/subsidy-by-kilowatt.json' with { type: 'json' };
import { workedQuote } from '../support/demo-quote.ts';

const CENTS = 100;
const { document: demo } = workedQuote().input;

/** The demo quote for a plant of another size, with the subsidy of the scheme. */
const offered = (kWp: string): QuoteDocument => ({
  ...demo,
  plant: { ...demo.plant, kWp },
  subsidy: { ...subsidy, to: 'customer' },
});

/** What the scheme pays for a plant, in whole coins. */
function subsidyOf(kWp: string): number {
  const { value, findings } = checkQuote(offered(kWp));
  if (value === null) throw new Error(findings.map(({ found }) => found).join('; '));
  return outlayOf(value.document, CENTS, value.watts).subsidy;
}

/**
 * PM Surya Ghar: plan for subsidies up to Rs 78,000, New Indian Express, 1 March 2024 (E21). Read as tiers: 30,000
 * for each kW to 2 kW, 18,000 for the third, nothing beyond.
 */
describe('the subsidy by tiers', () => {
  it.each([
    ['1', 3_000_000],
    ['2', 6_000_000],
    ['3', 7_800_000],
    ['4', 7_800_000],
  ])('of a plant of %s kW', (kWp, coins) => {
    expect(subsidyOf(kWp)).toBe(coins);
  });

  // Not published: worked out by hand from the tiers. 60,000 + 0.5 × 18,000; 0.001 × 30,000; 60,000 + 0.001 × 18,000.
  it.each([
    ['2.5', 6_900_000],
    ['0.001', 3_000],
    ['2.001', 6_001_800],
    ['3.001', 7_800_000],
  ])('of a plant of %s kW, between the published sizes', (kWp, coins) => {
    expect(subsidyOf(kWp)).toBe(coins);
  });

  it('is the same where the most is said, and the tiers go on', () => {
    const { tiers } = subsidy;
    const endless = {
      ...offered('4'),
      subsidy: {
        ...subsidy,
        to: 'customer' as const,
        tiers: [tiers[0], { perKilowatt: '18000' }],
        most: '78000',
      },
    } as QuoteDocument;
    expect([2000, 3000, 4000].map((watts) => outlayOf(endless, CENTS, watts).subsidy)).toEqual([
      6_000_000, 7_800_000, 7_800_000,
    ]);
  });
});

/** PM Surya Ghar scheme, Online38media, 2024 (E20): 3 kW × 4 units × 30 × 12 × Rs 7. */
describe('the rule of thumb of the scheme', () => {
  it('has 360 days in a year', () => {
    expect(byRuleOfThumb('3', '7')).toMatchObject({
      isRuleOfThumb: true,
      unitsPerKilowatt: '1440',
      units: '4320',
      saving: '30240',
    });
  });
});
