import { describe, expect, it } from 'vitest';
import { firstYearQuote, sayingQuote, workedQuote } from '../../../../tests/support/demo-quote.ts';
import { FLYER_CLAIMS, type FlyerClaim } from './flyer-document.ts';
import { flyerLines } from './flyer-lines.ts';

const DEMO = workedQuote();

const line = (claim: FlyerClaim, claimed: string, quote = DEMO) => {
  const [one] = flyerLines({ format: 'unitbook-flyer-1', [claim]: claimed }, quote);
  return [one?.unit, one?.claimed, one?.ours, one?.difference];
};

describe('a claim beside the quote', () => {
  it.each<readonly [FlyerClaim, string, string, string, string]>([
    // The scenario: 36,673.88 saved, 5,520 made, 3,336.72 left of the bills, 4.597 years.
    ['claimedSaving', '40000.5', 'money', '36673.88', '3326.62'],
    ['claimedSaving', '40000.125', 'money', '36673.880', '3326.245'],
    ['claimedPayback', '4', 'years', '4.6', '-0.6'],
    ['claimedPayback', '4.60', 'years', '4.60', '0.00'],
    ['claimedPayback', '4.000', 'years', '4.597', '-0.597'],
    ['claimedGeneration', '6000', 'kWh', '5520', '480'],
    ['claimedGeneration', '5519.5', 'kWh', '5520.0', '-0.5'],
    // 36,673.88 ÷ 5,520 is 6.6438…
    ['claimedRate', '8', 'money-a-unit', '6.64', '1.36'],
    ['claimedRate', '8.0000', 'money-a-unit', '6.6438', '1.3562'],
    ['price', '200000', 'money', '216000.00', '-16000.00'],
    ['claimedSize', '5.5', 'kWp', '4.0', '1.5'],
    ['subsidy', '78000', 'money', '54000.00', '24000.00'],
    ['netPrice', '162000', 'money', '162000.00', '0.00'],
    // 3,336.72 ÷ 12
    ['monthlyBillAfter', '0', 'money', '278.06', '-278.06'],
    ['escalation', '5', 'percent', '2', '3'],
  ])('%s of %s', (claim, claimed, unit, ours, difference) => {
    expect(line(claim, claimed)).toEqual([unit, claimed, ours, difference]);
  });

  it('has nothing beside it where the quote has none', () => {
    const dear = { ...DEMO, outlay: { ...DEMO.outlay, price: 1_000_000_000 } };
    expect(line('claimedPayback', '4', dear)).toEqual(['years', '4', null, null]);
    const dark = firstYearQuote(DEMO, { generation: 0 });
    expect(line('claimedRate', '8', dark)).toEqual(['money-a-unit', '8', null, null]);
  });

  it('of a rise stands beside the highest of the quote', () => {
    const rising = (charges: Readonly<Record<string, string>>) =>
      sayingQuote(DEMO, { escalation: { charges, basis: 'invented' } });
    expect(line('escalation', '5', rising({ energy: '1.25', fuel: '1.5', fixed: '-1' }))).toEqual([
      'percent',
      '5',
      '1.5',
      '3.5',
    ]);
    expect(line('escalation', '5', rising({}))).toEqual(['percent', '5', '0', '5']);
  });
});

it('puts claims in one order, whatever that of the flyer', () => {
  const claims = Object.fromEntries([...FLYER_CLAIMS].reverse().map((claim) => [claim, '1']));
  const lines = flyerLines({ format: 'unitbook-flyer-1', ...claims }, DEMO);
  expect(lines.map(({ claim }) => claim)).toEqual([
    'claimedSize',
    'claimedSaving',
    'claimedPayback',
    'claimedGeneration',
    'claimedRate',
    'price',
    'subsidy',
    'netPrice',
    'monthlyBillAfter',
    'escalation',
  ]);
});
