/** Characters without an end of a tag past which a file is refused: it would have to be held whole. */
export const LONGEST_RUN = 1_000_000;

/**
 * Cut a text that comes in pieces after every ">".
 *
 * @param take  is given each segment; past LONGEST_RUN characters without ">" what there is so far
 */
export function segments(take: (segment: string) => void): {
  write: (piece: string) => void;
  end: () => void;
} {
  let waiting: string[] = [];
  let length = 0;
  const wait = (part: string): void => {
    waiting.push(part);
    length += part.length;
  };
  const hand = (): void => {
    const segment = waiting.join('');
    waiting = [];
    length = 0;
    take(segment);
  };
  return {
    write: (piece) => {
      let from = 0;
      for (let at = piece.indexOf('>'); at >= 0; at = piece.indexOf('>', from)) {
        wait(piece.slice(from, at + 1));
        hand();
        from = at + 1;
      }
      if (from < piece.length) wait(piece.slice(from));
      if (length > LONGEST_RUN) hand();
    },
    end: hand,
  };
}
