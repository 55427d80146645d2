import {
  decimalPlaces,
  decimalToWhole,
  exactText,
  type Book,
  type BookMonth,
  type Figure,
} from '@unitbook/engine';
import { periodWords } from './day-words.ts';
import type { PageNotation } from './notation.ts';
import { sumFigures, type Quotient } from './sum-figures.ts';
import { renderTable, type Column } from './table.ts';
import { PAGE_WIDTH, wrap } from './text.ts';

type Unknowable = Quotient | null;

/** The columns of units and of money, each with what it takes from a month. */
const UNITS: readonly (readonly [readonly string[], (month: BookMonth) => Figure | null])[] = [
  [['Taken'], ({ energy }) => energy.import],
  [['Given'], ({ energy }) => energy.export],
  [['Made'], ({ energy }) => energy.generation],
  [['Billed'], ({ passbook }) => passbook.billed],
];
const MONEY: readonly (readonly [readonly string[], (month: BookMonth) => Figure | null])[] = [
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

function moneyFigure(value: Quotient): Figure {
  return {
    ...value,
    id: '',
    label: '',
    unit: 'money',
    operation: 'given',
    inputs: [],
    parameters: [],
    rounding: null,
    clause: '',
  };
}

/**
 * Bills in short: one row for each period, and their sums.
 *
 * @param months  of the book
 */
export function yearTable(months: readonly BookMonth[], notation: PageNotation): readonly string[] {
  const units = (value: Unknowable): string => (value === null ? '–' : notation.units(value));
  const money = amountWriter(months, notation);
  const right = (heading: readonly string[]): Column => ({ heading, side: 'right' });
  const columns = [
    right(['Period']),
    right(['Days']),
    ...UNITS.map(([heading]) => right(heading)),
    right(['Credit']),
    ...MONEY.map(([heading]) => right(heading)),
  ];
  const body = months.map((month) => [
    periodWords(month.energy.period),
    String(month.energy.days),
    ...UNITS.map(([, of]) => units(of(month))),
    units(month.passbook.closing),
    ...MONEY.map(([, of]) => money(of(month))),
  ]);
  const days = months.reduce((sum, { energy }) => sum + energy.days, 0);
  const sum = [
    `${String(months.length)} bills`,
    String(days),
    ...UNITS.map(([, of]) => units(sumFigures(months.map(of)))),
    '',
    ...MONEY.map(([, of]) => money(sumFigures(months.map(of)))),
  ];
  return renderTable(columns, { body, foot: [sum] });
}

/** What the household has to come, in words: surplus that the next bill pays. */
function paymentText({ paymentDue }: Book, notation: PageNotation): string {
  if (paymentDue === null) return '';
  const { units, rate, clause } = paymentDue;
  const places = decimalPlaces(rate);
  const amount = moneyFigure({
    numerator: BigInt(units.numerator) * BigInt(decimalToWhole(rate, places)),
    denominator: units.denominator * 10 ** places,
  });
  return (
    `${notation.units(units)} units are left over at the end; the next bill pays them: ` +
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
  return [used, made, paymentText(book, notation)]
    .filter((text) => text !== '')
    .flatMap((text) => wrap(text, PAGE_WIDTH));
}
