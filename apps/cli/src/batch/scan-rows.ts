import { isUtf8 } from 'node:buffer';
import { areSame, countLines, NEWLINE, RETURN, rowAfter } from './bytes.ts';
import { CellScanner } from './scan-cells.ts';
import { cellText, faultFinding, notTextFinding, periodFinding, type UnreadRow } from './unread-row.ts';

type PeriodCode = Parameters<typeof periodFinding>[0];

/**
 * Reads rows of a table of bills. A row that cannot be used is left out and told of; an account with such a row between
 * two others begins anew behind it.
 */
export class RowScanner extends CellScanner {
  readonly unread: UnreadRow[] = [];
  /** Lines that ended in the block. */
  lines = 0;
  /** Whether all of the block is text: then no row of it has to be looked at. */
  private isText = true;
  /** Whether the row above was left out. */
  private isBroken = false;

  /**
   * Read a block of whole rows into the table, in place of what it held.
   *
   * @param end  behind its last line break
   */
  scan(bytes: Uint8Array, start: number, end: number): void {
    const { table } = this;
    this.bytes = bytes;
    this.end = end;
    this.isText = isUtf8(bytes.subarray(start, end));
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

  /** A row that was read goes into the table, unless its days cannot be. */
  private keep(from: number, after: number): number {
    const { table } = this;
    const row = table.count;
    // Behind a row that was left out nothing is known: it may have been of this account, or of another.
    const isSame = row > 0 && !this.isBroken && this.hasAccountOf(row - 1, row);
    const [begin, end] = [table.from[row] as number, table.to[row] as number];
    if (!this.isTextAt(from, after)) return this.leaveOut(from);
    if (end <= begin) return this.leaveOut(from, 'batch/period');
    if (isSame && begin < (table.to[row - 1] as number)) return this.leaveOut(from, 'batch/overlap');
    table.begins[row] = isSame ? 0 : 1;
    this.isBroken = false;
    table.count += 1;
    this.lines += this.isQuoted ? countLines(this.bytes, from, after) : 1;
    return after;
  }

  private isTextAt(from: number, to: number): boolean {
    return this.isText || isUtf8(this.bytes.subarray(from, to));
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

  private findingOf(row: Pick<UnreadRow, 'from' | 'to'>, code: PeriodCode | null): UnreadRow['finding'] {
    if (!this.isTextAt(row.from, row.to)) return notTextFinding();
    return code === null
      ? faultFinding(this.bytes, row, this.fault, this.layout)
      : periodFinding(code, this.accountText(this.table.count), this.table);
  }

  /** Leave a row out; returns where the next one begins. */
  private leaveOut(from: number, code: PeriodCode | null = null): number {
    const { bytes, end } = this;
    const found = rowAfter(bytes, from, end);
    // A quote that nothing closes would take every row below with it.
    const to = found < 0 ? bytes.indexOf(NEWLINE, from) + 1 : found;
    const finding = this.findingOf({ from, to }, code);
    this.unread.push({ after: this.table.count, line: this.lines, from, to, finding });
    this.lines += countLines(bytes, from, to);
    this.isBroken = true;
    return to;
  }
}
