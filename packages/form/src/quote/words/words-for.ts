import { ENGLISH } from './english.ts';
import type { QuoteWords } from './quote-words.ts';

/** Every language that the printed quote is written in. */
const LANGUAGES: readonly QuoteWords[] = [ENGLISH];

/**
 * The words of the printed quote for a locale; English where there are none of its language.
 *
 * @example
 * wordsFor('hi-IN').language //=> "en"
 */
export function wordsFor(locale: string | undefined): QuoteWords {
  const language = (locale ?? '').split('-')[0];
  return LANGUAGES.find((words) => words.language === language) ?? ENGLISH;
}
