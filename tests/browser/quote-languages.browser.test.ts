import { render } from 'lit';
import { cdp, page } from 'vitest/browser';
import { afterEach, expect, it, vi } from 'vitest';
import { renderLanguageProblem } from '../../packages/form/src/quote/paper/language-problem.ts';
import { ENGLISH } from '../../packages/form/src/quote/words/english.ts';
import { LANGUAGES } from '../../packages/form/src/quote/words/quote-languages.ts';
import type { QuoteWords } from '../../packages/form/src/quote/words/quote-words.ts';
import quoteText from '../../tariffs-examples/quotes/rooftop-4-kilowatt.json?raw';
import tariffText from '../../tariffs-examples/tarumira/taresco-domestic/tariff.json?raw';
import { drawn, expectAccessible, memoryStorage, mountBook } from './mount.ts';

/** A page of A4 within the margins that the page's style sheet gives it, 14 and 15 mm, in pixels of 1/96 inch. */
const PAPER = { width: Math.floor((180 / 25.4) * 96), height: Math.floor((269 / 25.4) * 96) };

/** What stands in the place of everything that somebody typed into the quote: no letter of any language. */
const TYPED = '※';

/** Texts of a quote that are names of choices or numbers, and not somebody's words. */
const KEPT = [
  'format',
  'locale',
  'start',
  'date',
  'validUntil',
  'to',
  'kind',
  'payable',
  'scheme',
  'settlement',
  'cleaning',
  'insurance',
];

function withoutWords(value: unknown, key = ''): unknown {
  if (KEPT.includes(key)) return value;
  if (typeof value === 'string') return /^-?[\d.]+$/.test(value) ? value : TYPED;
  if (Array.isArray(value)) return value.map((one) => withoutWords(one));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([own, one]) => [own, withoutWords(one, own)]));
}

/** The demo quote in a locale, with nothing in it that somebody typed in English. */
function quoteIn(locale: string, sections: Readonly<Record<string, unknown>> = {}): string {
  const bare = withoutWords(JSON.parse(quoteText)) as Readonly<Record<string, unknown>>;
  return JSON.stringify({ ...bare, locale, ...sections });
}

/** A quote of which nothing is said that need not be, with a battery, a filled month and surplus that rises. */
const OTHER = {
  offer: { date: '2025-02-10' },
  use: { months: { '01': '400', '02': '420', '03': '490' }, fill: 'mean', source: TYPED },
  battery: {
    capacity: '5',
    power: '2.5',
    efficiency: '90',
    cost: '90000',
    replacement: { year: '12', amount: '50000' },
  },
  escalation: {
    charges: {},
    basis: '',
    surplus: { percent: '2', step: '0.01' },
  },
  subsidy: undefined,
  loan: undefined,
  uncertainty: undefined,
};

/** Stands for whatever stands in a sentence: a text without letters, or a number that is counted. */
const BLANK = { text: '', count: 2, toString: () => '', toLowerCase: () => '' };

function textsOf(value: unknown): readonly string[] {
  if (typeof value === 'string') return [value];
  if (typeof value === 'function') return [(value as (...values: unknown[]) => string)(BLANK, BLANK, BLANK)];
  return Object.values(value as object).flatMap(textsOf);
}

const wordsIn = (text: string): ReadonlySet<string> => new Set(text.toLowerCase().match(/\p{L}{3,}/gu) ?? []);

/** What the tariff calls itself and its charges, and where it was published. */
const TARIFF_WORDS = wordsIn(
  JSON.stringify(JSON.parse(tariffText), (key, value: unknown) =>
    typeof value === 'string' && !['name', 'supplier', 'title', 'label'].includes(key) ? '' : value,
  ).replaceAll(/"[\w-]+":/g, ''),
);

/** The words of a paper that English has, and that neither its own language nor its tariff has. */
function englishOn(paper: string, words: QuoteWords): readonly string[] {
  const english = wordsIn(textsOf(ENGLISH).join(' '));
  const own = words === ENGLISH ? new Set<string>() : wordsIn(textsOf(words).join(' '));
  return [...wordsIn(paper)].filter((word) => english.has(word) && !own.has(word) && !TARIFF_WORDS.has(word));
}

type Quote = HTMLElementTagNameMap['unitbook-quote'];

async function openQuote(text: string): Promise<{ element: Quote; root: ShadowRoot }> {
  const { book, shelf } = await mountBook(memoryStorage().keep);
  book.demoQuote = () => Promise.resolve(text);
  shelf.getElementById('open-quote')?.click();
  await expect
    .poll(() => shelf.querySelector('unitbook-quote')?.shadowRoot?.querySelector('#quote-answer'), {
      timeout: 20_000,
    })
    .toBeTruthy();
  const element = shelf.querySelector('unitbook-quote');
  const root = element?.shadowRoot ?? null;
  if (element === null || root === null) throw new Error('The page of the quote did not open.');
  return { element, root };
}

type Opened = Awaited<ReturnType<typeof openQuote>>;

async function layPaper({ element, root }: Opened): Promise<HTMLElement> {
  root.getElementById('quote-paper')?.click();
  await drawn(element);
  const sheet = root.querySelector<HTMLElement>('.sheet');
  if (sheet === null) throw new Error('There is no printed quote.');
  return sheet;
}

/** The quote on paper, with the range of its draws. */
async function openPaper(text: string): Promise<{ root: ShadowRoot; sheet: HTMLElement }> {
  const opened = await openQuote(text);
  const { root } = opened;
  await expect.poll(() => root.querySelector('#quote-drawn'), { timeout: 60_000 }).toBeTruthy();
  return { root, sheet: await layPaper(opened) };
}

/** All that a paper says, to the eye or to the ear. */
function saidOn(sheet: HTMLElement): string {
  const labels = [...sheet.querySelectorAll('[aria-label]')].map((one) => one.getAttribute('aria-label'));
  return [sheet.textContent, ...labels].join(' ');
}

const session = (): { send: (method: string, parameters: object) => Promise<unknown> } => cdp() as never;

async function emulate(media: '' | 'print'): Promise<void> {
  await session().send('Emulation.setEmulatedMedia', { media });
}

afterEach(async () => {
  await emulate('');
  document.body.style.margin = '';
  await page.viewport(1280, 900);
});

const LOCALES = [
  ['en-IN', 'en'],
  ['hi-IN', 'hi'],
  ['de-DE', 'de'],
  ['fr-FR', 'fr'],
  ['es-ES', 'es'],
] as const;

const wordsOf = async (language: string): Promise<QuoteWords> =>
  (await LANGUAGES.get(language)?.()) ?? ENGLISH;

it.each(LOCALES)(
  'prints the demo in %s on two pages',
  async (locale, language) => {
    const { root, sheet } = await openPaper(quoteText.replace('"en-IN"', JSON.stringify(locale)));
    await expect.poll(() => sheet.lang).toBe(language);
    document.body.style.margin = '0';
    await page.viewport(PAPER.width, PAPER.height);
    await emulate('print');
    await expectAccessible();
    const second = root.querySelector('.second-page')?.getBoundingClientRect();
    if (second === undefined) throw new Error('There is no second page.');
    expect(second.top + window.scrollY).toBeLessThanOrEqual(PAPER.height);
    expect(second.height).toBeLessThanOrEqual(PAPER.height);
    expect(sheet.scrollWidth).toBeLessThanOrEqual(PAPER.width);
  },
  90_000,
);

it.each(LOCALES)(
  'says everything in the words of %s',
  async (locale, language) => {
    const words = await wordsOf(language);
    const papers = [quoteIn(locale), quoteIn(locale, OTHER)];
    for (const text of papers) {
      const sheet = await layPaper(await openQuote(text));
      await expect.poll(() => sheet.lang).toBe(language);
      const english = englishOn(saidOn(sheet), words);
      // English itself shows that what is looked for would be found.
      if (language === 'en') expect(english.length).toBeGreaterThan(150);
      else expect(english).toEqual([]);
    }
  },
  30_000,
);

it('says on paper what a battery costs, and what it comes to by itself', async () => {
  const sheet = await layPaper(await openQuote(quoteIn('en-IN', OTHER)));
  const costs = sheet.querySelector('[data-item="9"]')?.textContent.replace(/\s+/g, ' ');
  expect(costs).toContain('5 kWh, ₹90,000.00');
  expect(costs).toMatch(
    /Its own part of the saving of the first year: −?₹[\d,.]+; paid back by that alone: /,
  );
  // 2,08,000 + 8,000 + 90,000.
  expect(costs).toContain('₹3,06,000.00');
  const assumed = sheet.querySelector('[data-item="11"]')?.textContent.replace(/\s+/g, ' ');
  expect(assumed).toContain('+2 % a year');
});

const NUMBERS: readonly (readonly [string, ...string[]])[] = [
  ['hi-IN', '₹36,673.88', '₹1,51,213.38', 'जुलाई 2025', '10 फ़रवरी 2025', '4.6 वर्ष', '60 महीने'],
  ['de-DE', '36.673,88 ₹', '151.213,38 ₹', 'Juli 2025', '10. Februar 2025', '4,6 Jahre', '60 Monate'],
  ['fr-FR', '36 673,88 ₹', '151 213,38 ₹', 'juillet 2025', '10 février 2025', '4,6 ans', '60 mois'],
  [
    'es-ES',
    '36.673,88 INR',
    '151.213,38 INR',
    'julio de 2025',
    '10 de febrero de 2025',
    '4,6 años',
    '60 meses',
  ],
];

it.each(NUMBERS)('writes numbers, days and what is counted as %s does', async (locale, ...texts) => {
  const sheet = await layPaper(await openQuote(quoteIn(locale)));
  await expect.poll(() => sheet.lang).toBe(locale.slice(0, 2));
  const said = sheet.textContent.replace(/\s+/g, ' ');
  for (const text of texts) expect(said).toContain(text);
});

it('has the language chosen in the inputs, each by its own name, and turns back to English at once', async () => {
  const { element, root } = await openQuote(quoteText);
  for (const summary of root.querySelectorAll<HTMLElement>('.inputs-page details:not([open]) > summary'))
    summary.click();
  await drawn(element);
  const select = root.querySelector<HTMLSelectElement>('#quote-locale');
  if (select === null) throw new Error('There is no choice of a language.');
  expect([...select.options].map(({ text }) => text)).toEqual([
    'English, 1,23,456.78 (India)',
    'हिन्दी, 1,23,456.78',
    'English, 123,456.78',
    'Deutsch, 123.456,78',
    'Français, 123 456,78',
    'Español, 123.456,78',
  ]);
  await layPaper({ element, root });
  const language = (): string | undefined => root.querySelector<HTMLElement>('.sheet')?.lang;
  expect(language()).toBe('en');
  const choose = async (locale: string): Promise<void> => {
    select.value = locale;
    select.dispatchEvent(new Event('change'));
    await drawn(element);
  };
  await choose('hi-IN');
  await expect.poll(language).toBe('hi');
  expect(root.querySelector('#quote-paper-title')?.textContent).toBe('सोलर संयंत्र के लिए कोटेशन');
  await choose('en-GB');
  expect(language()).toBe('en');
});

it('says of a trial in the language of the paper that it is none that is offered', async () => {
  const { element, root } = await openQuote(quoteIn('de-DE'));
  const trial = root.querySelector<HTMLInputElement>('#quote-trial');
  if (trial === null) throw new Error('There is no size to try.');
  trial.value = '3.5';
  trial.dispatchEvent(new InputEvent('input', { bubbles: true, composed: true }));
  await drawn(element);
  await layPaper({ element, root });
  await expect
    .poll(() => root.querySelector('.sheet .trial')?.textContent)
    .toContain('Probe, kein Angebot: eine Anlage mit 3,5 kWp');
});

it('is English, without a complaint, for a language that it does not have', async () => {
  const opened = await openQuote(quoteIn('nl-NL'));
  expect((await layPaper(opened)).lang).toBe('en');
  expect(opened.root.querySelector('.language-problem')).toBe(null);
});

it('says in one sentence that a language could not be fetched, and fetches it again', () => {
  const again = vi.fn();
  const place = document.createElement('div');
  render(renderLanguageProblem({ words: ENGLISH, problem: '', again }), place);
  expect(place.textContent.trim()).toBe('');
  render(renderLanguageProblem({ words: ENGLISH, problem: 'It could not be fetched.', again }), place);
  expect(place.querySelector('[role="status"]')?.textContent).toContain('It could not be fetched.');
  place.querySelector('button')?.click();
  expect(again).toHaveBeenCalledOnce();
});
