/** One line of a file. */
export interface Line {
  /** Without its end; of a line that is too long, its beginning. */
  readonly text: string;
  /** From 1. */
  readonly number: number;
  /** The column at which the text begins, from 1: a line can be taken apart. */
  readonly column: number;
  /** The end as it stands in the file; '' where the file ends without. */
  readonly end: string;
  /** Whether the line was longer than the splitter holds. */
  readonly isCut: boolean;
}

/** Takes a text piece by piece and hands on its lines. */
export interface LineSplitter {
  readonly write: (piece: string) => void;
  readonly end: () => void;
}

const BYTE_ORDER_MARK = '\ufeff';

/**
 * Split a text that comes in pieces into lines; lines end with CR LF, LF or CR.
 *
 * Only what is new is looked through: a file that comes one character at a time takes no longer than its
 * length.
 *
 * @param longest  characters of a line; what goes beyond is let go, and the line is marked
 * @param take     called for each line in turn
 * @returns        a splitter; it throws RangeError when it is written to or ended after its end
 */
export function lineSplitter(longest: number, take: (line: Line) => void): LineSplitter {
  let pending = '';
  let isCut = false;
  let isReturn = false;
  let number = 1;
  const keep = (text: string): void => {
    const room = longest - pending.length;
    if (text.length > room) isCut = true;
    if (room > 0) pending += text.length > room ? text.slice(0, room) : text;
  };
  const finish = (end: string): void => {
    const text = number === 1 && pending.startsWith(BYTE_ORDER_MARK) ? pending.slice(1) : pending;
    const line = { text, number, column: 1, end, isCut };
    [pending, isCut, isReturn] = ['', false, false];
    number += 1;
    take(line);
  };
  let isEnded = false;
  const checkOpen = (): void => {
    if (isEnded) throw new RangeError('the file has ended: make a new reader for another');
  };
  const write = (piece: string): void => {
    checkOpen();
    let from = 0;
    // A return at the end of a piece can be half of a line end.
    if (isReturn && piece !== '') {
      if (piece.startsWith('\n')) from = 1;
      finish(from === 1 ? '\r\n' : '\r');
    }
    const ends = /[\r\n]/g;
    for (ends.lastIndex = from; ends.test(piece); from = ends.lastIndex) {
      const at = ends.lastIndex - 1;
      keep(piece.slice(from, at));
      if (piece[at] === '\n') finish('\n');
      else if (at + 1 === piece.length) isReturn = true;
      else if (piece[at + 1] === '\n') {
        finish('\r\n');
        ends.lastIndex = at + 2;
      } else finish('\r');
    }
    keep(piece.slice(from));
  };
  const end = (): void => {
    checkOpen();
    isEnded = true;
    if (isReturn) finish('\r');
    else if (pending !== '') finish('');
  };
  return { write, end };
}
