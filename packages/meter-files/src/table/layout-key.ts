const plain = (name: string): string =>
  name
    .normalize('NFKC')
    .replace(/^\ufeff/, '')
    .trim()
    .toLowerCase()
    .replace(/\s+/g, ' ');

/**
 * Names at the end that are empty are no columns: spreadsheets leave them there. In a table without names
 * all are empty, and all are columns.
 *
 * @example
 * withoutTrailing(['time', '', 'import', '']) //=> ["time","","import"]
 */
export function withoutTrailing(names: readonly string[]): readonly string[] {
  const last = names.findLastIndex((name) => plain(name) !== '');
  return last < 0 ? names : names.slice(0, last + 1);
}

/**
 * What a layout is remembered by: the names of the columns, whatever their case and the spaces around them.
 *
 * @param header  the names of the columns; all empty for a table without names
 * @returns       a JSON list of names
 * @example
 * layoutKey(['Time ', 'IMPORT  kWh', '']) //=> "[\"time\",\"import kwh\"]"
 */
export function layoutKey(header: readonly string[]): string {
  return JSON.stringify(withoutTrailing(header).map(plain));
}

/**
 * Whether a table has no line with the names of its columns.
 *
 * @example
 * isNameless(['', ' ']) //=> true
 */
export function isNameless(header: readonly string[]): boolean {
  return header.every((name) => plain(name) === '');
}
