import {
  figureValue,
  workedOut,
  type BookMonth,
  type Figure,
  type LedgerEntry,
  type Tariff,
} from '@unitbook/engine';
import type { ChargesStyle } from './charges.ts';
import { periodWords } from './day-words.ts';
import { explanationLines } from './explanation.ts';
import type { PageNotation } from './notation.ts';
import { renderTable, type Column } from './table.ts';
import { atLeft, atRight, plainText, textWidth, wrap } from './text.ts';

const LABEL_WIDTH = 50;
const AMOUNT_WIDTH = 18;
const INDENT = '  ';
const HOW_INDENT = '      ';

/** The columns of a ledger, each with its sign in a sum: what goes out is taken off. None is below 0. */
const COLUMNS: readonly (readonly [readonly string[], (entry: LedgerEntry) => Figure, '' | '−'])[] = [
  [['Brought', 'forward'], (entry) => entry.opening, ''],
  [['Added'], (entry) => entry.added, ''],
  [['Used'], (entry) => entry.used, '−'],
  [['Paid'], (entry) => entry.paid, '−'],
  [['Lapsed'], (entry) => entry.lapsed, '−'],
  [['Carried', 'forward'], (entry) => entry.closing, ''],
];

/** Units or money, as a column of the ledger has them. */
export function ledgerAmount(
  { unit }: Pick<LedgerEntry, 'unit'>,
  figure: Figure,
  notation: PageNotation,
): string {
  return unit === 'money' ? notation.amount(figure) : notation.units(figure);
}

/** Units are kWh; any other is called by its name. */
export function unitsWord(unit: Figure['unit']): string {
  return unit === 'kWh' ? 'units' : unit;
}

/** What a ledger is called, and what it is counted in. */
function title({ label, unit }: LedgerEntry, { bill }: BookMonth): string {
  return `${plainText(label)}, in ${unit === 'money' ? bill.currency : unitsWord(unit)}`;
}

/** A row of the account: a label that may take several lines, and the amount beside the last. */
function row(label: string, amount: string): readonly string[] {
  const parts = wrap(label, LABEL_WIDTH - 2);
  return parts.map((part, index) =>
    index < parts.length - 1
      ? `${INDENT}${part}`
      : INDENT + atLeft(part, LABEL_WIDTH) + atRight(amount, AMOUNT_WIDTH),
  );
}

/** Units stand in a column without the word; what is counted in anything else says in what. */
function quantityText(figure: Figure, notation: PageNotation): string {
  return figure.unit === 'kWh' ? notation.units(figure) : figureValue(figure, notation);
}

function derived(figure: Figure, { explanation }: ChargesStyle): readonly string[] {
  return explanation === null ? [] : explanationLines(figure, HOW_INDENT, explanation);
}

/** One ledger in a month: what came in, what went out and what is carried on. */
function ledgerBlock(entry: LedgerEntry, month: BookMonth, style: ChargesStyle): readonly string[] {
  const { notation } = style;
  const rows = COLUMNS.map(([heading, of, sign]) => {
    const figure = of(entry);
    const amount = ledgerAmount(entry, figure, notation);
    return { label: heading.join(' '), figure, amount: figure.numerator === 0 ? amount : `${sign}${amount}` };
  });
  const width = Math.max(8, ...rows.map(({ amount }) => textWidth(amount)));
  return rows.flatMap(({ label, figure, amount }, index) => [
    ...(index === 0 ? row(title(entry, month), '') : []).map((line) => line.trimEnd()),
    ...(index === rows.length - 1 ? row('', '-'.repeat(width)) : []),
    ...row(label, amount),
    ...derived(figure, style),
  ]);
}

/**
 * The settlement of a month with ledgers: what was worked out, then each ledger.
 *
 * @param tariff  the month was billed under
 */
export function ledgersLines(month: BookMonth, tariff: Tariff, style: ChargesStyle): readonly string[] {
  const quantities = workedOut(tariff, month).flatMap((figure) => [
    ...row(plainText(figure.label), quantityText(figure, style.notation)),
    ...derived(figure, style),
  ]);
  const blocks = month.ledgers.map((entry) => ledgerBlock(entry, month, style));
  return [quantities, ...blocks]
    .filter((block) => block.length > 0)
    .flatMap((block, index) => (index === 0 ? block : ['', ...block]));
}

interface Kept {
  readonly month: BookMonth;
  readonly entry: LedgerEntry;
}

/** The ledgers of a book in the order in which they began, each with its months. */
export function ledgersOf(months: readonly BookMonth[]): readonly (readonly [Kept, ...Kept[]])[] {
  const kept = new Map<string, [Kept, ...Kept[]]>();
  for (const month of months) {
    for (const entry of month.ledgers) {
      const before = kept.get(entry.id);
      if (before === undefined) kept.set(entry.id, [{ month, entry }]);
      else before.push({ month, entry });
    }
  }
  return [...kept.values()];
}

/**
 * The ledgers of a book, one after the other: one row for each period.
 *
 * @param months  of the book, all of them
 */
export function ledgerTables(months: readonly BookMonth[], notation: PageNotation): readonly string[] {
  const columns: readonly Column[] = [
    { heading: ['Period'], side: 'right' },
    ...COLUMNS.map(([heading]): Column => ({ heading, side: 'right' })),
  ];
  const tables = ledgersOf(months).map((kept) => {
    const [{ entry: first, month: begun }] = kept;
    const body = kept.map(({ month, entry }) => [
      periodWords(month.energy.period),
      ...COLUMNS.map(([, of]) => ledgerAmount(entry, of(entry), notation)),
    ]);
    return [...wrap(`LEDGER ${title(first, begun)}`, 78), ...renderTable(columns, { body })];
  });
  if (tables.length === 0) return [];
  return [
    ...tables.flatMap((table, index) => (index === 0 ? table : ['', ...table])),
    'Brought forward + added = used + paid + lapsed + carried forward.',
  ];
}
