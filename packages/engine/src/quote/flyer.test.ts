import { describe, expect, it } from 'vitest';
import { firstYearQuote, workedQuote } from '../../../../tests/support/demo-quote.ts';
import type { FlyerDocument } from './flyer-document.ts';
import { checkFlyer } from './flyer.ts';

const DEMO = workedQuote();
/** 4 kW × 60.00 × 12; the last slab; the rate of surplus. */
const FACTS = { fixedCharges: 288_000, topRate: '8.00', surplusRate: '2.60' };

const flyer = (claims: Omit<FlyerDocument, 'format'>): FlyerDocument => ({
  format: 'unitbook-flyer-1',
  ...claims,
});

/** The flyer of the invented scenario: 5,520 × 8.00 and 1,62,000 ÷ 44,160. */
const RIVAL = flyer({
  claimedSaving: '44160',
  claimedPayback: '3.7',
  words: 'zero bill, saves Rs 44,160 a year, payback 3.7 years',
});

const SIX = [
  'quote/flyer-saving-above-bills',
  'quote/flyer-top-rate',
  'quote/flyer-fixed-charges',
  'quote/flyer-surplus-at-retail',
  'quote/flyer-no-upkeep',
  'quote/flyer-subsidy-assumed',
];

const codes = (claims: FlyerDocument, facts: Parameters<typeof checkFlyer>[2] = FACTS) =>
  checkFlyer(claims, DEMO, facts).findings.map(({ code }) => code);

describe('the flyer of the scenario', () => {
  it('is asked about the six things of the scenario, and no other', () => {
    expect(codes(RIVAL)).toEqual(SIX);
  });

  it('also where the rate of surplus and the fixed charges are not known', () => {
    expect(codes(RIVAL, { fixedCharges: null, topRate: '8' })).toEqual(SIX);
    expect(codes(RIVAL, { ...FACTS, surplusRate: null })).toEqual(SIX);
  });

  it('is not asked about the highest rate where that is not known', () => {
    const known = SIX.filter((code) => !/top-rate|retail/.test(code));
    expect(codes(RIVAL, { ...FACTS, topRate: null })).toEqual(known);
  });

  it('stands beside the quote, claim by claim', () => {
    expect(checkFlyer(RIVAL, DEMO, FACTS).lines).toEqual([
      {
        claim: 'claimedSaving',
        unit: 'money',
        claimed: '44160',
        ours: '36673.88',
        difference: '7486.12',
      },
      { claim: 'claimedPayback', unit: 'years', claimed: '3.7', ours: '4.6', difference: '-0.9' },
    ]);
  });

  it('says everything in full', () => {
    const said = checkFlyer(RIVAL, DEMO, FACTS).findings;
    expect(said.map(({ found }) => found)).toEqual([
      'a saving of 44160 a year',
      'every one of 5520 units at 8.00, the highest rate of the tariff',
      'a saving of 44160 a year, the words "zero bill"',
      '8.00 for every unit that is made, surplus too',
      'a payback of 3.7 years: 162000.00 ÷ 44160, with nothing taken off',
      'a price of 162000.00: 216000.00 less a subsidy of 54000.00',
    ]);
    // Maintenance of 2,400 growing by 4 %, each year rounded to coins: 99,950.20; an inverter of 32,000.
    expect(said.map(({ expected }) => expected)).toEqual([
      'at most the bills of a year without the plant, 38931.60, and 1079.00 for surplus',
      'each unit at the rate it is billed at: 36673.88 in the first year by this quote',
      '2880.00 a year that stay on the bills, the fixed charges',
      'surplus at what is paid for it: 1079.00 in the first year by this quote, 2.60 for a unit',
      'maintenance and what is replaced taken off: 131950.20 in 25 years by this quote',
      'the whole price, which is paid first, and the payback without the subsidy',
    ]);
    expect(said.map(({ remedy }) => remedy)).toEqual([
      'Ask which bills it was worked out from.',
      'Ask for the bills of twelve months, before and after.',
      'Ask what the smallest bill will be; by this quote it is 240.00.',
      'Ask how many units are left over in a year, and what is paid for them.',
      'Ask what maintenance costs, and when the inverter is replaced.',
      'Ask who receives the subsidy, when, and what happens if it is refused.',
    ]);
    expect(said.map(({ severity, path }) => `${severity} ${path.join('.')}`)).toEqual([
      'question claimedSaving',
      'question claimedSaving',
      'question claimedSaving',
      'question claimedSaving',
      'question claimedPayback',
      'note claimedPayback',
    ]);
  });
});

it('asks nothing of a flyer that reckons as the quote does, and nothing of an empty one', () => {
  const same = flyer({
    claimedSaving: '36673.88',
    claimedPayback: '4.6',
    claimedGeneration: '5520',
    price: '216000',
    monthlyBillAfter: '278.06',
    escalation: '2',
    words: 'An estimate, not a guarantee',
  });
  expect(codes(same)).toEqual([]);
  expect(checkFlyer(same, DEMO, FACTS).lines.map(({ difference }) => difference)).toEqual([
    '0.00',
    '0.0',
    '0',
    '0.00',
    '0.00',
    '0',
  ]);
  expect(checkFlyer(flyer({}), DEMO, FACTS)).toEqual({ lines: [], findings: [] });
});

describe('words', () => {
  const said = (words: string, quote = DEMO) =>
    checkFlyer(flyer({ words }), quote, FACTS).findings.map(({ severity, path, found, expected, remedy }) => [
      `${severity} ${path.join('.')}`,
      found,
      expected,
      remedy,
    ]);

  it('that promise too much are asked about', () => {
    expect(said('Zero bill! Free cleaning')).toEqual([
      [
        'question words',
        'the words "zero bill", "free"',
        'words that the bills bear out: 3336.72 stay in the first year by this quote',
        'Ask for it in writing: who answers for it, for how long and how it is measured.',
      ],
    ]);
  });

  it('of a zero bill are true where no bill stays', () => {
    expect(said('zero bill', firstYearQuote(DEMO, { after: 0 }))).toEqual([]);
    expect(said('zero bill', firstYearQuote(DEMO, { after: 1 }))).toHaveLength(1);
  });

  it('of a zero bill are told once, others beside it', () => {
    const findings = checkFlyer({ ...RIVAL, words: 'zero bill, free' }, DEMO, FACTS).findings;
    expect(findings.map(({ code }) => code)).toEqual([...SIX, 'quote/flyer-words']);
    expect(findings.at(-1)?.found).toBe('the words "free"');
  });
});

describe('rises of rates', () => {
  it.each([['3'], ['3.0'], ['-1']])('by %s %% are not asked about', (escalation) => {
    expect(codes(flyer({ escalation }))).toEqual([]);
  });

  it('above 3 % are', () => {
    expect(checkFlyer(flyer({ escalation: '3.001' }), DEMO, FACTS).findings).toMatchObject([
      {
        code: 'quote/flyer-rise',
        severity: 'question',
        path: ['escalation'],
        found: 'rates that rise by 3.001 % a year',
        expected: 'at most 3 % a year, with its basis',
        remedy: 'Ask what the rise is based on.',
      },
    ]);
  });
});
