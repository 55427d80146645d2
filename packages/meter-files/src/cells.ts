/** What separates the cells of a line. */
export type Delimiter = ',' | ';' | '\t';

/** A separator in words. */
export const DELIMITER_WORDS: Readonly<Record<Delimiter, string>> = {
  ',': 'commas',
  ';': 'semicolons',
  '\t': 'tabs',
};

/**
 * Where each cell of a line begins.
 *
 * The reader of the file gives texts, not places; places are worked out only where something is to be
 * said about a cell. A quotation mark counts only at the beginning of a cell, as RFC 4180 has it.
 *
 * @returns offsets from 0, the first of which is 0
 * @example
 * cellOffsets('"4,1",5', ',') //=> [0,6]
 */
export function cellOffsets(line: string, delimiter: Delimiter): readonly number[] {
  const offsets = [0];
  let quoted = line.startsWith('"');
  for (let at = quoted ? 1 : 0; at < line.length; at += 1) {
    const character = line[at];
    if (quoted && character === '"' && line[at + 1] === '"') at += 1;
    else if (quoted && character === '"') quoted = false;
    else if (!quoted && character === delimiter) {
      offsets.push(at + 1);
      if (line[at + 1] === '"') {
        quoted = true;
        at += 1;
      }
    }
  }
  return offsets;
}

/** The texts of the cells of one line, quotation marks off. */
export function splitCells(line: string, delimiter: Delimiter): readonly string[] {
  const offsets = cellOffsets(line, delimiter);
  return offsets.map((offset, index) => {
    const end = offsets[index + 1];
    const raw = line.slice(offset, end === undefined ? undefined : end - 1).trim();
    return /^".*"$/s.test(raw) ? raw.slice(1, -1).replaceAll('""', '"') : raw;
  });
}
