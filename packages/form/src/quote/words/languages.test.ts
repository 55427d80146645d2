import { expect, it } from 'vitest';
import { ENGLISH } from './english.ts';
import { LANGUAGES } from './quote-languages.ts';
import type { QuoteWords } from './quote-words.ts';

/** What stands in a sentence: no text of ours has it by itself. */
const MARKS = ['[[1]]', '[[2]]', '[[3]]'] as const;

/** Texts that are the same in English and in another language, because they are. */
const ALIKE: Readonly<Record<string, readonly string[]>> = {
  hi: ['labels.peak', 'labels.carbon', 'assumptions.apart'],
  de: ['labels.peak', 'labels.carbon', 'assumptions.apart'],
  fr: ['labels.carbon', 'tables.months.10', 'tables.years.4'],
  es: ['labels.peak', 'labels.carbon', 'assumptions.apart'],
};

const counted = (mark: string, count: number) => ({ text: mark, count });

/** A sentence function is asked with marks, or with numbers that are counted where it takes them. */
const COUNTED = ['sentences.subsidyLater', 'sentences.instalments', 'sentences.years'];

function said(path: string, say: (...values: unknown[]) => string, count = 2): string {
  const [one, ...others] = MARKS;
  return COUNTED.includes(path) ? say(counted(one, count), ...others) : say(...MARKS);
}

/** Every text of a language by its path; functions as what they say of marks. */
function textsOf(value: unknown, path: string): readonly (readonly [path: string, text: string])[] {
  if (typeof value === 'string') return [[path, value]];
  if (typeof value === 'function') return [[path, said(path, value as (...values: unknown[]) => string)]];
  return Object.entries(value as Readonly<Record<string, unknown>>).flatMap(([key, own]) =>
    textsOf(own, path === '' ? key : `${path}.${key}`),
  );
}

const english = textsOf(ENGLISH, '');
const marksIn = (text: string): readonly string[] => MARKS.filter((mark) => text.includes(mark)).sort();

const NAMES = [...LANGUAGES.keys()];

async function wordsOf(language: string): Promise<QuoteWords> {
  const fetchWords = LANGUAGES.get(language);
  if (fetchWords === undefined) throw new Error(`There is no language ${language}.`);
  return fetchWords();
}

it('has four languages besides English', () => {
  expect(NAMES).toEqual(['hi', 'de', 'fr', 'es']);
  expect(english.length).toBeGreaterThan(130);
});

it.each(NAMES)('says everything in %s that it says in English, and nothing in English', async (name) => {
  const texts = textsOf(await wordsOf(name), '');
  expect(texts.map(([path]) => path)).toEqual(english.map(([path]) => path));
  const alike = texts.filter(([, text], at) => text === english[at]?.[1]).map(([path]) => path);
  expect(alike).toEqual(ALIKE[name]);
  for (const [path, text] of texts) expect(text.trim(), path).not.toBe('');
});

it.each(NAMES)('has in each sentence of %s what has to stand in it', async (name) => {
  const texts = textsOf(await wordsOf(name), '');
  for (const [at, [path, text]] of texts.entries())
    expect([path, marksIn(text)]).toEqual([path, marksIn(english[at]?.[1] ?? '')]);
});

it.each(NAMES)('calls itself %s', async (name) => {
  expect((await wordsOf(name)).language).toBe(name);
});

it('has Hindi in its own letters', async () => {
  const texts = textsOf(await wordsOf('hi'), '').filter(
    ([path]) => !['language', ...(ALIKE['hi'] ?? [])].includes(path),
  );
  for (const [path, text] of texts) expect(text, path).toMatch(/\p{Script=Devanagari}/u);
  const latin = texts.flatMap(([, text]) => text.match(/[A-Za-z]+/g) ?? []);
  expect([...new Set(latin)].sort()).toEqual(['P', 'kWp']);
});

it.each([
  ['en', '1 year', '1.0 years', '4.6 years', '1 month', '2 months'],
  ['hi', '1 वर्ष', '1.0 वर्ष', '4.6 वर्ष', '1 महीना', '2 महीने'],
  ['de', '1 Jahr', '1.0 Jahre', '4.6 Jahre', '1 Monat', '2 Monate'],
  ['fr', '1 an', '1.0 an', '4.6 ans', '1 mois', '2 mois'],
  ['es', '1 año', '1.0 año', '4.6 años', '1 mes', '2 meses'],
])('counts as %s does', async (name, life, one, more, month, months) => {
  const { assumptions, sentences } = name === 'en' ? ENGLISH : await wordsOf(name);
  expect(assumptions.years('1')).toBe(life);
  expect(sentences.years(counted('1.0', 1))).toBe(one);
  expect(sentences.years(counted('4.6', 4.6))).toBe(more);
  expect(sentences.instalments(counted('1', 1))).toBe(month);
  expect(sentences.instalments(counted('2', 2))).toBe(months);
});

it('says 1.5 years as French does, in the singular', async () => {
  const { sentences } = await wordsOf('fr');
  expect(sentences.years(counted('1,5', 1.5))).toBe('1,5 an');
});

it.each(['en', ...NAMES])('says in %s of a subsidy at the start no number of months', async (name) => {
  const { sentences } = name === 'en' ? ENGLISH : await wordsOf(name);
  const atOnce = said(
    'sentences.subsidyLater',
    sentences.subsidyLater as (...values: unknown[]) => string,
    0,
  );
  expect(atOnce).not.toContain(MARKS[0]);
  expect(atOnce).toContain(MARKS[1]);
});

it.each(['en', ...NAMES])('tells wear in %s once where it is the same each year', async (name) => {
  const { assumptions } = name === 'en' ? ENGLISH : await wordsOf(name);
  expect(assumptions.wears('0,6', '0,6').split('0,6')).toHaveLength(2);
  expect(assumptions.wears('2', '0,6')).toContain('2');
});

it.each(NAMES)('leaves names in %s as they were given', async (name) => {
  const { assumptions } = await wordsOf(name);
  expect(assumptions.rises('2', 'Energie, Grundpreis')).toContain('Energie, Grundpreis');
  expect(assumptions.replaced('Wechselrichter', '11', '€ 900')).toContain('Wechselrichter');
});
