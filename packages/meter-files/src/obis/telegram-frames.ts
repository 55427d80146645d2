import type { Line } from './lines.ts';

/** The most characters of a telegram, line ends counted as two. */
export const LARGEST_TELEGRAM = 65_536;

/** What comes of the lines of a file. */
export interface Frames {
  /** A telegram from its header on, and the line with the mark "!" that ends it. */
  readonly telegram: (lines: readonly Line[], mark: Line) => void;
  /** A telegram that does not end: the next begins, or the file ends. */
  readonly cutOff: (lines: readonly Line[]) => void;
  readonly tooLong: (header: Line) => void;
  /** A line outside of a telegram. */
  readonly stray: (line: Line) => void;
  /** The header of a telegram, before anything else of it. */
  readonly begin: () => void;
}

/** The beginning of a header. In the middle of a line, what came before was cut off, and its line end with it. */
const HEADER = /\/[A-Za-z]{3}\d/g;

/** A line taken apart before each header that stands in the middle of it. */
function partsOf(line: Line): readonly Line[] {
  if (!line.text.includes('/', 1)) return [line];
  const starts = [...line.text.matchAll(HEADER)].map(({ index }) => index).filter((index) => index > 0);
  return [0, ...starts].map((from, at) => {
    const part = { ...line, text: line.text.slice(from, starts[at]), column: line.column + from };
    return at === starts.length ? part : { ...part, end: '', isCut: false };
  });
}

/**
 * Put lines together to telegrams. No more than one telegram is held.
 *
 * @returns a function that takes the lines in turn, and one for the end of the file
 */
export function telegramFrames(frames: Frames): {
  readonly take: (line: Line) => void;
  readonly end: () => void;
} {
  let held: Line[] | null = null;
  let size = 0;
  let isSkipping = false;
  const end = (): void => {
    if (held !== null) frames.cutOff(held);
    held = null;
  };
  const hold = (line: Line): void => {
    size += line.text.length + 2;
    held?.push(line);
    if (held?.[0] === undefined || size <= LARGEST_TELEGRAM) return;
    frames.tooLong(held[0]);
    [held, isSkipping] = [null, true];
  };
  const takePart = (line: Line): void => {
    const isMark = line.text.startsWith('!');
    if (line.text.startsWith('/')) {
      end();
      frames.begin();
      [held, size, isSkipping] = [[], 0, false];
      hold(line);
    } else if (held === null && !isSkipping) frames.stray(line);
    else if (held === null) isSkipping = !isMark;
    else if (isMark) {
      const lines: readonly Line[] = held;
      held = null;
      frames.telegram(lines, line);
    } else hold(line);
  };
  return {
    take: (line) => {
      partsOf(line).forEach(takePart);
    },
    end,
  };
}
