import type { Finding } from '@unitbook/engine';
import { fileFinding } from './findings.ts';

const MEGABYTE = 1024 * 1024;

/** The most bytes a register list can have. */
export const LARGEST_FILE: number = 20 * MEGABYTE;

/** A file as text, or null when it has none; line ends are plain, the mark at the beginning is off. */
export interface Decoded {
  readonly text: string | null;
  readonly findings: readonly Finding[];
}

const NOTHING = { path: [] } as const;

/** First bytes by which well-known files that are no text are told. */
const KINDS: readonly (readonly [string, string])[] = [
  ['PK\u0003\u0004', 'a workbook or another packed file'],
  ['\u00d0\u00cf\u0011\u00e0', 'a workbook of an old kind'],
  ['%PDF', 'a PDF document'],
  ['\u00ff\u00d8\u00ff', 'a picture'],
  ['\u0089PNG', 'a picture'],
  ['GIF8', 'a picture'],
];
/** How much of a file is looked at to tell whether it is text. */
const LOOKED_AT = 65_536;

/**
 * Say that a file is too large.
 *
 * @param size  bytes, or as many as were counted before the reader gave up
 */
export function tooLargeFinding(size: number): Finding {
  const [whole, most] = [size, LARGEST_FILE].map((bytes) => Math.floor(bytes / MEGABYTE)) as [number, number];
  const words = whole > most ? `${String(whole)} MB` : `more than ${String(most)} MB`;
  return fileFinding('readings-file/too-large', NOTHING, { size: words, most: String(most) });
}

function startsWith(bytes: Uint8Array, ...first: readonly number[]): boolean {
  return first.every((byte, index) => bytes[index] === byte);
}

function binaryKind(bytes: Uint8Array): string | null {
  const known = KINDS.find(([magic]) =>
    startsWith(bytes, ...Array.from(magic, (character) => character.charCodeAt(0))),
  );
  if (known !== undefined) return known[1];
  const head = bytes.subarray(0, LOOKED_AT);
  const isControl = (byte: number): boolean => byte < 9 || (byte > 13 && byte < 32 && byte !== 27);
  return head.some(isControl) ? 'bytes that are no text' : null;
}

/** Latin letters in UTF-16 have a zero beside each. */
function looksLikeUtf16(bytes: Uint8Array): boolean {
  const zeros = (parity: number): boolean =>
    bytes.length >= 8 &&
    bytes.subarray(0, 64).every((byte, index) => (index % 2 === parity) === (byte === 0));
  return zeros(0) || zeros(1);
}

function decodeAs(encoding: string, bytes: Uint8Array): string | null {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

function encodingFinding(what: string): Decoded {
  return { text: null, findings: [fileFinding('readings-file/encoding', NOTHING, { what })] };
}

function decodeUtf16(bytes: Uint8Array, encoding: 'utf-16le' | 'utf-16be'): Decoded {
  const text = decodeAs(encoding, bytes);
  if (text === null)
    return encodingFinding('bytes that are no UTF-16, in spite of the mark at the beginning');
  const order = encoding === 'utf-16le' ? 'low byte first' : 'high byte first';
  const note = fileFinding('readings-file/utf-16', NOTHING, { encoding: `UTF-16 (${order})` });
  return { text, findings: [note] };
}

function decodeBytes(bytes: Uint8Array): Decoded {
  if (startsWith(bytes, 0xff, 0xfe) && !startsWith(bytes, 0xff, 0xfe, 0, 0))
    return decodeUtf16(bytes, 'utf-16le');
  if (startsWith(bytes, 0xfe, 0xff)) return decodeUtf16(bytes, 'utf-16be');
  if (looksLikeUtf16(bytes)) return encodingFinding('text in UTF-16 without the mark that says so');
  const kind = binaryKind(bytes);
  if (kind !== null)
    return { text: null, findings: [fileFinding('readings-file/binary', NOTHING, { kind })] };
  const text = decodeAs('utf-8', bytes);
  return text === null ? encodingFinding('bytes that are no UTF-8') : { text, findings: [] };
}

function decodeText(text: string): Decoded {
  if (!text.includes('\0')) return { text, findings: [] };
  const values = { kind: 'bytes that are no text' };
  return { text: null, findings: [fileFinding('readings-file/binary', NOTHING, values)] };
}

/**
 * Turn a file into text: its size, its encoding and whether it is text at all.
 *
 * @param input  bytes, or a text that is decoded already
 */
export function decode(input: string | Uint8Array): Decoded {
  if (input.length > LARGEST_FILE) return { text: null, findings: [tooLargeFinding(input.length)] };
  const { text, findings } = typeof input === 'string' ? decodeText(input) : decodeBytes(input);
  if (text === null) return { text, findings };
  const plain = text.replace(/^\ufeff/, '').replace(/\r\n?/g, '\n');
  if (plain.trim() !== '') return { text: plain, findings };
  return { text: null, findings: [...findings, fileFinding('readings-file/empty', NOTHING)] };
}
