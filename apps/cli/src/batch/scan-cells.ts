import { afterQuoted, COMMA, MINUS, NEWLINE, POINT, QUOTE, RETURN, ZERO } from './bytes.ts';
import { DAY_BYTES, dayCell } from './day-cell.ts';
import { CELL, type Layout } from './layout.ts';
import { RowTable } from './row-table.ts';
import { MONEY_PLACES, MOST_DIGITS, type CellFault } from './unread-row.ts';

const THOUSANDTHS: readonly number[] = [1000, 100, 10, 1];

/** Reads the cells of one row, byte by byte: every number digit by digit, straight into its column. */
export class CellScanner {
  readonly table: RowTable;
  protected readonly layout: Layout;
  protected bytes: Uint8Array = new Uint8Array(0);
  protected end = 0;
  /** Whether a cell of the row stands between quotes, so that it can hold line breaks. */
  protected isQuoted = false;
  protected readonly fault: CellFault = { problem: 'cells', column: 0, from: 0 };

  constructor(layout: Layout) {
    this.layout = layout;
    this.table = new RowTable(layout);
  }

  /** Read one row; returns where the next one begins, or −1 where it cannot be used. */
  protected row(from: number): number {
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
}
