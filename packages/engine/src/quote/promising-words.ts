/** Words of offers that promise more than a plant can keep. */
const PROMISES: readonly RegExp[] = [
  /\b(?:zero|nil)[\s-]+(?:[a-z]+[\s-]+)?bills?\b/gi,
  // "free-standing" promises nothing.
  /\bfree\b(?!-)/gi,
  /\bguarantee[sd]?\b/gi,
];

/** "Not guaranteed", "never a zero bill": what stands right before such a word and denies it. */
const DENIED = /(?:\b(?:not|no|nor|never|without|cannot)|n['’]t)\s+(?:be\s+)?(?:an?\s+|the\s+)?$/i;

/** More of the text before a word is not looked at. */
const LOOK_BACK = 24;

/**
 * The words of a text that promise too much: "zero bill", "free", "guaranteed". Those that the text itself denies
 * are left out: an honest offer says "not guaranteed".
 *
 * @returns in small letters, in the order of the text, each once
 * @example
 * promisingWords('Zero bill, guaranteed!') //=> ["zero bill","guaranteed"]
 * promisingWords('An estimate, not a guarantee') //=> []
 */
export function promisingWords(text: string): readonly string[] {
  const found = PROMISES.flatMap((promise) => [...text.matchAll(promise)])
    .filter(({ index }) => !DENIED.test(text.slice(Math.max(0, index - LOOK_BACK), index)))
    .sort((one, other) => one.index - other.index);
  return [...new Set(found.map(([words]) => words.toLowerCase().replace(/[\s-]+/g, ' ')))];
}

/**
 * Whether words promise that nothing has to be paid.
 *
 * @example
 * saysZeroBill('zero bill') //=> true
 */
export function saysZeroBill(words: string): boolean {
  return /bills?$/.test(words);
}

/**
 * Words in quotation marks, one after the other.
 *
 * @example
 * quotedWords(['free', 'guaranteed']) //=> "\"free\", \"guaranteed\""
 */
export function quotedWords(words: readonly string[]): string {
  return words.map((word) => `"${word}"`).join(', ');
}
