import type { Finding } from '@unitbook/engine';
import { collectedFinding } from '../collected/collected-findings.ts';
import { addLine, linesText, noLines } from '../collected/line-ranges.ts';
import { decode } from '../decode.ts';

/** Turns the bytes of a file into text, piece by piece. */
export interface PieceDecoder {
  /** The text of the next bytes; '' for a file that is no text. A piece can end within a character. */
  readonly write: (bytes: Uint8Array) => string;
  /** The file has ended: what is left of its text. */
  readonly end: () => string;
  /** Whether it turned out to be no text: there is no use in reading on. */
  readonly isNoText: () => boolean;
  readonly findings: () => readonly Finding[];
}

type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be';

const WORDS: Readonly<Record<Encoding, string>> = {
  'utf-8': 'UTF-8',
  'utf-16le': 'UTF-16',
  'utf-16be': 'UTF-16',
};
/** So many bytes tell what a file is. */
const HEAD = 4096;
/** What takes the place of bytes that are no character. */
const REPLACEMENT = '\ufffd';
const NUL = '\0';

function encodingOf(head: Uint8Array): Encoding {
  if (head[0] === 0xff && head[1] === 0xfe) return 'utf-16le';
  return head[0] === 0xfe && head[1] === 0xff ? 'utf-16be' : 'utf-8';
}

const UNKNOWN = 'bytes that are no text';

const binaryKind = (bytes: Uint8Array): string | null =>
  decode(bytes).findings.find(({ code }) => code === 'readings-file/binary')?.values['kind'] ?? null;

/** The marks of a readout of IEC 62056-21 are no letters: start and end of text, acknowledgement. */
const withoutMarks = (bytes: Uint8Array): Uint8Array =>
  bytes.map((byte) => (byte >= 1 && byte <= 6 ? 32 : byte));

/** What a file is that is no text; null for text, and for what may be text in an encoding that is not known. */
function noText(bytes: Uint8Array): string | null {
  const head = bytes.subarray(0, HEAD);
  const kind = binaryKind(head);
  if (kind !== null) return kind === UNKNOWN ? binaryKind(withoutMarks(head)) : kind;
  // UTF-16 without its mark has a zero beside each Latin letter.
  return encodingOf(head) === 'utf-8' && head.includes(0)
    ? 'text in UTF-16 without the mark that says so'
    : null;
}

function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}

/** Counts places that could not be read, with their lines. */
function placeCounter() {
  const lines = noLines();
  let count = 0;
  let line = 1;
  /** A pair of line ends can lie in two pieces. */
  let endsWithReturn = false;
  const add = (text: string): void => {
    if (text === '') return;
    for (const [mark] of text.matchAll(/\r\n?|\n|\ufffd+/g)) {
      if (mark.startsWith(REPLACEMENT)) {
        count += 1;
        addLine(lines, line);
      } else line += 1;
    }
    if (endsWithReturn && text.startsWith('\n')) line -= 1;
    endsWithReturn = text.endsWith('\r');
  };
  return { add, count: () => count, lines };
}

/**
 * Decode a file piece by piece: UTF-8, or UTF-16 that begins with its mark.
 *
 * Bytes that are no character become the mark \ufffd, which no number has, and a question says on which
 * lines. A file that is no text is an error, and has no text.
 *
 * @example
 * const decoder = decodePieces();
 * [decoder.write(new Uint8Array([0xe2, 0x82])), decoder.write(new Uint8Array([0xac])) + decoder.end()] //=> ["","€"]
 */
export function decodePieces(): PieceDecoder {
  const held: Uint8Array[] = [];
  const places = placeCounter();
  let size = 0;
  let encoding: Encoding = 'utf-8';
  let decoder: InstanceType<typeof TextDecoder> | null = null;
  let what: string | null = null;

  const take = (text: string): string => {
    if (text.includes(NUL)) what = UNKNOWN;
    if (what !== null) return '';
    places.add(text);
    return text;
  };
  const begin = (): string => {
    const head = joined(held);
    what = noText(head);
    if (what !== null) return '';
    encoding = encodingOf(head);
    decoder = new TextDecoder(encoding);
    return take(decoder.decode(head, { stream: true }));
  };
  const write = (bytes: Uint8Array): string => {
    if (what !== null) return '';
    if (decoder !== null) return take(decoder.decode(bytes, { stream: true }));
    // What is handed on may be used again by whoever wrote it.
    held.push(bytes.slice());
    size += bytes.length;
    return size < HEAD ? '' : begin();
  };
  const end = (): string => {
    const text = decoder === null && what === null ? begin() : '';
    return what === null ? text + take(decoder?.decode() ?? '') : '';
  };
  const findings = (): readonly Finding[] => {
    if (what !== null) return [collectedFinding('meter-file/not-text', { path: [] }, { what })];
    if (places.count() === 0) return [];
    const line = places.lines.ranges[0]?.from ?? 1;
    const values = {
      count: String(places.count()),
      encoding: WORDS[encoding],
      lines: linesText(places.lines),
    };
    const finding = collectedFinding('meter-file/bytes-replaced', { path: [] }, values);
    return [{ ...finding, position: { line, column: 1 } }];
  };
  return { write, end, isNoText: () => what !== null, findings };
}
