import { NumberCell } from './number-cell.ts';
import { QUALITY, type TablePlan, type ValuePlan } from './plan.ts';
import { quotable } from './findings.ts';
import type { Report, TableRow } from './table-row.ts';

const MARK_WORDS = { '.': 'a point', ',': 'a comma' } as const;
const GROUPING_WORDS = {
  '': 'nothing between groups of digits',
  ',': 'a comma between groups of digits',
  '.': 'a point between groups of digits',
  ' ': 'a space between groups of digits',
  "'": 'an apostrophe between groups of digits',
} as const;

/** What a cell of a column of values holds; a bad one holds nothing that can be used. */
export type ValueKind = 'number' | 'empty' | 'bad';

/** Reads the cells of columns of values, and says what is wrong with them. */
export class ValueCell {
  /** The number that was read last. */
  readonly number: NumberCell;
  private readonly report: Report;
  private readonly marks: Readonly<Record<string, string>>;

  constructor({ layout }: TablePlan, report: Report) {
    this.number = new NumberCell(layout);
    this.report = report;
    this.marks = { decimal: MARK_WORDS[layout.decimalMark], grouping: GROUPING_WORDS[layout.grouping] };
  }

  read(row: TableRow, plan: ValuePlan): ValueKind {
    const kind = this.number.read(row.cells[plan.at] ?? '');
    if (kind === 'number') {
      if (this.number.whole >= 0 || !plan.refusesNegative) return 'number';
      this.report('table/negative', row, plan.at, { quantity: plan.column.is });
      return 'bad';
    }
    if (kind === 'empty') return 'empty';
    this.report(kind, row, plan.at, this.marks);
    return 'bad';
  }

  /** The quality of a value, as its place in the list of qualities. */
  quality(row: TableRow, { quality }: ValuePlan): number {
    if (quality === null) return QUALITY.actual;
    const word = (row.cells[quality.at] ?? '').trim();
    const known = quality.words.get(word);
    if (known !== undefined) return known;
    const words = [...quality.words.keys()]
      .map((one) => (one === '' ? 'an empty cell' : `"${one}"`))
      .join(', ');
    this.report('table/quality-word', row, quality.at, { words: quotable(words) });
    return QUALITY.estimated;
  }
}
