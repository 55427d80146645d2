import { expect, it } from 'vitest';
import { writingFor } from '../../writing/writing.ts';
import { fixedText } from './fixed-text.ts';

it('keeps all decimals, in the grouping of the household', () => {
  const indian = writingFor('en-IN', 'INR');
  expect(['2.70', '116444.50', '0.00', '96', '-0.50', ''].map((text) => fixedText(text, indian))).toEqual([
    '2.70',
    '1,16,444.50',
    '0.00',
    '96',
    '−0.50',
    '',
  ]);
  expect(fixedText('116444.50', writingFor('de-DE', 'EUR'))).toBe('116.444,50');
});
