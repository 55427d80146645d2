import { internalRates, simplePayback } from '@unitbook/engine';
import { expect, it } from 'vitest';
import { ENGLISH_CASES, ENGLISH_SENTENCES } from './english-sentences.ts';
import { paybackText, returnText } from './payback-text.ts';

const years = (count: number | null): string => (count === null ? 'never' : `${count.toFixed(1)} years`);
const told = (flows: readonly number[]): string =>
  paybackText(simplePayback(flows), ENGLISH_SENTENCES, years);

it('says one payback plainly, and none as none', () => {
  // 60 of 100 in the first year, 40 of 80 in the second.
  expect(told([-100, 60, 80])).toBe('1.5 years');
  expect(told([-100, 60])).toBe('never');
});

it('says of a price that is owed again when it is back for good, or that it is not', () => {
  // −100 + 200 = 100, − 150 = −50, + 100 = 50: back after half of year 1, owed again, back after half of year 3.
  expect(told([-100, 200, -150, 100])).toBe('0.5 years at first, for good after 2.5 years');
  expect(told([-100, 200, -150])).toBe('0.5 years at first, owed again at the end');
  // Nothing is paid, then something is replaced.
  expect(told([0, 50, -80])).toBe('0.0 years at first, owed again at the end');
});

const rated = (flows: readonly number[]): string =>
  returnText(internalRates(flows), ENGLISH_CASES, (part) => `${(part * 100).toFixed(0)} %`);

it('never says one of several rates, and says none as none', () => {
  expect(rated([-100, 125])).toBe('25 %');
  // −1.6 + 10 ÷ 1.25 − 10 ÷ 1.25² = −1.6 + 8 − 6.4 = 0, and −1.6 + 10 ÷ 5 − 10 ÷ 25 = 0.
  expect(rated([-1.6, 10, -10])).toBe('several: 25 %, 400 %');
  expect(rated([1000, -3000, 2500])).toBe('none');
});
