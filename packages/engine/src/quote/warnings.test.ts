import type { Finding } from '@unitbook/engine';
import { describe, expect, it } from 'vitest';
import { firstYearQuote, sayingQuote, workedQuote } from '../../../../tests/support/demo-quote.ts';
import type { Quote } from './quote.ts';
import { quoteWarnings } from './warnings.ts';

const DEMO = workedQuote();
/** 4 kW × 60.00 × 12. */
const FACTS = { fixedCharges: 288_000 };
const { document } = DEMO.input;

/** The one warning with a code, as its severity, place and sentences. */
function told(quote: Quote, code: string, facts = FACTS): readonly unknown[] {
  return quoteWarnings(quote, facts)
    .filter((one) => one.code === code)
    .map(({ severity, path, found, expected, remedy }: Finding) => [
      `${severity} ${path.join('.')}`,
      found,
      expected,
      remedy,
    ]);
}

const codes = (quote: Quote, facts = FACTS): readonly string[] =>
  quoteWarnings(quote, facts).map(({ code }) => code);

it('says of the demo quote that surplus is in its saving and that its payback hangs on the subsidy', () => {
  expect(codes(DEMO)).toEqual(['quote/saving-above-charges-for-units', 'quote/payback-with-subsidy']);
});

describe('a saving', () => {
  const ABOVE = 'quote/saving-above-charges-for-units';
  const saving = (amount: number, surplus = 107_900): Quote =>
    firstYearQuote(DEMO, { saving: amount, surplus });

  // The scenario: 36,673.88 with surplus of 1,079.00, bills of 38,931.60 before; 38,931.60 − 2,880.00.
  it('above what units are charged is noted, with the surplus in it', () => {
    expect(told(DEMO, ABOVE)).toEqual([
      [
        'note ',
        'a saving of 36673.88 in the first year, 1079.00 of it surplus paid out',
        'at most 36051.60 off the bills: 2880.00 a year stay on them, the fixed charges',
        'Name what surplus brings apart from what the bills save: it is paid later, at a rate of its own.',
      ],
    ]);
  });

  it('goes by twelve times the smallest bill where fixed charges are not known', () => {
    const [finding] = quoteWarnings(DEMO);
    expect(finding?.expected).toBe(
      'at most 36051.60 off the bills: 2880.00 a year stay on them, twelve times the smallest bill',
    );
  });

  it('without surplus says nothing of it', () => {
    const [finding] = quoteWarnings(saving(3_605_161, 0), FACTS);
    expect(finding?.found).toBe('a saving of 36051.61 in the first year');
  });

  it.each([
    [0, []],
    [3_605_160, []],
    [3_605_161, [ABOVE]],
    [3_893_160, [ABOVE]],
    [3_893_161, ['quote/saving-above-bills']],
  ])('of %i coins: %j', (amount, expected) => {
    expect(codes(saving(amount)).filter((code) => code.includes('saving'))).toEqual(expected);
  });

  it('above the whole bill is asked about', () => {
    expect(told(saving(3_893_161), 'quote/saving-above-bills')).toEqual([
      [
        'question ',
        'a saving of 38931.61 in the first year, 1079.00 of it surplus paid out',
        'at most the bills of that year without the plant, 38931.60',
        'Check the size of the plant; name what surplus brings apart from what the bills save.',
      ],
    ]);
  });
});

describe('a yield', () => {
  const usual = (usualYield: string): Quote =>
    sayingQuote(DEMO, { generation: { ...document.generation, usualYield } });

  // 5,520 kWh of 4 kWp are 1,380 each.
  it('on that of the region is not told, nor is any where that is not known', () => {
    const { months = {}, source } = document.generation;
    expect(codes(usual('1380'))).not.toContain('quote/yield-above-usual');
    expect(codes(sayingQuote(DEMO, { generation: { months, source } }))).not.toContain(
      'quote/yield-above-usual',
    );
  });

  it('above it is asked about, with places that tell the two apart', () => {
    expect(told(usual('1379.999'), 'quote/yield-above-usual')).toEqual([
      [
        'question generation',
        '1380.0 kWh per kWp in the first year',
        'at most what plants of the region make, 1379.999',
        'Check irradiation, losses and shade, or say why this plant makes more.',
      ],
    ]);
    const close = firstYearQuote(usual('1380'), { generation: 5_520_001 });
    expect(told(close, 'quote/yield-above-usual')[0]).toContain('1380.0003 kWh per kWp in the first year');
  });
});

describe('the size of a plant', () => {
  const CODE = 'quote/generation-above-use';
  const year = (generation: number, use: number): Quote => firstYearQuote(DEMO, { generation, use });

  it('up to 110 % of the use is not told', () => {
    expect(codes(year(5_500_000, 5_000_000))).not.toContain(CODE);
    expect(codes(year(0, 0))).not.toContain(CODE);
  });

  it('beyond is asked about, by the smallest part of a unit', () => {
    expect(told(year(5_500_001, 5_000_000), CODE)).toEqual([
      [
        'question generation',
        '5500.001 units made and 5000 used in the first year',
        'at most 110 % of what is used',
        'Offer a smaller plant too, or say what the units left over are paid.',
      ],
    ]);
    expect(codes(year(1000, 0))).toContain(CODE);
  });
});

describe('a subsidy', () => {
  const CODE = 'quote/payback-with-subsidy';
  const subsidy = { amount: '54000', paidAfter: '0', to: 'seller', source: 'invented' } as const;

  // The scenario: 4.597 years with it, 6.063 without.
  it('is noted with both paybacks', () => {
    expect(told(DEMO, CODE)).toEqual([
      [
        'note subsidy',
        'a payback that hangs on a subsidy of 54000.00, paid to the customer 4 months after the start: 4.6 years',
        'the payback without it beside it: 6.1 years',
        'Print both, and say who bears it when the subsidy comes late or not at all.',
      ],
    ]);
  });

  it.each([
    ['0', 'paid to the seller at the start'],
    ['1', 'paid to the seller 1 month after the start'],
    ['2', 'paid to the seller 2 months after the start'],
  ])('after %s months says to whom and when', (paidAfter, words) => {
    const [finding] = told(sayingQuote(DEMO, { subsidy: { ...subsidy, paidAfter } }), CODE);
    expect(JSON.stringify(finding)).toContain(words);
  });

  it('without which the price never comes back says so', () => {
    const dear = { ...DEMO, outlay: { ...DEMO.outlay, price: 200_000_000, subsidy: 1 } };
    const [finding] = quoteWarnings(dear, FACTS).filter(({ code }) => code === CODE);
    expect(finding?.expected).toBe('the payback without it beside it: not within the life');
  });

  it('that is refused or not there is not told', () => {
    expect(codes(workedQuote({}, false))).not.toContain(CODE);
    expect(codes(workedQuote({ subsidy: undefined }))).not.toContain(CODE);
  });
});

it('notes a battery in the price', () => {
  const battery = { capacity: '5', power: '2.5', efficiency: '90', cost: '95000.5' };
  const quote = sayingQuote(DEMO, { battery });
  const priced = { ...quote, outlay: { ...quote.outlay, price: 31_100_050 } };
  expect(told(priced, 'quote/battery-in-price')).toEqual([
    [
      'note battery.cost',
      'a battery of 95000.50 in the price of 311000.50, and a payback of both together',
      'plant and battery each with its own price, saving and payback',
      'Name what the battery saves by itself beside the payback of both: the quote works it out.',
    ],
  ]);
});

it('tells everything at once, in the order of the quote', () => {
  const { charges, basis } = { charges: { energy: '5' }, basis: '' };
  const quote = sayingQuote(DEMO, {
    escalation: { charges, basis },
    degradation: { first: '0', later: '0' },
    upkeep: { ...document.upkeep, replacements: [] },
    offer: { ...document.offer, promise: 'Zero bill' },
  });
  expect(codes(quote)).toEqual([
    'quote/saving-above-charges-for-units',
    'quote/rise-above-usual',
    'quote/rise-without-basis',
    'quote/no-replacement',
    'quote/no-degradation',
    'quote/promising-words',
    'quote/payback-with-subsidy',
  ]);
});
