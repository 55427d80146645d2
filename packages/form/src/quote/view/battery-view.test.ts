import type { Quote } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { writingFor } from '../../writing/writing.ts';
import { batteryLines } from './battery-view.ts';
import { quoteWriting } from './quote-writing.ts';

const writing = quoteWriting(writingFor('en-IN', 'INR'), { locale: 'en-IN', grid: 100 });

const lines = (
  battery: Quote['battery'],
  rest: { readonly ownUse?: Quote['ownUse']; readonly replacement?: unknown } = {},
) => {
  const { ownUse = 'share', replacement } = rest;
  const document = { battery: { replacement } };
  return batteryLines({ battery, ownUse, input: { document } } as unknown as Quote, writing);
};

it('says nothing of a battery that is not there', () => {
  expect(lines(null)).toEqual([]);
});

it('gives its own saving and payback, and what they hang on', () => {
  const [saving, payback] = lines({
    cost: 60_000_00,
    saving: 4_500_25,
    payback: 12.75,
    paybackForGood: 12.75,
  });
  expect(saving?.value).toBe('₹4,500.25');
  expect(saving?.note).toBe('An estimate by the mean day of each month, and rather too high.');
  expect(payback?.value).toBe('12.8 years');
  expect(payback?.note).toBe('It costs ₹60,000.00. The answer above is that of plant and battery together.');
});

it('says of one that costs more than it brings', () => {
  const replacement = { year: '13', amount: '40000' };
  const [saving, payback] = lines(
    { cost: 60_000_00, saving: -618_59, payback: null, paybackForGood: null },
    { ownUse: 'profile', replacement },
  );
  expect(saving?.value).toBe('−₹618.59');
  expect(saving?.note).toMatch(/^Charged and discharged interval by interval\. Less is saved with it/);
  expect(payback?.value).toBe('not within the life');
  expect(payback?.note).toContain('The next one, for ₹40,000.00 in year 13, is counted.');
});

it('says that the next battery is owed again', () => {
  const [, payback] = lines({ cost: 60_000_00, saving: 9_000_00, payback: 6.67, paybackForGood: 17.5 });
  expect(payback?.value).toBe('6.7 years at first, for good after 17.5 years');
});
