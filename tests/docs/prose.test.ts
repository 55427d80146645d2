import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { calculated, plain, shownAs } from './arithmetic.ts';
import { blocksOf, pages, proseOf } from './pages.ts';

/** "222 + 148 = 370": two numbers or more with signs between them, and what they come to. */
const EQUATION = /((?:\(?−?\d[\d.,]*\)?(?: (?:[+−×÷]|% of) (?=[(−\d]))?){2,}) = (−?\d[\d,]*(?:\.\d+)?)/g;

/** Money as pages print it, with two decimals. */
const AMOUNT = /(?<![\d.,])\d[\d,]*\.\d\d(?![\d.])/g;
/** Text set as code is quoted, not claimed; versions of programs are no money. */
const NOT_MONEY = /`[^`\n]*`|Node \d+\.\d+/g;

const LINK = /\]\(([^)#\s]*)(?:#([^)\s]+))?\)/g;

/** The anchors that headings get where pages are shown. */
const anchorsOf = (text: string): readonly string[] =>
  [...proseOf(text).matchAll(/^#+ (.+)$/gm)].map((match) =>
    (match[1] ?? '')
      .toLowerCase()
      .replace(/[^\p{L}\p{N}\s_-]/gu, '')
      .trim()
      .replace(/\s/g, '-'),
  );

const PAGES = pages();
const TEXTS = new Map(PAGES.map(({ name, text }) => [name, text]));

/** Whether a link of a page leads somewhere: to a file, and in a page to a heading. */
function leads(from: string, path: string, anchor: string | undefined): boolean {
  if (/^[a-z]+:/.test(path)) return false;
  const here = new URL(`../../docs/${from}`, import.meta.url);
  const target = path === '' ? here : new URL(path, here);
  if (!existsSync(fileURLToPath(target))) return false;
  if (anchor === undefined) return true;
  const name = target.href.split('/docs/').at(-1) ?? '';
  return anchorsOf(TEXTS.get(name) ?? '').includes(anchor);
}

describe.each(PAGES)('docs/$name', ({ name, text }) => {
  const prose = proseOf(text);

  it('calculates rightly', () => {
    const equations = [...prose.matchAll(EQUATION)];
    const found = equations.map(({ 1: sum = '', 2: amount = '' }) => shownAs(calculated(sum), amount));
    expect(found).toEqual(equations.map((match) => plain(match[2] ?? '')));
  });

  it('has links that lead somewhere', () => {
    const links = [...prose.matchAll(LINK)].filter(([, path = '', anchor]) => !leads(name, path, anchor));
    expect(links.map(([link]) => link)).toEqual([]);
  });

  it('can be read at one sitting, within the width of a screen', () => {
    const lines = text.split('\n');
    expect(lines.length).toBeLessThan(230);
    expect(prose.split('\n').filter((line) => line.length > 120 && !line.startsWith('|'))).toEqual([]);
  });

  it('has no amount that is not worked out somewhere on it', () => {
    const worked = blocksOf(text).map((block) => block.text);
    const equations = [...prose.matchAll(EQUATION)].map(([equation]) => equation);
    const known = new Set([...worked, ...equations].join(' ').match(AMOUNT));
    // The names of example tariffs hold amounts; those are worked out in their cases.
    const own = name === 'tariffs.md' ? prose.replace(/^\|.*$/gm, '') : prose;
    const amounts = own.replace(NOT_MONEY, '').match(AMOUNT) ?? [];
    expect(amounts.filter((amount) => !known.has(amount))).toEqual([]);
  });

  it('is one of the map', () => {
    const map = TEXTS.get('README.md') ?? '';
    expect(name === 'README.md' || map.includes(`](${name})`)).toBe(true);
  });
});
