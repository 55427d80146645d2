/** A code of IEC 62056-6-1, A-B:C.D.E*F, group by group; null where the text leaves a group out. */
export interface ObisCode {
  /** The medium: 0 none (a clock, a serial number), 1 electricity, 7 gas. Left out: electricity. */
  readonly a: number | null;
  /** The channel. Left out: the only one. */
  readonly b: number | null;
  /** What is measured: 1 import, 2 export. */
  readonly c: number;
  /** How it is measured: 8 counted from the beginning to now, 7 at this moment. */
  readonly d: number;
  /** Which rate: 0 for the total. */
  readonly e: number | null;
  /** Which billing period: 255 or left out for now. */
  readonly f: number | null;
}

/** Letters that reduced codes have in place of the numbers 96 to 99 (IEC 62056-6-1). */
const LETTERS: Readonly<Record<string, number>> = { C: 96, F: 97, L: 98, P: 99 };

const GROUP = '(\\d{1,3}|[CFLP])';
const REDUCED = new RegExp(
  `^(?:(\\d{1,3})-)?(?:(\\d{1,3}):)?${GROUP}\\.${GROUP}(?:\\.${GROUP})?(?:[*&.](\\d{1,3}))?(?![\\w.*&-])`,
);
/** All six groups with points between, as data models write them. */
const DOTTED = /^(\d{1,3})\.(\d{1,3})\.(\d{1,3})\.(\d{1,3})\.(\d{1,3})\.(\d{1,3})(?![\w.*&-])/;

const LARGEST_GROUP = 255;

const group = (text: string | undefined): number | null =>
  text === undefined ? null : (LETTERS[text] ?? Number.parseInt(text, 10));

/** A code at the beginning of a line, and how many characters it takes. */
export interface LeadingObis {
  readonly code: ObisCode;
  readonly length: number;
}

/**
 * The code with which a line begins.
 *
 * @returns null where it begins with none
 * @example
 * leadingObis('1.8.0(004342.1*kWh)').length //=> 5
 * leadingObis('12892.4 kWh') //=> null
 */
export function leadingObis(line: string): LeadingObis | null {
  const match = REDUCED.exec(line) ?? DOTTED.exec(line);
  if (match === null) return null;
  const [a, b, c, d, e, f] = [1, 2, 3, 4, 5, 6].map((at) => group(match[at]));
  const all = [a, b, c, d, e, f].map((one) => one ?? null);
  if (all.some((one) => one !== null && one > LARGEST_GROUP)) return null;
  const code = { a: a ?? null, b: b ?? null, c: c ?? 0, d: d ?? 0, e: e ?? null, f: f ?? null };
  return { code, length: match[0].length };
}

/**
 * Read a code: in full, or with the groups left out that IEC 62056-6-1 lets go (all but C and D).
 *
 * @param text  the code alone
 * @returns     null when it is no code, or a group of it is above 255
 * @example
 * parseObis('1-0:1.8.1*255') //=> {"a":1,"b":0,"c":1,"d":8,"e":1,"f":255}
 * parseObis('C.1.0') //=> {"a":null,"b":null,"c":96,"d":1,"e":0,"f":null}
 * parseObis('180') //=> null
 */
export function parseObis(text: string): ObisCode | null {
  const found = leadingObis(text);
  return found?.length === text.length ? found.code : null;
}

/**
 * One text for all ways to write a code of electricity: what is left out is filled in.
 *
 * @example
 * obisKey(parseObis('1.8.0')) //=> "1-0:1.8.0"
 * obisKey(parseObis('1-0:1.8.0*255')) //=> "1-0:1.8.0"
 */
export function obisKey({ a, b, c, d, e, f }: ObisCode): string {
  const past = f === null || f === LARGEST_GROUP ? '' : `*${String(f)}`;
  return `${String(a ?? 1)}-${String(b ?? 0)}:${String(c)}.${String(d)}.${String(e ?? 0)}${past}`;
}
