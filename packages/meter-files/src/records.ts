import Papa from 'papaparse';
import type { Delimiter } from './cells.ts';

/** One row of a file: its cells, its text, and the line it begins on, from 1. */
export interface CsvRecord {
  readonly cells: readonly string[];
  readonly text: string;
  readonly line: number;
}

/** The rows of a file, and where a quotation mark was opened and not closed, if one was. */
export interface Records {
  readonly records: readonly CsvRecord[];
  readonly unclosed: { readonly line: number; readonly column: number } | null;
}

function newlines(text: string): number {
  let count = 0;
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) count += 1;
  return count;
}

/** Line and column of an offset in a text that begins on a line. */
function positionIn(text: string, offset: number, line: number): { line: number; column: number } {
  const before = text.slice(0, offset);
  return { line: line + newlines(before), column: offset - before.lastIndexOf('\n') };
}

/**
 * Split a text into rows and cells.
 *
 * @param text       with plain line ends
 * @param delimiter  as the header has it
 * @param line       of the file on which the text begins
 * @returns          the rows that are not blank, up to a quotation mark that is not closed
 */
export function splitRecords(text: string, delimiter: Delimiter, line: number): Records {
  const records: CsvRecord[] = [];
  let unclosed: Records['unclosed'] = null;
  let from = 0;
  let at = line;
  Papa.parse<string[]>(text, {
    delimiter,
    newline: '\n',
    step: ({ data, errors, meta }, parser) => {
      const own = text.slice(from, meta.cursor);
      const broken = errors.find((error) => error.type === 'Quotes');
      if (broken !== undefined) {
        // The parser stands behind the mark, and counts from the beginning of the text.
        unclosed = positionIn(own, Math.max(0, (broken.index ?? from + 1) - 1 - from), at);
        parser.abort();
        return;
      }
      if (data.some((cell) => cell.trim() !== ''))
        records.push({ cells: data, text: own.replace(/\n$/, ''), line: at });
      at += newlines(own);
      from = meta.cursor;
    },
  });
  return { records, unclosed };
}
