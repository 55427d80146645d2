import { describe, expect, it } from 'vitest';
import { amountsOf, billOf, tariffOf } from '../../../../tests/support/make.ts';
import { unexplained } from '../../../../tests/support/recompute.ts';
import type { Charge } from '../tariff/index.ts';

const words = (id: string) => ({ id, label: id, clause: 'T 1' }) as const;
const perUnit = (id: string, on: string, rate: string): Charge => ({
  ...words(id),
  kind: 'per-unit',
  on,
  rate,
});
const credit = (parts: Partial<Charge & { kind: 'credit' }> = {}): Charge => ({
  ...words('credit'),
  kind: 'credit',
  earned: ['reward'],
  against: ['energy'],
  left: 'lapses',
  ...parts,
});

function bill(charges: readonly Charge[], units: { readonly import: string; readonly export: string }) {
  return billOf(tariffOf(charges), units);
}

const NONE_UNEXPLAINED: readonly string[] = [];
const unexplainedOf = ({ lines, payable }: ReturnType<typeof bill>): readonly string[] =>
  [...lines.map(({ figure }) => figure), payable].flatMap(unexplained).map(({ id }) => id);

describe('a credit', () => {
  const charges = [perUnit('energy', 'import', '5'), perUnit('reward', 'export', '2')];

  it('meets what it can of the lines it is set against', () => {
    // 20 × 2.00 of 100 × 5.00, and 300 × 2.00 of the same
    expect(amountsOf(bill([...charges, credit()], { import: '100', export: '20' }))).toEqual([
      ['energy', '500'],
      ['reward', '40'],
      ['credit', '-40'],
    ]);
    const more = bill([...charges, credit()], { import: '100', export: '300' });
    expect(amountsOf(more).at(-1)).toEqual(['credit', '-500']);
    expect([amountsOf(more).length, unexplainedOf(more)]).toEqual([3, NONE_UNEXPLAINED]);
  });

  it('meets so much percent of them at most, rounded as lines are', () => {
    // 33.3 % of 10.05 are 3.346 65
    const units = { import: '2.01', export: '300' };
    const part = bill([...charges, credit({ percent: '33.3' })], units);
    expect(amountsOf(part).at(-1)).toEqual(['credit', '-3.35']);
    expect(unexplainedOf(part)).toEqual(NONE_UNEXPLAINED);
  });

  it('that is below 0 is refused, not dropped', () => {
    const priced = [perUnit('energy', 'import', '5'), perUnit('reward', 'export', '-2'), credit()];
    expect(() => bill(priced, { import: '100', export: '20' })).toThrow('credit-below-nothing');
  });

  it('meets nothing of lines that come to less than 0, and says so', () => {
    const subsidised = [perUnit('energy', 'import', '-5'), perUnit('reward', 'export', '2')];
    const part = bill([...subsidised, credit({ percent: '50' })], { import: '100', export: '20' });
    expect(amountsOf(part).at(-1)).toEqual(['credit', '0']);
    expect(unexplainedOf(part)).toEqual(NONE_UNEXPLAINED);
  });

  it.each([
    ['0', '0'],
    ['49.99', '-49.99'],
    ['50', '-50'],
    ['50.01', '-50'],
    ['100', '-50'],
  ])('of 50 meets at most %s percent of 100: %s', (percent, met) => {
    const part = bill([...charges, credit({ percent })], { import: '20', export: '25' });
    expect(amountsOf(part).at(-1)).toEqual(['credit', met]);
  });

  it('comes before or after a tax, as the tax names it', () => {
    const tax = (...of: string[]): Charge => ({ ...words('tax'), kind: 'percentage', percent: '10', of });
    const units = { import: '20', export: '15' };
    const of = (charge: Charge) => amountsOf(bill([...charges, credit(), charge], units)).at(-1);
    // 100 before the credit of 30, 70 after it.
    expect(of(tax('energy'))).toEqual(['tax', '10']);
    expect(of(tax('energy', 'credit'))).toEqual(['tax', '7']);
  });

  it('comes before a tax inside its own base', () => {
    const tax: Charge = {
      ...words('tax'),
      kind: 'percentage',
      percent: '20',
      of: ['energy', 'credit'],
      inside: true,
    };
    // 70 are 80 % of 87.50; nothing is taxed where the credit meets everything.
    const of = (given: string) => bill([...charges, credit(), tax], { import: '20', export: given });
    expect(amountsOf(of('15')).at(-1)).toEqual(['tax', '17.5']);
    expect(amountsOf(of('50')).at(-1)).toEqual(['tax', '0']);
    expect(unexplainedOf(of('15'))).toEqual(NONE_UNEXPLAINED);
  });

  it('of two credits the second finds what the first has left of a line, where it names both', () => {
    const second = { ...credit({ earned: ['bonus'], against: ['energy', 'credit'] }), id: 'second' };
    const both = bill([...charges, perUnit('bonus', 'export', '3'), credit(), second], {
      import: '20',
      export: '25',
    });
    // 100 less 25 × 2.00, less 75 of which 50 are left to meet.
    expect(amountsOf(both).slice(-2)).toEqual([
      ['credit', '-50'],
      ['second', '-50'],
    ]);
  });
});
