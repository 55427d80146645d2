import { expect, it } from 'vitest';
import { sayingQuote, workedQuote } from '../../../../tests/support/demo-quote.ts';
import { lowGeneration } from './low-generation.ts';

const quote = workedQuote();
const { uncertainty } = quote.input.document;
if (uncertainty === undefined) throw new Error('The demo says how sure it is.');

it('is exceeded with a chance of 90 %, in the mean of the years and in a single one', () => {
  // 5,520 × (1 − 1.28155 × 0.078) = 5,520 − 551.79 = 4,968.21.
  // √(0.078² + 0.039²) = √(0.006084 + 0.001521) = 0.087207; 5,520 × (1 − 1.28155 × 0.087207) = 5,520 − 616.92 = 4,903.08.
  expect(lowGeneration(quote)).toEqual({ mean: 4_968_000, year: 4_903_000 });
});

it('says nothing of a single year where years are not said to differ', () => {
  const plain = { ...uncertainty, yearToYear: undefined };
  expect(lowGeneration(sayingQuote(quote, { uncertainty: plain }))).toEqual({ mean: 4_968_000, year: null });
});

it('is never below nothing, and not there where nothing is said', () => {
  // 1 − 1.28155 × 0.9 = −0.15.
  const wild = { ...uncertainty, generation: '90', yearToYear: '0' };
  expect(lowGeneration(sayingQuote(quote, { uncertainty: wild }))).toEqual({ mean: 0, year: 0 });
  expect(lowGeneration(sayingQuote(quote, { uncertainty: undefined }))).toBeNull();
});
