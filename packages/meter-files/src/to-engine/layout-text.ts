import type { TableLayout } from '../table/layout-document.ts';

/**
 * How the columns of a table are to be read, as the text of a document that can be saved. One that was only
 * proposed says `"confirmed": false`, and is not read as it stands: a person writes true.
 *
 * @example
 * layoutText(proposeTable('day;import kWh\n1.5.2025;1,5\n').layout).includes('"confirmed": false') //=> true
 */
export function layoutText(layout: TableLayout): string {
  const { $schema, format, columns, confirmed, ...rest } = layout;
  const head = $schema === undefined ? { format } : { $schema, format };
  const text = JSON.stringify({ ...head, ...rest, columns: [], confirmed }, null, 2);
  // A column is easier to compare with the table where it stands on one line.
  const lines = columns.map((column) => `    ${JSON.stringify(column)}`).join(',\n');
  return `${text.replace('"columns": []', () => `"columns": [\n${lines}\n  ]`)}\n`;
}
