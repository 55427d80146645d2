import { expect, it } from 'vitest';
import { checkBase, MAY } from './check-base-month.ts';

// The base month of the project reference "causes", 2.1 (2026): 412 taken, 278 given, 35 brought forward, so 99 billed.
// By hand, with the credit lost and slabs on all that was taken: 50 × 3.00 + 100 × 4.80 + 150 × 6.50 + 112 × 8.00 =
// 2,501.00, less 278 × 3.00 = 834.00, leave 1,667.00; fuel on 412 − 278 = 134 units 134 × 0.40 = 53.60; tax 6 % of
// 1,667.00 = 100.02; 240.00 + 1,667.00 + 53.60 + 100.02 − 75.00 = 1,985.62.
it('finds a mistake of the slabs behind one of the credit', () => {
  const [checked] = checkBase([
    {
      ...MAY,
      units: { import: '412', export: '278', billed: '134' },
      opening: { credit: '0' },
      closing: { credit: '0' },
      lines: [
        { charge: 'fixed', amount: '240.00' },
        { charge: 'energy', amount: '1667.00' },
        { charge: 'fuel', amount: '53.60' },
        { charge: 'tax', amount: '100.02' },
        { charge: 'subsidy', amount: '-75.00' },
      ],
      sum: '1985.62',
      payable: '1986',
    },
  ]).bills;
  expect(
    checked?.explanations.map(({ attempt }) => attempt.steps.map(({ cause }) => cause.id).join(' + ')),
  ).toEqual(['credit-not-brought-forward + slabs-on-import']);
});
