import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const DOCS = fileURLToPath(new URL('../../docs/', import.meta.url));

/** A page of the documentation. */
export interface Page {
  /** Its path below `docs/`, with forward slashes. */
  readonly name: string;
  readonly text: string;
}

/** A fenced block of a page. */
export interface Block {
  /** The line of its opening fence. */
  readonly line: number;
  /** What stands behind the fence: `json tariff`. */
  readonly words: string;
  readonly text: string;
}

const FENCE = /^```(.*)\n([^]*?)^```$/gm;

/** Every page, but the records of decisions. */
export function pages(): readonly Page[] {
  return readdirSync(DOCS, { recursive: true, encoding: 'utf8' })
    .map((path) => path.replaceAll('\\', '/'))
    .filter((path) => path.endsWith('.md') && !path.startsWith('decisions/'))
    .sort()
    .map((name) => ({ name, text: readFileSync(`${DOCS}${name}`, 'utf8') }));
}

/** One page by its path below `docs/`. */
export function page(name: string): string {
  return readFileSync(`${DOCS}${name}`, 'utf8');
}

/** The fenced blocks of a page in order. */
export function blocksOf(text: string): readonly Block[] {
  return [...text.matchAll(FENCE)].map((match) => ({
    line: text.slice(0, match.index).split('\n').length,
    words: (match[1] ?? '').trim(),
    text: match[2] ?? '',
  }));
}

/** A page with all but some blocks blanked: every line keeps its number. */
export function keepBlocks(text: string, isKept: (words: string) => boolean): string {
  return text.replace(FENCE, (whole: string, words: string) =>
    isKept(words.trim()) ? whole : whole.replace(/[^\n]/g, ''),
  );
}

/** A page without its fenced blocks: what people read. */
export function proseOf(text: string): string {
  return keepBlocks(text, () => false);
}
