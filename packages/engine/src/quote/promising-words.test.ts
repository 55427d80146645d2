import { expect, it } from 'vitest';
import { promisingWords, quotedWords, saysZeroBill } from './promising-words.ts';

it.each([
  ['zero bill, saves 44,160 a year', ['zero bill']],
  ['ZERO-BILL home', ['zero bill']],
  ['A zero electricity bill and nil bills later', ['zero electricity bill', 'nil bills']],
  ['Free of charge, free for ever', ['free']],
  ['Guaranteed units, with a guarantee', ['guaranteed', 'guarantee']],
  ['He guarantees a maintenance-free plant', ['guarantees', 'free']],
  ['Free plant, guaranteed zero bill', ['free', 'guaranteed', 'zero bill']],
])('finds what promises too much: %s', (text, words) => {
  expect(promisingWords(text)).toEqual(words);
});

it.each([
  [''],
  ['An estimate, not a guarantee'],
  ['Units are not guaranteed'],
  ["We don't guarantee units"],
  ['It cannot be guaranteed'],
  ['Never a zero bill'],
  ['On a free-standing frame, freely chosen'],
  ['none from 9 to 16 h; nothing taken off'],
  ['No guarantee'],
])('leaves out what is denied, or another word: %s', (text) => {
  expect(promisingWords(text)).toEqual([]);
});

it('takes a denial only for the word it stands before', () => {
  expect(promisingWords('No bill, free power')).toEqual(['free']);
  expect(promisingWords('Not guaranteed to be free')).toEqual(['free']);
});

it('tells a zero bill from other words, and quotes', () => {
  expect(['zero bill', 'nil bills', 'free'].map(saysZeroBill)).toEqual([true, true, false]);
  expect(quotedWords(['free', 'zero bill'])).toBe('"free", "zero bill"');
  expect(quotedWords([])).toBe('');
});
