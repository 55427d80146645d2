import { ENGLISH } from './english.ts';
import type { QuoteWords } from './quote-words.ts';

/** Fetches the words of a language. */
export type FetchWords = () => Promise<QuoteWords>;

/** Languages by the names that locales begin with. */
export type Languages = ReadonlyMap<string, FetchWords>;

/** Every language of the printed quote but English, which is there from the start. */
export const LANGUAGES: Languages = new Map<string, FetchWords>([
  ['hi', async () => (await import('./hindi.ts')).HINDI],
  ['de', async () => (await import('./german.ts')).GERMAN],
  ['fr', async () => (await import('./french.ts')).FRENCH],
  ['es', async () => (await import('./spanish.ts')).SPANISH],
]);

/** The language of a locale: "hi" of "hi-IN". */
function languageOf(locale: string | undefined): string {
  return /^[a-z]+/i.exec(locale ?? '')?.[0].toLowerCase() ?? 'en';
}

/** In which words the quote is printed. */
export interface PaperLanguage {
  readonly words: QuoteWords;
  /** Why it is English instead; '' for nothing. */
  readonly problem: string;
  /** Fetch the words again that could not be fetched. */
  readonly again: () => void;
}

/** The words of the printed quote: English until those of the quote's language have come. */
export class QuoteLanguages implements PaperLanguage {
  words: QuoteWords = ENGLISH;
  problem = '';
  private language = ENGLISH.language;
  private readonly arrived = new Map<string, QuoteWords>([[ENGLISH.language, ENGLISH]]);
  private readonly told: () => void;
  private readonly languages: Languages;

  /** @param told  of words that came, or could not be fetched */
  constructor(told: () => void, languages: Languages = LANGUAGES) {
    this.told = told;
    this.languages = languages;
  }

  /** Have the words of a locale's language, from now or from when they come. */
  readonly want = (locale: string | undefined): void => {
    const language = languageOf(locale);
    if (language === this.language) return;
    this.language = language;
    this.fetch();
  };

  readonly again = (): void => {
    this.fetch();
    this.told();
  };

  private fetch(): void {
    const { language } = this;
    const known = this.arrived.get(language);
    const fetchWords = this.languages.get(language);
    this.words = known ?? ENGLISH;
    this.problem = '';
    if (known !== undefined || fetchWords === undefined) return;
    fetchWords().then(
      (words) => {
        this.arrived.set(language, words);
        this.tell(language, words, '');
      },
      () => {
        this.tell(
          language,
          ENGLISH,
          'The words of this language could not be fetched, so the quote is printed in English.',
        );
      },
    );
  }

  /** What came of a fetch, unless another language is wanted by now. */
  private tell(language: string, words: QuoteWords, problem: string): void {
    if (language !== this.language) return;
    this.words = words;
    this.problem = problem;
    this.told();
  }
}
