import {
  exactText,
  parseDay,
  type Account,
  type BookMonth,
  type DayNumber,
  type Figure,
  type Period,
  type RegisterId,
} from '@unitbook/engine';
import { dayWords } from './day-words.ts';
import type { PageNotation } from './notation.ts';
import { renderTable, type Column } from './table.ts';
import { plainText } from './text.ts';

const REGISTER_WORDS: Readonly<Record<RegisterId, string>> = {
  import: 'Import',
  export: 'Export',
  generation: 'Generation',
};
const RIGHT = 'right' as const;

/** What a register showed, as figures name it: "import-present", "import-1-previous" of rate 1. */
const SHOWN = /^(?:import|export|generation)(?:-([A-Za-z0-9]+))?-(present|previous)$/;

/** The first figure of some kind among everything that another follows from. */
function findFigure(figure: Figure, isWanted: (one: Figure) => boolean): Figure | null {
  if (isWanted(figure)) return figure;
  for (const input of figure.inputs) {
    const found = findFigure(input, isWanted);
    if (found !== null) return found;
  }
  return null;
}

const shownAt = (figure: Figure, end: 'present' | 'previous'): Figure | null =>
  findFigure(figure, ({ id, operation }) => operation === 'given' && SHOWN.exec(id)?.[2] === end);

/** How many readings at its end a figure follows from: several where rates or meters are added up. */
function countEnds({ id, operation, inputs }: Figure): number {
  if (operation === 'given') return SHOWN.exec(id)?.[2] === 'present' ? 1 : 0;
  return inputs.reduce((sum, input) => sum + countEnds(input), 0);
}

/** What the lines of one page share. */
interface Page {
  readonly period: Period;
  readonly account: Account;
  readonly notation: PageNotation;
}

/** A reading with the decimals that the meter has. */
function shownText(figure: Figure | null, id: RegisterId, { account, notation }: Page): string {
  if (figure === null) return '';
  const [whole = '', decimals = ''] = exactText(figure.numerator, figure.denominator).split('.');
  const places = account.registers[id]?.decimals ?? 0;
  return notation.number(places === 0 ? whole : `${whole}.${decimals.padEnd(places, '0')}`);
}

/** The day on which a register showed what it did. */
function dayOf(figure: Figure | null): DayNumber | null {
  return parseDay((figure?.clause ?? '').slice(-'yyyy-mm-dd'.length));
}

/** The rate of a register, and its days where they are not those of the period. */
function partWords(before: Figure | null, after: Figure | null, { period }: Page): string {
  const rate = SHOWN.exec((after ?? before)?.id ?? '')?.[1];
  const [from, to] = [dayOf(before), dayOf(after)];
  return [
    rate === undefined ? '' : `, rate ${rate}`,
    from === null || from === period.from ? '' : `, from ${dayWords(from)}`,
    to === null || to === period.to ? '' : `, to ${dayWords(to)}`,
  ].join('');
}

function rowsOf(figure: Figure, page: Page): readonly (readonly string[])[] {
  const id = figure.id as RegisterId;
  const word = `  ${REGISTER_WORDS[id]}`;
  const row = (part: Figure, words: string): readonly string[] => {
    const [before, after] = [shownAt(part, 'previous'), shownAt(part, 'present')];
    const units = page.notation.units(part);
    return [words, shownText(before, id, page), shownText(after, id, page), units];
  };
  if (countEnds(figure) <= 1) return [row(figure, word)];
  const parts = figure.inputs.map((part) =>
    row(part, `${word}${partWords(shownAt(part, 'previous'), shownAt(part, 'present'), page)}`),
  );
  return [...parts, [`${word}, together`, '', '', page.notation.units(figure)]];
}

/** The lines of a table that stands on the page without its rule. */
function plainTable(columns: readonly Column[], body: readonly (readonly string[])[]): readonly string[] {
  return renderTable(columns, { body }).filter((line) => !line.startsWith('---'));
}

/** Units that were counted interval by interval, in all and in time blocks: no register was read. */
function countedLines(
  figures: readonly Figure[],
  quantities: BookMonth['quantities'],
  notation: PageNotation,
): readonly string[] {
  const columns: readonly Column[] = [
    { heading: ['  Intervals of'], side: 'left' },
    { heading: ['       Units'], side: RIGHT },
  ];
  const body = figures.flatMap((figure) => {
    const word = `  ${REGISTER_WORDS[figure.id as RegisterId]}`;
    const blocks = Object.entries(quantities)
      .filter(([name]) => name.startsWith(`${figure.id}@`))
      .map(([name, units]) => [
        `${word}, ${plainText(name.slice(figure.id.length + 1))}`,
        notation.units(units),
      ]);
    return [...blocks, [blocks.length === 0 ? word : `${word}, together`, notation.units(figure)]];
  });
  return plainTable(columns, body);
}

/**
 * What registers showed at both ends of a period and the units between, or the units alone where intervals
 * were counted. A register of several rates, or one whose meter was changed, has a line for each part.
 */
export function readingLines(
  { energy, quantities }: Pick<BookMonth, 'energy' | 'quantities'>,
  account: Account,
  notation: PageNotation,
): readonly string[] {
  const figures = [energy.import, energy.export, energy.generation].filter((figure) => figure !== null);
  if (figures.every(({ operation }) => operation === 'given'))
    return countedLines(figures, quantities, notation);
  const { period } = energy;
  const columns: readonly Column[] = [
    { heading: ['  Register  '], side: 'left' },
    { heading: [dayWords(period.from)], side: RIGHT },
    { heading: [dayWords(period.to)], side: RIGHT },
    { heading: ['    Units'], side: RIGHT },
  ];
  return plainTable(
    columns,
    figures.flatMap((figure) => rowsOf(figure, { period, account, notation })),
  );
}
