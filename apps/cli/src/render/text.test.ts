import { describe, expect, it } from 'vitest';
import { plainText, wrap, wrapIndented } from './text.ts';

describe('plainText', () => {
  it('writes out what would move the cursor or turn the text', () => {
    expect(plainText('a\u001b[2Jb\nc\u202ed')).toBe('a\\u001b[2Jb\\u000ac\\u202ed');
  });

  it('leaves letters of any script alone', () => {
    expect(plainText('घर Σπίτι ₹')).toBe('घर Σπίτι ₹');
  });
});

describe('wrap', () => {
  it('breaks at spaces, not within a word or a clause', () => {
    expect(wrap('one two three', 8)).toEqual(['one two', 'three']);
    expect(wrap('a [TO-2024 cl. 4.2] b', 6)).toEqual(['a', '[TO-2024 cl. 4.2]', 'b']);
    expect(wrap('', 8)).toEqual(['']);
  });

  it('fills a line to its last column', () => {
    expect(wrap('1234 678', 8)).toEqual(['1234 678']);
    expect(wrap('1234 6789', 8)).toEqual(['1234', '6789']);
  });

  it('sets later lines further in', () => {
    expect(wrapIndented('one two three', ' ', 9, '  ')).toEqual([' one', '   two', '   three']);
  });
});
