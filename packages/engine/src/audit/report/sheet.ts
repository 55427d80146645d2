/** A part of a sheet, in words that are ready to be drawn. */
export type SheetPart =
  | { readonly kind: 'paragraph'; readonly text: string }
  | { readonly kind: 'list'; readonly items: readonly string[] }
  | {
      readonly kind: 'table';
      /** One for each column. */
      readonly head: readonly string[];
      readonly rows: readonly (readonly string[])[];
      /** Columns of numbers, from 0: they stand at the right. */
      readonly numbers: readonly number[];
    };

/** A section of a sheet: what a page and a command both draw. */
export interface SheetSection {
  /** Short and stable, such as "F-01". */
  readonly id: string;
  readonly title: string;
  readonly parts: readonly SheetPart[];
}

/** A paragraph; none of an empty text. */
export const paragraph = (text: string): readonly SheetPart[] =>
  text === '' ? [] : [{ kind: 'paragraph', text }];

/** A list under a line of words; nothing where it is empty. */
export function listed(heading: string, items: readonly string[]): readonly SheetPart[] {
  return items.length === 0 ? [] : [...paragraph(heading), { kind: 'list', items }];
}

/** A table; nothing where it has no rows. */
export function tabled(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  numbers: readonly number[],
): readonly SheetPart[] {
  return rows.length === 0 ? [] : [{ kind: 'table', head, rows, numbers }];
}
