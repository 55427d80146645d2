import type { TableLayout } from '../layout-document.ts';
import { shown, type Witness } from './decision.ts';

type Mark = TableLayout['decimalMark'];
type Grouping = TableLayout['grouping'];

/** The marks of numbers as far as the text shows them. */
export interface MarksGuess {
  readonly decimalMark: Mark;
  readonly grouping: Grouping;
  readonly evidence: string;
  readonly witness: Witness | null;
  readonly groupWitness: Witness | null;
  readonly certain: boolean;
  /** Two numbers that no one way of writing explains. */
  readonly mixed: readonly [Witness, Witness] | null;
}

/** The first number that shows each thing. */
interface Shown {
  readonly decimal: Map<string, Witness>;
  readonly group: Map<string, Witness>;
  /** Three digits behind one mark: thousands, or decimals. */
  readonly unclear: Map<string, Witness>;
}

const plain = (text: string): string =>
  text
    .replace(/[\u00a0\u2009\u202f]/g, ' ')
    .replace(/[’ʼ]/g, "'")
    .replace(/^[-+\u2212]/, '');

/**
 * Whether a cell holds digits and marks alone.
 *
 * @example
 * isNumberLike('1.234,5') //=> true
 */
export function isNumberLike(cell: string): boolean {
  return /^\d[\d.,' ]*$|^[.,]\d+$/.test(plain(cell.trim()));
}

const note = (map: Map<string, Witness>, mark: string, witness: Witness): void => {
  if (!map.has(mark)) map.set(mark, witness);
};

function look(witness: Witness, seen: Shown): void {
  const text = plain(shown(witness));
  const marks = [...text.matchAll(/[.,' ]/g)].map(([mark]) => mark);
  const last = marks.at(-1);
  if (last === undefined) return;
  const different = marks.filter((mark) => mark !== last);
  for (const mark of different) note(seen.group, mark, witness);
  if (last === ' ' || last === "'" || marks.length - different.length > 1) note(seen.group, last, witness);
  else if (different.length > 0 || !/^[1-9]\d{0,2}[.,]\d{3}$/.test(text)) note(seen.decimal, last, witness);
  else note(seen.unclear, last, witness);
}

/** What a mark is whose numbers could be thousands or decimals, from the other numbers. */
function settle({ decimal, group, unclear }: Shown): void {
  for (const [mark, witness] of unclear) {
    if (decimal.has(mark) || group.has(mark)) continue;
    if (decimal.size > 0) note(group, mark, witness);
  }
}

const MARKS = ['.', ','] as const;
const GROUPINGS = [',', '.', ' ', "'"] as const;

function mixedIn({ decimal, group }: Shown): MarksGuess['mixed'] {
  const [point, comma] = MARKS.map((mark) => decimal.get(mark));
  if (point !== undefined && comma !== undefined) return [point, comma];
  for (const mark of MARKS) {
    const [one, other] = [decimal.get(mark), group.get(mark)];
    if (one !== undefined && other !== undefined) return [one, other];
  }
  return null;
}

function decimalOf({ decimal, group, unclear }: Shown): { mark: Mark; evidence: string; certain: boolean } {
  const found = MARKS.find((mark) => decimal.has(mark));
  if (found !== undefined) return { mark: found, evidence: 'decimals behind this mark', certain: true };
  const open = MARKS.find((mark) => unclear.has(mark) && !group.has(mark));
  if (open !== undefined)
    return { mark: open, evidence: 'three digits behind the mark: decimals, or thousands', certain: false };
  const grouped = MARKS.find((mark) => group.has(mark));
  if (grouped !== undefined)
    return {
      mark: grouped === '.' ? ',' : '.',
      evidence: 'the other mark stands between groups',
      certain: true,
    };
  return { mark: '.', evidence: 'no number has decimals', certain: false };
}

/**
 * The decimal mark and the grouping of some numbers.
 *
 * @param cells  that hold numbers
 */
export function marksOf(cells: readonly Witness[]): MarksGuess {
  const seen: Shown = { decimal: new Map(), group: new Map(), unclear: new Map() };
  for (const cell of cells) look(cell, seen);
  settle(seen);
  const { mark, evidence, certain } = decimalOf(seen);
  const grouping = GROUPINGS.find((one) => one !== mark && seen.group.has(one)) ?? '';
  const mixed = mixedIn(seen);
  return {
    decimalMark: mark,
    grouping,
    evidence,
    witness: seen.decimal.get(mark) ?? seen.unclear.get(mark) ?? null,
    groupWitness: seen.group.get(grouping) ?? null,
    certain: certain && mixed === null,
    mixed,
  };
}
