import { atLeft, atRight, PAGE_WIDTH, textWidth } from './text.ts';

/** A column: its heading in one or two lines, and the side its cells stand at. */
export interface Column {
  readonly heading: readonly string[];
  readonly side: 'left' | 'right';
}

/** The rows of a table, and rows below a rule. */
export interface TableRows {
  readonly body: readonly (readonly string[])[];
  readonly foot?: readonly (readonly string[])[];
}

function columnWidths(columns: readonly Column[], rows: readonly (readonly string[])[]): number[] {
  return columns.map(({ heading }, index) =>
    Math.max(...heading.map(textWidth), ...rows.map((row) => textWidth(row[index] ?? ''))),
  );
}

/**
 * Set a table in columns, as wide as its cells.
 *
 * @returns lines; the columns move closer where the table would be wider than the page
 */
export function renderTable(columns: readonly Column[], { body, foot = [] }: TableRows): readonly string[] {
  const widths = columnWidths(columns, [...body, ...foot]);
  const sum = widths.reduce((total, width) => total + width, 0);
  const gap = sum + 2 * (columns.length - 1) <= PAGE_WIDTH ? '  ' : ' ';
  const line = (cells: readonly string[]): string =>
    columns
      .map(({ side }, index) => (side === 'left' ? atLeft : atRight)(cells[index] ?? '', widths[index] ?? 0))
      .join(gap)
      .trimEnd();
  const height = Math.max(...columns.map(({ heading }) => heading.length));
  const headings = Array.from({ length: height }, (_, at) =>
    line(columns.map(({ heading }) => heading[at - height + heading.length] ?? '')),
  );
  const rule = '-'.repeat(sum + gap.length * (columns.length - 1));
  const ending = foot.length === 0 ? [] : [rule, ...foot.map(line)];
  return [...headings, rule, ...body.map(line), ...ending];
}
