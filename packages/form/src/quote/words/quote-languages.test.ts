import { expect, it, vi } from 'vitest';
import { ENGLISH } from './english.ts';
import { QuoteLanguages, type FetchWords } from './quote-languages.ts';
import type { QuoteWords } from './quote-words.ts';

const words = (language: string): QuoteWords => ({ ...ENGLISH, language });

/** Languages that come, or do not, when they are told to. */
function shelf() {
  const asked: { language: string; come: () => void; fail: () => void }[] = [];
  const fetches =
    (language: string): FetchWords =>
    () =>
      new Promise((resolve, reject) => {
        asked.push({
          language,
          come: () => {
            resolve(words(language));
          },
          fail: () => {
            reject(new Error('offline'));
          },
        });
      });
  const told = vi.fn();
  const known = new Map(['hi', 'de'].map((language) => [language, fetches(language)]));
  const languages = new QuoteLanguages(told, known);
  const settled = async (): Promise<void> => {
    await new Promise((resolve) => setTimeout(resolve, 0));
  };
  return { languages, asked, told, settled };
}

it('is English until the language has come', async () => {
  const { languages, asked, told, settled } = shelf();
  languages.want('hi-IN');
  expect(languages.words.language).toBe('en');
  asked[0]?.come();
  await settled();
  expect(languages.words.language).toBe('hi');
  expect(told).toHaveBeenCalledOnce();
});

it('fetches nothing for English, nor for a language that it does not have', () => {
  const { languages, asked } = shelf();
  for (const locale of [undefined, '', 'en-IN', 'en-GB', 'nl-NL', '123', 'constructor'])
    languages.want(locale);
  expect(asked).toEqual([]);
  expect(languages.words).toBe(ENGLISH);
  expect(languages.problem).toBe('');
});

it('fetches a language once, whatever is written by it', async () => {
  const { languages, asked, settled } = shelf();
  languages.want('de-DE');
  languages.want('de-AT');
  asked[0]?.come();
  await settled();
  languages.want('en-IN');
  expect(languages.words.language).toBe('en');
  languages.want('DE');
  expect(languages.words.language).toBe('de');
  expect(asked).toHaveLength(1);
});

it('keeps to the language that is wanted now, whichever comes first', async () => {
  const { languages, asked, told, settled } = shelf();
  languages.want('hi-IN');
  languages.want('de-DE');
  asked[1]?.come();
  await settled();
  asked[0]?.come();
  await settled();
  expect(languages.words.language).toBe('de');
  expect(told).toHaveBeenCalledOnce();
  languages.want('hi-IN');
  expect(languages.words.language).toBe('hi');
});

it('stays English, says so, and fetches again when it is asked to', async () => {
  const { languages, asked, told, settled } = shelf();
  languages.want('hi-IN');
  asked[0]?.fail();
  await settled();
  expect(languages.words).toBe(ENGLISH);
  expect(languages.problem).toBe(
    'The words of this language could not be fetched, so the quote is printed in English.',
  );
  languages.want('hi-IN');
  expect(asked).toHaveLength(1);
  languages.again();
  expect(languages.problem).toBe('');
  asked[1]?.come();
  await settled();
  expect(languages.words.language).toBe('hi');
  expect(told.mock.calls.length).toBeGreaterThanOrEqual(2);
});

it('says nothing of a language that is no longer wanted', async () => {
  const { languages, asked, settled } = shelf();
  languages.want('hi-IN');
  languages.want('en-IN');
  asked[0]?.fail();
  await settled();
  expect(languages.problem).toBe('');
});
