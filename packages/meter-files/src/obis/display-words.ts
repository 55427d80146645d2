import type { MeteredQuantity } from '../stream.ts';
import { parseObis, type ObisCode } from './code.ts';

/** A word that a display has in place of a code. */
export interface DisplayWord {
  /** The code it is taken for; null for the generation register, which has none of its own. */
  readonly code: ObisCode | null;
  /** What the register is called: the code, or "generation". */
  readonly register: string;
  readonly quantity: MeteredQuantity;
  /** How many characters of the line it takes. */
  readonly length: number;
}

/** From the customer's side: delivered is what the customer got, received is what the operator got. */
const WORDS: readonly (readonly [register: string, quantity: MeteredQuantity, words: readonly string[]])[] = [
  ['1.8.0', 'import', ['imp', 'import', 'imported', 'del', 'delivered', 'a+', '+a', 'forward', 'fwd']],
  ['2.8.0', 'export', ['exp', 'export', 'exported', 'rec', 'received', 'a-', '-a', 'reverse', 'rev']],
  ['16.8.0', 'net', ['net']],
  ['generation', 'generation', ['generation', 'gen']],
];

const BY_WORD = new Map(
  WORDS.flatMap(([register, quantity, words]) =>
    words.map((word) => [word, { register, quantity }] as const),
  ),
);
const WORD = /^(?:[Aa][+\-\u2212]|[+\-\u2212][Aa]|[A-Za-z]{1,12})(?=[\s:;=,|(]|$)/;

/**
 * The word with which a line begins, where displays have it in place of a code.
 *
 * @returns null for any other word
 * @example
 * displayWord('A+ 4342.1').register //=> "1.8.0"
 * displayWord('total 4342.1') //=> null
 */
export function displayWord(line: string): DisplayWord | null {
  const found = WORD.exec(line)?.[0];
  if (found === undefined) return null;
  const known = BY_WORD.get(found.toLowerCase().replace('\u2212', '-'));
  if (known === undefined) return null;
  return { ...known, code: parseObis(known.register), length: found.length };
}
