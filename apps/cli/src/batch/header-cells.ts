import { isUtf8 } from 'node:buffer';
import { NEWLINE, RETURN } from './bytes.ts';

/** The names in the first row of a table, or what keeps them from being read. */
export interface HeaderCells {
  readonly cells: readonly string[];
  /** The place of a name with a quote that cannot be, from 1; null: there is none. */
  readonly quoteAt: number | null;
}

/** A quoted cell, or a plain one; whatever stands behind it up to the next comma is at fault. */
const CELL = /(?:"([^"]*(?:""[^"]*)*)"|([^,"]*))([^,]*)(,|$)/y;

/**
 * The names in the first row of a table.
 *
 * @param text  without its line break
 * @example
 * headerCells('account,"note.a, ""b"""').cells //=> ["account","note.a, \"b\""]
 */
export function headerCells(text: string): HeaderCells {
  const cells: string[] = [];
  let quoteAt: number | null = null;
  CELL.lastIndex = 0;
  for (;;) {
    const [, quoted, plain = '', rest = '', comma] = CELL.exec(text) ?? [];
    cells.push((quoted?.replaceAll('""', '"') ?? plain).trim());
    if (rest !== '') quoteAt ??= cells.length;
    if (comma !== ',') return { cells, quoteAt };
  }
}

/** The text of a first row without its line break and its byte order mark; null: it is no text in UTF-8. */
export function headerText(bytes: Uint8Array): string | null {
  let end = bytes.length;
  if (bytes[end - 1] === NEWLINE) end -= 1;
  if (bytes[end - 1] === RETURN) end -= 1;
  const own = bytes.subarray(0, end);
  return isUtf8(own) ? new TextDecoder().decode(own) : null;
}
