import {
  decimalPlaces,
  decimalToWhole,
  exactText,
  type Book,
  type SurplusPayment,
  type BookMonth,
  type Figure,
} from '@unitbook/engine';
import { periodWords } from './day-words.ts';
import { ledgerAmount, ledgersOf, unitsWord } from './ledgers.ts';
import type { PageNotation } from './notation.ts';
import { moneyFigure, sumFigures, type Quotient } from './sum-figures.ts';
import { renderTable, type Column } from './table.ts';
import { PAGE_WIDTH, plainText, wrap } from './text.ts';

type Unknowable = Quotient | null;

/** A heading, and the figure below it. */
type FigureColumn = readonly [readonly string[], (month: BookMonth) => Figure | null];

/** The columns of units and of money, each with what it takes from a month. */
const ENERGY: readonly FigureColumn[] = [
  [['Taken'], ({ energy }) => energy.import],
  [['Given'], ({ energy }) => energy.export],
  [['Made'], ({ energy }) => energy.generation],
];
const BILLED: FigureColumn = [['Billed'], ({ passbook }) => passbook?.billed ?? null];
const MONEY: readonly FigureColumn[] = [
  [['Payable'], ({ bill }) => bill.payable],
  [['Without', 'solar'], ({ withoutSolar }) => withoutSolar?.payable ?? null],
  [['Saved'], ({ savings }) => savings?.saving ?? null],
];

/** Amounts of a table: all whole, as bills rounded to whole money print them, or all with their coins. */
function amountWriter(months: readonly BookMonth[], notation: PageNotation): (value: Unknowable) => string {
  const texts = months.flatMap((month) =>
    MONEY.map(([, of]) => of(month)).map((figure) =>
      figure === null ? '0' : exactText(figure.numerator, figure.denominator),
    ),
  );
  const isWhole = texts.every((text) => /^-?\d+$/.test(text));
  return (value) => {
    if (value === null) return '–';
    return isWhole ? notation.units(value) : notation.amount(moneyFigure(value));
  };
}

/** A column that is not summed: a balance at the end of each month. */
interface BalanceColumn {
  readonly heading: readonly string[];
  readonly of: (month: BookMonth) => string;
}

const LEDGER_HEADING = 10;

/** What is carried forward: the credit of the passbook where there is one, and every ledger. */
function balanceColumns(months: readonly BookMonth[], notation: PageNotation): readonly BalanceColumn[] {
  const credit: BalanceColumn = {
    heading: ['Credit'],
    of: ({ passbook }) => (passbook === null ? '–' : notation.units(passbook.closing)),
  };
  const ledgers = ledgersOf(months).map(([{ entry }]): BalanceColumn => ({
    heading: wrap(plainText(entry.label), LEDGER_HEADING),
    of: (month) => {
      const own = month.ledgers.find(({ id }) => id === entry.id);
      return own === undefined ? '–' : ledgerAmount(own, own.closing, notation);
    },
  }));
  return months.some(({ passbook }) => passbook !== null) ? [credit, ...ledgers] : ledgers;
}

/**
 * Bills in short: one row for each period, and their sums; units billed only where there is a passbook.
 *
 * @param months  of the book
 */
export function yearTable(months: readonly BookMonth[], notation: PageNotation): readonly string[] {
  const units = (value: Unknowable): string => (value === null ? '–' : notation.units(value));
  const money = amountWriter(months, notation);
  const counted = months.some(({ passbook }) => passbook !== null) ? [...ENERGY, BILLED] : ENERGY;
  const balances = balanceColumns(months, notation);
  const headings = [
    ['Period'],
    ['Days'],
    ...counted.map(([heading]) => heading),
    ...balances.map(({ heading }) => heading),
    ...MONEY.map(([heading]) => heading),
  ];
  const columns = headings.map((heading): Column => ({ heading, side: 'right' }));
  const body = months.map((month) => [
    periodWords(month.energy.period),
    String(month.energy.days),
    ...counted.map(([, of]) => units(of(month))),
    ...balances.map(({ of }) => of(month)),
    ...MONEY.map(([, of]) => money(of(month))),
  ]);
  const days = months.reduce((sum, { energy }) => sum + energy.days, 0);
  const sum = [
    `${String(months.length)} bills`,
    String(days),
    ...counted.map(([, of]) => units(sumFigures(months.map(of)))),
    ...balances.map(() => ''),
    ...MONEY.map(([, of]) => money(sumFigures(months.map(of)))),
  ];
  return renderTable(columns, { body, foot: [sum] });
}

/** What the household has to come, in words: surplus that the next bill pays. */
function paymentText({ units, rate, clause }: SurplusPayment, notation: PageNotation): string {
  if (rate === null) {
    return (
      `${notation.amount(units)} of credit are left over at the end; the next bill pays them out [${clause}]. ` +
      'The sums above are without them.'
    );
  }
  const places = decimalPlaces(rate);
  const amount = moneyFigure({
    numerator: BigInt(units.numerator) * BigInt(decimalToWhole(rate, places)),
    denominator: units.denominator * 10 ** places,
  });
  return (
    `${notation.units(units)} ${unitsWord(units.unit)} are left over at the end; the next bill pays them: ` +
    `${notation.units(units)} × ${notation.number(rate)} = ${notation.amount(amount)} [${clause}]. ` +
    'The sums above are without it.'
  );
}

/**
 * The sums in words.
 *
 * @param book  with at least one month
 */
export function yearSummary(book: Book, notation: PageNotation): readonly string[] {
  const { months } = book;
  const sum = (of: (month: BookMonth) => Figure | null): string => {
    const value = sumFigures(months.map(of));
    return value === null ? 'an unknown number of' : notation.units(value);
  };
  const used = `The house used ${sum(({ energy }) => energy.totalUse)} units: ${sum(({ energy }) => energy.selfConsumption)} straight from the roof, ${sum(({ energy }) => energy.import)} from the grid.`;
  const made = `The plant made ${sum(({ energy }) => energy.generation)} units; ${sum(({ energy }) => energy.export)} of them were given to the grid.`;
  return [used, made, ...book.paymentsDue.map((payment) => paymentText(payment, notation))]
    .filter((text) => text !== '')
    .flatMap((text) => wrap(text, PAGE_WIDTH));
}
