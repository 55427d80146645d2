import {
  addQuotients,
  calendarDay,
  isSameQuotient,
  type Period,
  type Quote,
  type QuoteMonth,
  type QuoteResult,
  type QuoteYear,
} from '@unitbook/engine';
import { monthWords } from './day-words.ts';
import type { QuoteWriter } from './quote-writer.ts';
import { renderTable, type Column } from './table.ts';
import { PAGE_WIDTH, wrap } from './text.ts';

const right = (...heading: readonly string[]): Column => ({ heading, side: 'right' });

/** With more months than this that have surplus, it has a column of its own. */
const FEW = 2;

function surplusWords(paid: readonly QuoteMonth[], { money }: QuoteWriter): string {
  const parts = paid.map(({ period, surplus }) => `${money(surplus)} in ${monthOf(period)}`);
  return ` Surplus paid out beside these bills: ${parts.join(', ')}.`;
}

function monthOf({ from }: Period): string {
  const { year, month } = calendarDay(from);
  return `${monthWords(month)} ${String(year)}`;
}

/** A column of the months: what stands in a row, and below the sums. */
interface MonthColumn {
  readonly column: Column;
  readonly of: (month: QuoteMonth, at: number) => string;
  readonly sum: (year: QuoteYear) => string;
}

type MonthKey = 'use' | 'generation' | 'selfUse' | 'imported' | 'exported' | 'before' | 'after' | 'surplus';

const none = (): string => '';

/** Which months are shown of it, and how. */
interface MonthsShown {
  /** What each month is billed for; null: that is what it takes. */
  readonly billed: QuoteResult['billed'] | null;
  readonly hasBank: boolean;
  readonly hasSurplus: boolean;
}

/** What is billed, where that is not what is taken from the grid in every month. */
function billedOf(months: readonly QuoteMonth[], billed: QuoteResult['billed']): MonthsShown['billed'] {
  const isOther = months.some(({ imported }, at) => {
    const own = billed[at];
    return own != null && !isSameQuotient(own, { numerator: imported, denominator: 1000 });
  });
  return isOther ? billed : null;
}

const billedColumn = (billed: QuoteResult['billed'], { notation }: QuoteWriter): MonthColumn => ({
  column: right('Bill-', 'ed'),
  of: (_, at) => {
    const own = billed[at];
    return own == null ? '' : notation.units(own);
  },
  sum: () => {
    const known = billed.filter((one) => one !== null);
    return known.length === billed.length ? notation.units(addQuotients(known)) : '';
  },
});

function monthColumns({ billed, hasBank, hasSurplus }: MonthsShown, writer: QuoteWriter) {
  const { units, money } = writer;
  const summed = (
    key: MonthKey,
    write: (value: number) => string,
    ...heading: readonly string[]
  ): MonthColumn => ({
    column: right(...heading),
    of: (month) => write(month[key]),
    sum: (year) => write(year[key]),
  });
  const bank: MonthColumn = { column: right('Bank'), of: (month) => units(month.bank), sum: none };
  return [
    summed('use', units, 'Used'),
    summed('generation', units, 'Made'),
    summed('selfUse', units, 'Own', 'use'),
    summed('imported', units, 'Taken'),
    summed('exported', units, 'Given'),
    ...(billed === null ? [] : [billedColumn(billed, writer)]),
    ...(hasBank ? [bank] : []),
    summed('before', money, 'Bill', 'before'),
    summed('after', money, 'Bill', 'after'),
    ...(hasSurplus ? [summed('surplus', money, 'Surplus', 'paid')] : []),
  ];
}

function monthsText(months: readonly QuoteMonth[], shown: MonthsShown, writer: QuoteWriter): string {
  const paid = shown.hasSurplus ? [] : months.filter(({ surplus }) => surplus !== 0);
  return (
    `Taken from and given to the grid${shown.billed === null ? '' : '; billed: the units that the bill counts'}` +
    `${shown.hasBank ? '; bank: units carried forward after the month' : ''}. ` +
    `Before: without the plant; after: with it.${paid.length === 0 ? '' : surplusWords(paid, writer)}` +
    (months.some(({ isFilled }) => isFilled) ? ' * No bill: the use was filled.' : '')
  );
}

/**
 * The first year month by month, and its sums.
 *
 * @param hasBank  whether what is carried forward is units
 */
export function quoteMonths(
  { quote: { months, years }, billed }: Pick<QuoteResult, 'quote' | 'billed'>,
  hasBank: boolean,
  writer: QuoteWriter,
): readonly string[] {
  const shown: MonthsShown = {
    billed: billedOf(months, billed),
    hasBank: hasBank && months.some(({ bank }) => bank !== 0),
    hasSurplus: months.filter(({ surplus }) => surplus !== 0).length > FEW,
  };
  const columns = monthColumns(shown, writer);
  const body = months.map((month, at) => [
    `${monthOf(month.period)}${month.isFilled ? '*' : ''}`,
    ...columns.map(({ of }) => of(month, at)),
  ]);
  const foot = years.slice(0, 1).map((year) => ['Year 1', ...columns.map(({ sum }) => sum(year))]);
  const headings: readonly Column[] = [
    { heading: ['Month'], side: 'left' },
    ...columns.map(({ column }) => column),
  ];
  return [...renderTable(headings, { body, foot }), ...wrap(monthsText(months, shown, writer), PAGE_WIDTH)];
}

/** Every year of the life. */
export function quoteYears({ years }: Quote, { units, money }: QuoteWriter): readonly string[] {
  const columns: readonly Column[] = [
    right('Yr'),
    right('Made'),
    right('Bills', 'before'),
    right('Bills', 'after'),
    right('Surplus'),
    right('Saving'),
    right('Cost'),
    right('Net'),
    right('Sum', 'so far'),
  ];
  const body = years.map((year) => [
    String(year.year),
    units(year.generation),
    ...[year.before, year.after, year.surplus, year.saving, year.cost, year.net, year.cumulative].map(money),
  ]);
  const words =
    'Saving: before less after, and surplus. Cost: upkeep, and what is replaced. Sum so far: net of all years up to ' +
    'then less the net price; above nothing, the price has come back.';
  return [...renderTable(columns, { body }), ...wrap(words, PAGE_WIDTH)];
}
