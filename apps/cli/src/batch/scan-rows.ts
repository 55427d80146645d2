import {
  afterQuoted,
  areSame,
  COMMA,
  countLines,
  MINUS,
  NEWLINE,
  POINT,
  QUOTE,
  RETURN,
  rowAfter,
  ZERO,
} from './bytes.ts';
import { DAY_BYTES, dayCell } from './day-cell.ts';
import { CELL, type Layout } from './layout.ts';
import { RowTable } from './row-table.ts';
import {
  cellText,
  faultFinding,
  MONEY_PLACES,
  MOST_DIGITS,
  periodFinding,
  type CellFault,
  type UnreadRow,
} from './unread-row.ts';

const THOUSANDTHS: readonly number[] = [1000, 100, 10, 1];

/**
 * Reads rows of a table of bills, byte by byte: every number digit by digit, straight into its column. A row that
 * cannot be used is left out and told of; an account with such a row between two others begins anew behind it.
 */
export class RowScanner {
  readonly table: RowTable;
  readonly unread: UnreadRow[] = [];
  /** Lines that ended in the block. */
  lines = 0;
  private readonly layout: Layout;
  private bytes: Uint8Array = new Uint8Array(0);
  private end = 0;
  /** Whether the row above was left out. */
  private isBroken = false;
  /** Whether a cell of the row stands between quotes, so that it can hold line breaks. */
  private isQuoted = false;
  private readonly fault: CellFault = { problem: 'cells', column: 0, from: 0 };

  constructor(layout: Layout) {
    this.layout = layout;
    this.table = new RowTable(layout);
  }

  /**
   * Read a block of whole rows into the table, in place of what it held.
   *
   * @param end  behind its last line break
   */
  scan(bytes: Uint8Array, start: number, end: number): void {
    const { table } = this;
    this.bytes = bytes;
    this.end = end;
    this.unread.length = 0;
    this.lines = 0;
    this.isBroken = true;
    table.count = 0;
    let at = start;
    while (at < end) {
      if (bytes[at] === NEWLINE || (bytes[at] === RETURN && bytes[at + 1] === NEWLINE)) {
        at += bytes[at] === NEWLINE ? 1 : 2;
        this.lines += 1;
        continue;
      }
      table.makeRoom();
      const after = this.row(at);
      at = after < 0 ? this.leaveOut(at) : this.keep(at, after);
    }
  }

  /** Read one row; returns where the next one begins, or −1 where it cannot be used. */
  private row(from: number): number {
    const { bytes, layout } = this;
    const last = layout.kinds.length - 1;
    let at = from;
    this.fault.problem = 'cells';
    this.isQuoted = false;
    for (let column = 0; column <= last; column += 1) {
      this.fault.column = column;
      this.fault.from = at;
      at = bytes[at] === QUOTE ? this.quoted(at, column) : this.cell(at, column);
      if (at < 0) return -1;
      const byte = bytes[at];
      if (byte === QUOTE) return this.fail('quote');
      if (column < last) {
        if (byte !== COMMA) return -1;
        at += 1;
      } else if (byte === RETURN && bytes[at + 1] === NEWLINE) return at + 2;
      else return byte === NEWLINE ? at + 1 : -1;
    }
    return -1;
  }

  private fail(problem: CellFault['problem']): number {
    this.fault.problem = problem;
    return -1;
  }

  /** Read a cell between quotes; returns the place behind it. */
  private quoted(at: number, column: number): number {
    const after = afterQuoted(this.bytes, at + 1, this.end);
    if (after < 0) return this.fail('quote');
    const byte = this.bytes[after];
    if (byte !== COMMA && byte !== NEWLINE && byte !== RETURN) return this.fail('quote');
    const kind = this.layout.kinds[column] as number;
    this.isQuoted = true;
    if (kind === CELL.note) return after;
    this.fault.from = at + 1;
    if (kind === CELL.account) return this.account(at + 1, after - 1) ? after : -1;
    const read = this.cell(at + 1, column);
    if (read < 0) return -1;
    return read === after - 1
      ? after
      : this.fail(kind === CELL.units || kind === CELL.printed ? 'number' : 'day');
  }

  /** Read what a cell holds; returns the place behind it. */
  private cell(at: number, column: number): number {
    const place = this.layout.places[column] as number;
    switch (this.layout.kinds[column]) {
      case CELL.printed:
        return this.printedNumber(at, place);
      case CELL.units:
        return this.unitsNumber(at, place);
      case CELL.from:
      case CELL.to:
        return this.day(at, column);
      default:
        return this.plain(at, column);
    }
  }

  /** Where an unquoted cell of text ends. */
  private plain(at: number, column: number): number {
    const { bytes } = this;
    let to = at;
    let byte = bytes[to];
    while (byte !== COMMA && byte !== NEWLINE && byte !== RETURN) {
      if (byte === QUOTE) return this.fail('quote');
      to += 1;
      byte = bytes[to];
    }
    if (this.layout.kinds[column] === CELL.account && !this.account(at, to)) return -1;
    return to;
  }

  private account(from: number, to: number): boolean {
    const { table } = this;
    table.accountFrom[table.count] = from;
    table.accountTo[table.count] = to;
    if (to === from) this.fault.problem = 'account';
    return to > from;
  }

  private day(at: number, column: number): number {
    const { table } = this;
    const number = at + DAY_BYTES <= this.end ? dayCell(this.bytes, at) : NaN;
    if (Number.isNaN(number)) return this.fail('day');
    (this.layout.kinds[column] === CELL.from ? table.from : table.to)[table.count] = number;
    return this.isCellEnd(at + DAY_BYTES) ? at + DAY_BYTES : this.fail('day');
  }

  /** A printed number: its digits, and how many of them stand behind the point. */
  private printedNumber(from: number, place: number): number {
    const { bytes, table } = this;
    const column = table.printed[place] as (typeof table.printed)[number];
    const isNegative = bytes[from] === MINUS;
    let at = isNegative ? from + 1 : from;
    const begin = at;
    let mantissa = 0;
    let point = -1;
    for (;;) {
      const digit = (bytes[at] as number) - ZERO;
      if (digit >= 0 && digit <= 9) mantissa = mantissa * 10 + digit;
      else if (digit === POINT - ZERO && point < 0) point = at;
      else break;
      at += 1;
    }
    if (at === from) mantissa = NaN;
    else if (at - begin === 0 || point === begin || point === at - 1) return this.fail('number');
    const places = point < 0 ? 0 : at - point - 1;
    const digits = at - begin - (point < 0 ? 0 : 1);
    if (digits > MOST_DIGITS || places > MONEY_PLACES) return this.fail('too-fine');
    column.mantissas[table.count] = isNegative ? 0 - mantissa : mantissa;
    column.places[table.count] = places;
    return this.isCellEnd(at) ? at : this.fail('number');
  }

  /** Units, powers or a balance, in whole thousandths. */
  private unitsNumber(from: number, place: number): number {
    const { bytes, table } = this;
    let at = from;
    let mantissa = 0;
    let point = -1;
    for (;;) {
      const digit = (bytes[at] as number) - ZERO;
      if (digit >= 0 && digit <= 9) mantissa = mantissa * 10 + digit;
      else if (digit === POINT - ZERO && point < 0) point = at;
      else break;
      at += 1;
    }
    if (at === from) mantissa = NaN;
    else if (point === from || point === at - 1) return this.fail('number');
    const places = point < 0 ? 0 : at - point - 1;
    if (at - from - (point < 0 ? 0 : 1) > MOST_DIGITS || places > 3) return this.fail('too-fine');
    (table.units[place] as Float64Array)[table.count] = mantissa * (THOUSANDTHS[places] as number);
    return this.isCellEnd(at) ? at : this.fail('number');
  }

  private isCellEnd(at: number): boolean {
    const byte = this.bytes[at];
    return byte === COMMA || byte === NEWLINE || byte === RETURN || byte === QUOTE;
  }

  /** A row that was read goes into the table, unless its days cannot be. */
  private keep(from: number, after: number): number {
    const { table } = this;
    const row = table.count;
    // Behind a row that was left out nothing is known: it may have been of this account, or of another.
    const isSame = row > 0 && !this.isBroken && this.hasAccountOf(row - 1, row);
    const [begin, end] = [table.from[row] as number, table.to[row] as number];
    if (end <= begin) return this.leaveOut(from, 'batch/period');
    if (isSame && begin < (table.to[row - 1] as number)) return this.leaveOut(from, 'batch/overlap');
    table.begins[row] = isSame ? 0 : 1;
    this.isBroken = false;
    table.count += 1;
    this.lines += this.isQuoted ? countLines(this.bytes, from, after) : 1;
    return after;
  }

  private hasAccountOf(one: number, other: number): boolean {
    const { accountFrom, accountTo } = this.table;
    return areSame(
      this.bytes,
      [accountFrom[one] as number, accountTo[one] as number],
      [accountFrom[other] as number, accountTo[other] as number],
    );
  }

  /** The account of a row, as text. */
  accountText(row: number): string {
    const { accountFrom, accountTo } = this.table;
    return cellText(this.bytes, accountFrom[row] as number, accountTo[row] as number);
  }

  /** Leave a row out; returns where the next one begins. */
  private leaveOut(from: number, code: 'batch/period' | 'batch/overlap' | null = null): number {
    const { bytes, end } = this;
    const found = rowAfter(bytes, from, end);
    // A quote that nothing closes would take every row below with it.
    const to = found < 0 ? bytes.indexOf(NEWLINE, from) + 1 : found;
    const finding =
      code === null
        ? faultFinding(bytes, { from, to }, this.fault, this.layout)
        : periodFinding(code, this.accountText(this.table.count), this.table);
    this.unread.push({ after: this.table.count, line: this.lines, from, to, finding });
    this.lines += countLines(bytes, from, to);
    this.isBroken = true;
    return to;
  }
}
