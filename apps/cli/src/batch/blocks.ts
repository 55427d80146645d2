import { afterQuoted, areSame, COMMA, countLines, NEWLINE, QUOTE, RETURN, rowAfter } from './bytes.ts';
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
  /** Whether a row is an empty line: it is passed by, and ends no account. */
  readonly isEmpty: (bytes: Uint8Array, row: Span) => boolean;
}

/** Rows of cells between commas. */
export const cellRows = (account: number): RowForm => ({
  hasQuotes: true,
  isSameAccount: (bytes, one, other) =>
    areSame(bytes, cellAt(bytes, ...one, account), cellAt(bytes, ...other, account)),
  isEmpty: (bytes, [from, to]) => to - from === 1 || (to - from === 2 && bytes[from] === RETURN),
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
 * Cuts a table into blocks of whole rows that begin with another account each. Where a block ends follows from where it
 * begins alone, whatever pieces the table comes in: a check that goes on, and every part, cuts the same blocks. The
 * bytes of a block stay as they are only until the next one is asked for.
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
    for (let wanted = this.size; ; wanted *= 2) {
      await this.fill(wanted);
      if (this.from === this.to) return null;
      // Bytes that happen to be read already must not count: another reader may not have them yet.
      const limit = this.from + wanted;
      if (this.to < limit) return this.block(this.closed());
      const end = this.cut(limit);
      if (end > this.from) return this.block(end);
      if (wanted >= LARGEST && this.buffer.subarray(this.from, limit).indexOf(NEWLINE) < 0)
        return this.torn(limit);
    }
  }

  private block(end: number): Block {
    const block = { bytes: this.buffer, from: this.from, to: end, line: this.line };
    this.position += end - this.from;
    this.line += countLines(this.buffer, this.from, end);
    this.from = end;
    return block;
  }

  /** A part of a line that has no end, as a row that cannot be used. */
  private torn(limit: number): Block {
    const bytes = new Uint8Array(limit - this.from + 1);
    bytes.set(this.buffer.subarray(this.from, limit));
    bytes[bytes.length - 1] = NEWLINE;
    this.position += limit - this.from;
    this.from = limit;
    return { bytes, from: 0, to: bytes.length, line: this.line };
  }

  /** Read until so many bytes are there, or the table ends. */
  private async fill(wanted: number): Promise<void> {
    if (this.isEnded || this.to - this.from >= wanted) return;
    if (this.from + wanted >= this.buffer.length) this.makeRoom(Math.max(this.size * 2, wanted + 1));
    while (!this.isEnded && this.to - this.from < wanted) {
      // One byte stays free for the line break that the last row may lack.
      const read = await this.source.read(this.buffer.subarray(this.to, this.buffer.length - 1));
      this.to += read;
      if (read === 0) this.isEnded = true;
    }
  }

  /** Move what is held to the front of so many bytes. */
  private makeRoom(room: number): void {
    const held = this.buffer.subarray(this.from, this.to);
    if (this.buffer.length === room) this.buffer.copyWithin(0, this.from, this.to);
    else {
      this.buffer = new Uint8Array(room);
      this.buffer.set(held);
    }
    this.to = held.length;
    this.from = 0;
  }

  /** The end of the table, with the line break that its last row may lack. */
  private closed(): number {
    if (this.buffer[this.to - 1] !== NEWLINE) {
      this.buffer[this.to] = NEWLINE;
      this.to += 1;
    }
    return this.to;
  }

  /** Where the rows of the last account begin: it may go on behind the limit. */
  private cut(limit: number): number {
    const { buffer, from, form } = this;
    const starts = this.quotedRows(limit);
    const end = starts === null ? this.lineBegin(limit) : (starts.at(-1) as number);
    if (end === from) return this.tooLong(limit);
    // What goes on for so long is a row that does not end: it must not hold those above it.
    if (limit - end >= LONGEST_ROW) return end;
    let [cut, at] = [end, end];
    let last: Span | null = null;
    for (let row = (starts?.length ?? 0) - 2; at > from; row -= 1) {
      const own: Span = [starts === null ? this.lineBegin(at - 1) : (starts[row] as number), at];
      at = own[0];
      if (form.isEmpty(buffer, own)) continue;
      if (last !== null && !form.isSameAccount(buffer, own, last)) return cut;
      last = own;
      cut = at;
    }
    return last === null || end - from > LARGEST ? end : from;
  }

  /** A row that does not end: it is cut behind its first line, so that only that one cannot be used. */
  private tooLong(limit: number): number {
    if (limit - this.from < LONGEST_ROW) return this.from;
    const line = this.buffer.subarray(this.from, limit).indexOf(NEWLINE);
    return this.from + line + 1;
  }

  /** Where rows begin, and behind the last whole one; null: there are no quotes, and rows are lines. */
  private quotedRows(limit: number): readonly number[] | null {
    const { buffer, from, form } = this;
    if (!form.hasQuotes || buffer.subarray(from, limit).indexOf(QUOTE) < 0) return null;
    const starts = [from];
    for (let at = rowAfter(buffer, from, limit); at > 0; at = rowAfter(buffer, at, limit)) starts.push(at);
    return starts;
  }

  /** Where the line begins that goes on at a place. */
  private lineBegin(place: number): number {
    const { buffer, from } = this;
    return place > from ? from + buffer.subarray(from, place).lastIndexOf(NEWLINE) + 1 : from;
  }
}
