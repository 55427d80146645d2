import { expect, it } from 'vitest';
import { blankQuote } from './blank-quote.ts';
import { takeAt, putAt } from './edit-quote.ts';
import { followNames } from './follow-names.ts';

const quote = {
  ...blankQuote('en-IN', ''),
  policies: [
    { name: 'first', from: '2' },
    { name: 'second', from: '3' },
  ],
  uncertainty: {
    generation: '',
    use: '',
    escalation: '',
    degradation: '',
    policy: { name: 'second', percent: '30' },
  },
};

it('means a case by its new name', () => {
  const renamed = putAt(quote, ['policies', 1, 'name'], 'another');
  expect(followNames(quote, renamed).uncertainty?.policy).toEqual({ name: 'another', percent: '30' });
});

it('leaves it where another case is renamed, one is taken out, or it means another now', () => {
  const other = putAt(quote, ['policies', 0, 'name'], 'another');
  expect(followNames(quote, other)).toBe(other);
  const without = takeAt(quote, ['policies', 0])?.quote ?? quote;
  expect(followNames(quote, without)).toBe(without);
  const changed = putAt(quote, ['uncertainty', 'policy', 'name'], 'first');
  expect(followNames(quote, changed)).toBe(changed);
});
