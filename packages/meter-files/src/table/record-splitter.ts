import { openCell, type TableDelimiter } from './cells.ts';

/** The most characters of a quoted cell that runs over several lines. */
export const LONGEST_CELL = 10_000;
/** The most characters of a line. */
export const LONGEST_LINE = 100_000;

/** What is done with the rows of a table as they come. */
export interface RecordHandler {
  /** A row that is not blank, with the line it begins on. */
  readonly row: (text: string, line: number) => void;
  /** A row that could not be told apart, left out. */
  readonly broken: (
    code: 'table/quote-not-closed' | 'table/line-too-long',
    position: { readonly line: number; readonly column: number },
  ) => void;
}

/** A row whose last cell is not closed yet. */
interface OpenRow {
  readonly lines: string[];
  /** The line on which it begins. */
  readonly line: number;
  /** Which of its lines the open cell begins on, and the column. */
  begins: { readonly index: number; readonly column: number };
  /** Characters of the open cell so far. */
  length: number;
}

/** Takes a text apart into rows, piece by piece. It never holds more than the longest row that is allowed. */
export class RecordSplitter {
  private readonly delimiter: TableDelimiter;
  private readonly handler: RecordHandler;
  private carry = '';
  private isFirst = true;
  private endsWithReturn = false;
  private isSkipping = false;
  private line = 0;
  private open: OpenRow | null = null;

  constructor(delimiter: TableDelimiter, handler: RecordHandler) {
    this.delimiter = delimiter;
    this.handler = handler;
  }

  write(piece: string): void {
    if (piece === '') return;
    const text = this.plain(piece);
    let from = 0;
    for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', from)) {
      const rest = text.slice(from, at);
      from = at + 1;
      if (this.carry === '') this.takeLine(rest);
      else {
        const whole = this.carry + rest;
        this.carry = '';
        this.takeLine(whole);
      }
    }
    if (from < text.length) this.keep(text.slice(from));
  }

  end(): void {
    if (this.endsWithReturn) this.write('\n');
    if (this.carry !== '' || this.isSkipping) this.takeLine(this.carry);
    this.carry = '';
    this.giveUp();
  }

  /** The piece with plain line ends; a return at its end waits for what follows. */
  private plain(piece: string): string {
    let text = this.endsWithReturn ? `\r${piece}` : piece;
    if (this.isFirst) text = text.replace(/^\ufeff/, '');
    this.isFirst = false;
    this.endsWithReturn = text.endsWith('\r');
    if (this.endsWithReturn) text = text.slice(0, -1);
    return text.includes('\r') ? text.replace(/\r\n?/g, '\n') : text;
  }

  private keep(rest: string): void {
    if (this.isSkipping) return;
    this.carry += rest;
    if (this.carry.length <= LONGEST_LINE) return;
    this.handler.broken('table/line-too-long', { line: this.line + 1, column: 1 });
    this.carry = '';
    this.isSkipping = true;
  }

  private takeLine(text: string): void {
    this.line += 1;
    if (this.isSkipping) this.isSkipping = false;
    else if (text.length > LONGEST_LINE)
      this.handler.broken('table/line-too-long', { line: this.line, column: 1 });
    else if (this.open !== null) this.goOn(this.open, text);
    else this.begin(text);
  }

  private begin(text: string): void {
    const cell = text.includes('"') ? openCell(text, this.delimiter, false) : null;
    if (cell === null) {
      if (text.trim() !== '') this.handler.row(text, this.line);
      return;
    }
    const begins = { index: 0, column: cell.at };
    this.open = { lines: [text], line: this.line, begins, length: text.length - cell.at };
    if (cell.isBroken || this.open.length > LONGEST_CELL) this.giveUp();
  }

  private goOn(row: OpenRow, text: string): void {
    row.lines.push(text);
    const cell = openCell(text, this.delimiter, true);
    if (cell === null) {
      this.open = null;
      this.handler.row(row.lines.join('\n'), row.line);
      return;
    }
    if (cell.at < 0) row.length += text.length + 1;
    else {
      row.begins = { index: row.lines.length - 1, column: cell.at };
      row.length = text.length - cell.at;
    }
    if (cell.isBroken || row.length > LONGEST_CELL) this.giveUp();
  }

  /** Leave out the row that is open, and read the lines after the one on which its last cell begins. */
  private giveUp(): void {
    const row = this.open;
    if (row === null) return;
    this.open = null;
    const { index, column } = row.begins;
    this.brokenAt(row.line + index, column);
    // Each of these lines for itself: were they to open rows again, one text could be read very often.
    for (let at = index + 1; at < row.lines.length; at += 1) this.single(row.lines[at] ?? '', row.line + at);
  }

  private single(text: string, line: number): void {
    const cell = openCell(text, this.delimiter, false);
    if (cell !== null) this.brokenAt(line, cell.at);
    else if (text.trim() !== '') this.handler.row(text, line);
  }

  private brokenAt(line: number, column: number): void {
    this.handler.broken('table/quote-not-closed', { line, column: column + 1 });
  }
}
