import { splitRow } from './cells.ts';
import { quotable } from './findings.ts';
import type { TableLayout } from './layout-document.ts';
import { layoutKey, withoutTrailing } from './layout-key.ts';

/** The most lines that can stand above the names of the columns. */
export const MOST_LINES_ABOVE = 20;

/** What became of a line: the names of the columns, not those (yet), or one line too many without them. */
export type SearchResult = 'found' | 'searching' | 'given-up';

interface Candidate {
  readonly line: number;
  readonly cells: readonly string[];
  readonly shared: number;
}

const keysOf = (names: readonly string[]): readonly string[] => JSON.parse(layoutKey(names)) as string[];

const listed = (names: readonly string[]): string => names.map((name) => `"${quotable(name)}"`).join(', ');

/** Names of one list that another has not, as they are written. */
function without(names: readonly string[], others: readonly string[]): readonly string[] {
  const known = new Set(keysOf(others));
  const keys = keysOf(names);
  return withoutTrailing(names).filter((_, at) => !known.has(keys[at] ?? ''));
}

/** Looks for the line with the names of the columns. */
export class HeaderSearch {
  /** Lines above it that are not blank. */
  skipped = 0;
  private readonly layout: TableLayout;
  private readonly key: string;
  private readonly names: ReadonlySet<string>;
  private best: Candidate | null = null;

  constructor(layout: TableLayout) {
    this.layout = layout;
    this.key = layoutKey(layout.header);
    this.names = new Set(keysOf(layout.header));
  }

  offer(text: string, line: number): SearchResult {
    const cells = splitRow(text, this.layout.delimiter);
    if (layoutKey(cells) === this.key) return 'found';
    const shared = new Set(keysOf(cells).filter((name) => name !== '' && this.names.has(name))).size;
    if (this.best === null || shared > this.best.shared) this.best = { line, cells, shared };
    this.skipped += 1;
    return this.skipped > MOST_LINES_ABOVE ? 'given-up' : 'searching';
  }

  /** In what the line that comes nearest differs, and which line it is; null where there was no line. */
  difference(): { readonly line: number; readonly difference: string } | null {
    if (this.best === null) return null;
    const { line, cells, shared } = this.best;
    if (shared === 0) {
      const text = quotable(cells.join(this.layout.delimiter));
      return { line, difference: `"${text}" as the first line, and no line with those names` };
    }
    const missing = without(this.layout.header, cells);
    const more = without(cells, this.layout.header);
    const parts = [
      ...(missing.length > 0 ? [`without ${listed(missing)}`] : []),
      ...(more.length > 0 ? [`with ${listed(more)}`] : []),
    ];
    const difference =
      parts.length > 0
        ? `names of columns ${parts.join(' and ')}`
        : 'the same names of columns in another order or number';
    return { line, difference };
  }
}
