import type { ReadingRow } from '@unitbook/engine';

/**
 * Readings as the text of a readings document, one row on each line: what `unitbook bill --readings` and the
 * form take.
 *
 * @param rows  in order of time
 * @example
 * readingsDocumentText([{ date: '2025-04-01', import: '4120.6' }]).split('\n')[3] //=> "    {\"date\":\"2025-04-01\",\"import\":\"4120.6\"}"
 */
export function readingsDocumentText(rows: readonly ReadingRow[]): string {
  const lines = rows.map((row) => `    ${JSON.stringify(row)}`).join(',\n');
  const list = rows.length === 0 ? '[]' : `[\n${lines}\n  ]`;
  return `{\n  "format": "unitbook-readings-1",\n  "readings": ${list}\n}\n`;
}
