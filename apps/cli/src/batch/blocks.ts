import { afterQuoted, areSame, COMMA, countLines, NEWLINE, QUOTE, rowAfter } from './bytes.ts';
import type { Block } from './check-block.ts';

/** Gives the next bytes of a table. */
export interface ByteSource {
  /**
   * Fill some bytes.
   *
   * @returns how many were filled; 0 at the end
   */
  readonly read: (into: Uint8Array) => Promise<number>;
}

/** A row that is longer than this has a quote that nothing closes. */
const LONGEST_ROW = 1 << 20;
/** Rows of one account that fill more than this are cut all the same: no account has so many bills. */
const LARGEST = 1 << 26;

type Span = readonly [number, number];

/** How the rows of a table are told apart. */
export interface RowForm {
  /** Whether a quote can hold a line break. */
  readonly hasQuotes: boolean;
  /** Whether two rows are of one account. */
  readonly isSameAccount: (bytes: Uint8Array, one: Span, other: Span) => boolean;
}

/** Rows of cells between commas. */
export const cellRows = (account: number): RowForm => ({
  hasQuotes: true,
  isSameAccount: (bytes, one, other) =>
    areSame(bytes, cellAt(bytes, ...one, account), cellAt(bytes, ...other, account)),
});

/** Where the cell of a column stands in a row. */
function cellAt(bytes: Uint8Array, from: number, to: number, column: number): Span {
  let at = from;
  for (let index = 0; ; index += 1) {
    const isQuoted = bytes[at] === QUOTE;
    const after = isQuoted ? afterQuoted(bytes, at + 1, to) : endOf(bytes, at, to);
    if (after < 0) return [to, to];
    if (index === column) return isQuoted ? [at + 1, after - 1] : [at, after];
    if (bytes[after] !== COMMA) return [to, to];
    at = after + 1;
  }
}

function endOf(bytes: Uint8Array, from: number, to: number): number {
  let at = from;
  while (at < to && bytes[at] !== COMMA && bytes[at] !== NEWLINE && bytes[at] !== 13) at += 1;
  return at;
}

/**
 * Cuts a table into blocks of whole rows that begin with another account each, whatever pieces it comes in. The bytes
 * of a block stay as they are only until the next one is asked for.
 */
export class BlockReader {
  private buffer: Uint8Array;
  private from = 0;
  private to = 0;
  private isEnded = false;
  /** Line on which the next block begins, from 1. */
  line: number;
  /** Bytes of the table before the next block. */
  position: number;
  readonly source: ByteSource;
  private readonly size: number;
  private readonly form: RowForm;

  /**
   * @param size   bytes of a block, about
   * @param start  where in the table the source begins: bytes before it, and the line, from 1
   */
  constructor(
    source: ByteSource,
    size: number,
    form: RowForm,
    start: { readonly position: number; readonly line: number },
  ) {
    this.source = source;
    this.size = size;
    this.form = form;
    this.buffer = new Uint8Array(size * 2);
    this.position = start.position;
    this.line = start.line;
  }

  /** The next block; null at the end of the table. */
  async next(): Promise<Block | null> {
    let wanted = this.size;
    for (;;) {
      await this.fill(wanted);
      if (this.from === this.to) return null;
      const end = this.isEnded ? this.closed() : this.cut();
      if (end > this.from) return this.block(end);
      wanted = (this.to - this.from) * 2;
    }
  }

  private block(end: number): Block {
    const block = { bytes: this.buffer, from: this.from, to: end, line: this.line };
    this.position += end - this.from;
    this.line += countLines(this.buffer, this.from, end);
    this.from = end;
    return block;
  }

  /** Read until so many bytes are there, or the table ends. */
  private async fill(wanted: number): Promise<void> {
    if (this.from > 0) {
      this.buffer.copyWithin(0, this.from, this.to);
      this.to -= this.from;
      this.from = 0;
    }
    if (this.buffer.length < wanted + 1) {
      const wider = new Uint8Array(wanted + 1);
      wider.set(this.buffer.subarray(0, this.to));
      this.buffer = wider;
    }
    while (!this.isEnded && this.to < wanted) {
      // One byte stays free for the line break that the last row may lack.
      const read = await this.source.read(this.buffer.subarray(this.to, this.buffer.length - 1));
      this.to += read;
      if (read === 0) this.isEnded = true;
    }
  }

  /** The end of the table, with the line break that its last row may lack. */
  private closed(): number {
    if (this.buffer[this.to - 1] !== NEWLINE) {
      this.buffer[this.to] = NEWLINE;
      this.to += 1;
    }
    return this.to;
  }

  /** Where the rows of the last account begin: it may go on in what is not read yet. */
  private cut(): number {
    const starts = this.rowStarts();
    let at = starts.length - 1;
    const end = starts[at] ?? this.from;
    if (at < 1) return this.tooLong(end);
    const rowAt = (row: number): Span => [starts[row] as number, starts[row + 1] as number];
    const last = rowAt(at - 1);
    at -= 1;
    while (at > 0 && this.form.isSameAccount(this.buffer, rowAt(at - 1), last)) at -= 1;
    const cut = starts[at] as number;
    return cut === this.from && end - cut > LARGEST ? end : cut;
  }

  /** A row that does not end: it is cut behind its first line, so that only that one cannot be used. */
  private tooLong(end: number): number {
    if (this.to - this.from < LONGEST_ROW) return end;
    const cut = this.buffer.indexOf(NEWLINE, this.from) + 1;
    return cut > this.from || this.to - this.from < LARGEST ? cut : this.closed();
  }

  /**
   * Where rows begin, and behind the last whole one: all of them where quotes can hold line breaks, else those at the
   * end of what was read.
   */
  private rowStarts(): readonly number[] {
    const { buffer, from, to } = this;
    const quote = this.form.hasQuotes ? buffer.indexOf(QUOTE, from) : -1;
    if (quote < 0 || quote >= to) return this.lastLines();
    const starts = [from];
    for (let at = rowAfter(buffer, from, to); at > 0; at = rowAfter(buffer, at, to)) starts.push(at);
    return starts;
  }

  /** The same without quotes: lines from the end backwards, until the account is another one. */
  private lastLines(): readonly number[] {
    const { buffer, from, to, form } = this;
    let end = buffer.lastIndexOf(NEWLINE, to - 1) + 1;
    if (end <= from) return [from];
    const starts = [end];
    let last: Span | null = null;
    while (end > from) {
      const begin = Math.max(from, end < 2 ? 0 : buffer.lastIndexOf(NEWLINE, end - 2) + 1);
      starts.push(begin);
      if (last !== null && !form.isSameAccount(buffer, [begin, end], last)) break;
      last = [begin, end];
      end = begin;
    }
    return starts.reverse();
  }
}
