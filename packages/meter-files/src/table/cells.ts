import Papa from 'papaparse';
import type { TableLayout } from './layout-document.ts';

/** What separates the cells of a table. */
export type TableDelimiter = TableLayout['delimiter'];

const QUOTE = '"';

/** Whether nothing but spaces stands between here and the next cell or the end of the line. */
function endsCell(line: string, from: number, delimiter: TableDelimiter): boolean {
  for (let at = from; at < line.length; at += 1) {
    const character = line.charAt(at);
    if (character === delimiter) return true;
    if (character.trim() !== '') return false;
  }
  return true;
}

/** Where the quotation mark stands that closes a cell; whether one stands in the cell that closes nothing. */
interface Closing {
  /** -1 where none does. */
  readonly at: number;
  readonly isBroken: boolean;
}

function closingQuote(line: string, from: number, delimiter: TableDelimiter): Closing {
  for (let at = line.indexOf(QUOTE, from); at >= 0; at = line.indexOf(QUOTE, at + 1)) {
    if (line[at + 1] === QUOTE) at += 1;
    else if (endsCell(line, at + 1, delimiter)) return { at, isBroken: false };
    else return { at: -1, isBroken: true };
  }
  return { at: -1, isBroken: false };
}

/** A cell that is open at the end of a line. */
export interface OpenCell {
  /** Where it begins; -1 for one that was open before the line. */
  readonly at: number;
  /** Whether it can never be closed, as a lone quotation mark stands within it. */
  readonly isBroken: boolean;
}

/**
 * The cell that is open at the end of a line, because its quotation mark is not closed.
 *
 * A quotation mark counts at the beginning of a cell only, as RFC 4180 has it.
 *
 * @param isOpen  whether a cell was open at the end of the line before
 * @returns       null where none is open
 * @example
 * openCell('1,"2', ',', false) //=> {"at":2,"isBroken":false}
 * openCell('1,"2"3', ',', false) //=> {"at":2,"isBroken":true}
 */
export function openCell(line: string, delimiter: TableDelimiter, isOpen: boolean): OpenCell | null {
  let begins = isOpen ? -1 : 0;
  for (;;) {
    let end = begins;
    if (begins < 0 || line[begins] === QUOTE) {
      const { at, isBroken } = closingQuote(line, begins + 1, delimiter);
      if (at < 0) return { at: begins, isBroken };
      end = at;
    }
    begins = line.indexOf(delimiter, end) + 1;
    if (begins === 0) return null;
  }
}

const parser = (delimiter: TableDelimiter): Papa.Parser => new Papa.Parser({ delimiter, newline: '\n' });

/** Made once: what papaparse does to guess at a file takes longer than the row. They keep nothing of a row. */
const PARSERS: Readonly<Record<TableDelimiter, Papa.Parser>> = {
  ',': parser(','),
  ';': parser(';'),
  '\t': parser('\t'),
  '|': parser('|'),
};

/**
 * The cells of one row, quotation marks off.
 *
 * @param text  of the row, with the line breaks of quoted cells
 * @example
 * splitRow('"4,1",5', ',') //=> ["4,1","5"]
 */
export function splitRow(text: string, delimiter: TableDelimiter): readonly string[] {
  // Most rows have no quotation mark; splitting those at once is several times as fast.
  if (!text.includes(QUOTE)) return text.split(delimiter);
  const { data } = PARSERS[delimiter].parse(`${text}\n`, 0, false) as { readonly data: string[][] };
  return data[0] ?? [];
}

/**
 * Where each cell of a row begins in its text.
 *
 * @example
 * rowOffsets('"4,1",5', ',') //=> [0,6]
 */
export function rowOffsets(text: string, delimiter: TableDelimiter): readonly number[] {
  const offsets = [0];
  for (let begins = 0; ; offsets.push(begins)) {
    const end = text[begins] === QUOTE ? closingQuote(text, begins + 1, delimiter).at : begins;
    const next = end < 0 ? -1 : text.indexOf(delimiter, end);
    if (next < 0) return offsets;
    begins = next + 1;
  }
}
