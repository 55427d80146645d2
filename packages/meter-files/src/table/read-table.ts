import type { FileClock, MeterReader, MeterSink } from '../stream.ts';
import { splitRow } from './cells.ts';
import { layoutFindings } from './check-layout.ts';
import { quotable, tableFinding, type TableFindingCode } from './findings.ts';
import { HeaderSearch } from './header-search.ts';
import { intervalOffset, IntervalRows } from './interval-rows.ts';
import type { TableLayout } from './layout-document.ts';
import { isNameless, layoutKey } from './layout-key.ts';
import { planOf, type TablePlan } from './plan.ts';
import { LONGEST_LINE, RecordSplitter } from './record-splitter.ts';
import { RegisterRows } from './register-rows.ts';
import { reporter, type Report, type TableRow } from './table-row.ts';

class TableReader implements MeterReader {
  readonly clock: FileClock;
  private readonly layout: TableLayout;
  private readonly sink: MeterSink;
  private readonly plan: TablePlan;
  private readonly report: Report;
  private readonly rows: IntervalRows | RegisterRows;
  private readonly splitter: RecordSplitter;
  private readonly search: HeaderSearch;
  private readonly key: string;
  private readonly isNameless: boolean;
  private state: 'searching' | 'reading' | 'given-up';
  private firstName = '';
  private isEmpty = true;

  constructor(layout: TableLayout, sink: MeterSink) {
    this.layout = layout;
    this.sink = sink;
    this.plan = planOf(layout);
    this.report = reporter(this.plan, sink.finding);
    const isIntervals = layout.holds === 'intervals';
    this.rows = isIntervals
      ? new IntervalRows(this.plan, this.report, sink)
      : new RegisterRows(this.plan, this.report, sink);
    this.clock = { offset: isIntervals ? intervalOffset(layout) : null };
    this.search = new HeaderSearch(layout);
    this.key = layoutKey(layout.header);
    this.isNameless = isNameless(layout.header);
    this.state = this.isNameless ? 'reading' : 'searching';
    this.splitter = new RecordSplitter(layout.delimiter, {
      row: (text, line) => {
        this.take(text, line);
      },
      broken: (code, { line, column }) => {
        if (this.state !== 'given-up') this.say(code, { line, column }, { most: String(LONGEST_LINE) });
        this.isEmpty = false;
      },
    });
  }

  readonly write = (text: string): void => {
    this.splitter.write(text);
  };

  readonly end = (): void => {
    this.splitter.end();
    if (this.isEmpty) this.say('table/empty', { line: 1 });
    else if (this.state === 'searching') this.giveUp();
    this.rows.end();
  };

  private say(
    code: TableFindingCode,
    { line, column = 1 }: { readonly line: number; readonly column?: number },
    values: Readonly<Record<string, string>> = {},
  ): void {
    this.sink.finding({ ...tableFinding(code, { path: [] }, values), position: { line, column } });
  }

  private take(text: string, line: number): void {
    this.isEmpty = false;
    if (this.state === 'reading') this.takeRow({ cells: splitRow(text, this.layout.delimiter), text, line });
    else if (this.state === 'searching') this.seek(text, line);
  }

  private seek(text: string, line: number): void {
    const result = this.search.offer(text, line);
    if (result === 'given-up') this.giveUp();
    if (result !== 'found') return;
    this.state = 'reading';
    this.firstName = splitRow(text, this.layout.delimiter)[0] ?? '';
    const { skipped } = this.search;
    if (skipped > 0) this.say('table/lines-above', { line }, { count: String(skipped) });
  }

  private giveUp(): void {
    this.state = 'given-up';
    const found = this.search.difference();
    const names = this.layout.header.map((name) => `"${quotable(name)}"`).join(', ');
    if (found !== null) this.say('table/other-header', found, { difference: found.difference, names });
  }

  private takeRow(row: TableRow): void {
    const { cells } = row;
    // Delimiters and nothing else: what a spreadsheet leaves of rows that were cleared.
    if (cells[0]?.trim() === '' && cells.every((cell) => cell.trim() === '')) return;
    if (cells.length !== this.layout.columns.length && !this.hasRightCount(row)) return;
    if (cells[0] === this.firstName && !this.isNameless && layoutKey(cells) === this.key)
      this.say('table/header-again', row);
    else this.rows.row(row);
  }

  /** Whether a row whose cells are not as many as the columns can be read all the same. */
  private hasRightCount(row: TableRow): boolean {
    const count = row.cells.findLastIndex((cell) => cell.trim() !== '') + 1;
    const most = this.layout.columns.length;
    if (count <= most && row.cells.length >= this.plan.fewest) return true;
    const values = { count: String(count > most ? count : row.cells.length), most: String(most) };
    this.report('table/cell-count', row, count > most ? most : 0, values);
    return false;
  }
}

/**
 * Read a table of register readings or interval values by a layout that was confirmed.
 *
 * Every good cell is handed on, in the order of the file; of everything else a finding says where it stands.
 * The quarter hours of clocks that go back come twice in the order of the rows. Intervals are told in UTC
 * where the clock is known, else by local minutes (`clock.offset` null); so are days by a clock that changes.
 *
 * @param layout  confirmed: from `readTableLayout`, or proposed and looked at
 * @param sink    where values and findings go
 * @throws RangeError  for a layout that nobody confirmed, or that does not fit together
 * @example
 * const values = [];
 * const layout = readTableLayout('{"format":"unitbook-columns-1","header":["day","import"],"holds":"registers","delimiter":";","decimalMark":",","grouping":"","dateOrder":"day-month-year","clock":"local","columns":[{"is":"date"},{"is":"import","unit":"kWh"}],"confirmed":true}').value;
 * const reader = tableReader(layout, { intervals: () => {}, register: ({ value }) => values.push(value), finding: () => {} });
 * reader.write('day;import\n1.5.2025;4342,1\n');
 * reader.end();
 * values //=> ["4342.1"]
 */
export function tableReader(layout: TableLayout, sink: MeterSink): MeterReader {
  if (!layout.confirmed) throw new RangeError('a layout has to be confirmed before a table is read by it');
  const [problem] = layoutFindings(layout);
  if (problem !== undefined) throw new RangeError(`the layout has ${problem.found}, not ${problem.expected}`);
  return new TableReader(layout, sink);
}
