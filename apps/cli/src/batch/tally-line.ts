import { isTally, type Tally } from './tally.ts';

/** What the last line of the findings of a part says. */
export interface PartTally {
  readonly tally: Tally;
  /** The part, such as "2/7"; "1/1" is a whole table. */
  readonly part: string;
  /** What the check was of: parts of one check say the same. */
  readonly of: string;
  /** The id of the tariff. */
  readonly tariff: string;
}

/** How the line begins. */
const TALLY = '{"tally":';
/** No table has a hundred thousand parts. */
const PART = /^([1-9]\d{0,4})\/([1-9]\d{0,4})$/;

/**
 * The line that ends the findings of a part.
 *
 * @example
 * tallyLine({ tally: null, part: '1/2', of: 'f00', tariff: 'T' }) //=> "{\"tally\":null,\"part\":\"1/2\",\"of\":\"f00\",\"tariff\":\"T\"}\n"
 */
export const tallyLine = ({ tally, part, of, tariff }: PartTally): string =>
  `${JSON.stringify({ tally, part, of, tariff })}\n`;

/**
 * Whether a line is one that ends the findings of a part, or was to be one.
 *
 * @example
 * isTallyLine('{"tally":{') //=> true
 */
export const isTallyLine = (line: string): boolean => line.startsWith(TALLY);

/** A part of a table, such as the second of seven. */
export interface TablePart {
  /** From 1. */
  readonly index: number;
  readonly count: number;
}

/**
 * Read a part as it is typed.
 *
 * @returns null: it is none
 * @example
 * placeOf('2/7') //=> {"index":2,"count":7}
 */
export function placeOf(part: string): TablePart | null {
  const match = PART.exec(part);
  if (match === null) return null;
  const [index, count] = [Number.parseInt(match[1] ?? '', 10), Number.parseInt(match[2] ?? '', 10)];
  return index <= count ? { index, count } : null;
}

function isPartTally(value: unknown): value is PartTally {
  if (typeof value !== 'object' || value === null) return false;
  const { tally, part, of, tariff } = value as Partial<Record<keyof PartTally, unknown>>;
  const isPart = typeof part === 'string' && placeOf(part) !== null;
  return isPart && typeof of === 'string' && typeof tariff === 'string' && isTally(tally);
}

/**
 * Read the line that ends the findings of a part.
 *
 * @returns null where it was cut, or is none
 * @example
 * readTallyLine('{"tally":{"rows"') //=> null
 */
export function readTallyLine(line: string): PartTally | null {
  try {
    const value: unknown = JSON.parse(line);
    return isPartTally(value) ? value : null;
  } catch {
    return null;
  }
}
