/** The most characters of a line; a day at 5 minutes has about 2,000. */
export const LONGEST_LINE = 1_000_000;

const BYTE_ORDER_MARK = 0xfeff;

/** Where lines go. Numbers count from 1; CR, LF and CR LF each end a line. */
export interface LineTarget {
  readonly line: (text: string, number: number) => void;
  /** A line has more than {@link LONGEST_LINE} characters; it is not handed on. */
  readonly tooLong: (number: number) => void;
}

/** Cuts pieces of text into lines. */
export interface LineSplitter {
  readonly write: (text: string) => void;
  /** The text has ended: hand on what stands after the last line end. */
  readonly end: () => void;
}

/** Collects the parts of one line at a time, and forgets one that is too long. */
function lineKeeper(target: LineTarget) {
  let kept = '';
  let number = 1;
  let isSkipping = false;
  return {
    keep: (text: string): void => {
      if (isSkipping) return;
      // A text added to another is not copied here but once, when the line is read: tiny pieces cost no more.
      kept += text;
      if (kept.length <= LONGEST_LINE) return;
      isSkipping = true;
      kept = '';
      target.tooLong(number);
    },
    finish: (): void => {
      if (!isSkipping) target.line(kept, number);
      kept = '';
      isSkipping = false;
      number += 1;
    },
    hasRest: (): boolean => kept !== '',
  };
}

/**
 * Cut pieces of text into lines; a piece can end anywhere, between CR and LF, too.
 *
 * What it holds is one line at the most. A mark at the beginning of the text (U+FEFF) is left out.
 *
 * @example
 * const lines = [];
 * const splitter = lineSplitter({ line: (text, number) => lines.push([number, text]), tooLong: () => {} });
 * ['900', '\r', '\n1', '00\n', '5'].forEach(splitter.write);
 * splitter.end();
 * lines //=> [[1,"900"],[2,"100"],[3,"5"]]
 */
export function lineSplitter(target: LineTarget): LineSplitter {
  const keeper = lineKeeper(target);
  let isFirst = true;
  let isAfterReturn = false;

  /** Where reading begins: behind the mark, or behind the LF of a CR that ended the piece before. */
  const beginning = (text: string): number => {
    let from = 0;
    if (isFirst && text.charCodeAt(0) === BYTE_ORDER_MARK) from = 1;
    if (isAfterReturn && text.charCodeAt(0) === 10) from = 1;
    isFirst = false;
    isAfterReturn = false;
    return from;
  };

  const write = (text: string): void => {
    if (text === '') return;
    let from = beginning(text);
    let feed = text.indexOf('\n', from);
    let back = text.indexOf('\r', from);
    while (feed >= 0 || back >= 0) {
      const isReturn = back >= 0 && (feed < 0 || back < feed);
      const end = isReturn ? back : feed;
      keeper.keep(text.slice(from, end));
      keeper.finish();
      from = isReturn && feed === end + 1 ? end + 2 : end + 1;
      if (isReturn) isAfterReturn = from === text.length && feed < 0;
      // Each is looked for again only once it is passed: a file without CR is searched for one once a piece.
      if (isReturn) back = text.indexOf('\r', from);
      if (feed >= 0 && feed < from) feed = text.indexOf('\n', from);
    }
    if (from < text.length) keeper.keep(text.slice(from));
  };

  const end = (): void => {
    if (keeper.hasRest()) keeper.finish();
  };
  return { write, end };
}
