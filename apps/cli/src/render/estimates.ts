import type { Compared, EstimateCost } from '@unitbook/engine';
import { periodWords } from './day-words.ts';
import type { PageNotation } from './notation.ts';
import { moneyFigure, type Quotient } from './sum-figures.ts';
import { renderTable, type Column } from './table.ts';
import { PAGE_WIDTH, wrap } from './text.ts';

const COLUMNS: readonly Column[] = [
  { heading: ['Bill'], side: 'left' },
  { heading: [''], side: 'left' },
  { heading: ['By the', 'estimate'], side: 'right' },
  { heading: ['Right'], side: 'right' },
  { heading: ['Difference'], side: 'right' },
];

/** What amounts are written by. */
export interface EstimateStyle {
  readonly notation: PageNotation;
  readonly currency: string;
}

type Write = (value: Quotient) => string;

function row(
  name: string,
  what: string,
  { estimated, right, difference }: Compared,
  write: Write,
): readonly string[] {
  return [name, what, write(estimated), write(right), write(difference)];
}

function rowsOf(
  name: string,
  compared: Pick<EstimateCost, 'import' | 'export' | 'payable'>,
  { notation, currency }: EstimateStyle,
): readonly (readonly string[])[] {
  const money: Write = (value) => notation.amount(moneyFigure(value));
  return [
    row(name, 'Units taken', compared.import, notation.units),
    row('', 'Units given', compared.export, notation.units),
    row('', `Payable, ${currency}`, compared.payable, money),
  ];
}

/** What a run cost, in words. */
function costWords(
  { payable, isByDays, isWhole }: EstimateCost,
  { notation, currency }: EstimateStyle,
): string {
  const { numerator, denominator } = payable.difference;
  const size = numerator < 0 ? { numerator: -BigInt(numerator), denominator } : { numerator, denominator };
  const amount = `${notation.amount(moneyFigure(size))} ${currency}`;
  const cost =
    numerator === 0 || numerator === 0n
      ? 'Over all bills the estimate makes no difference in money.'
      : `By the estimate the bills come to ${amount} ${numerator < 0 ? 'less' : 'more'} than they should.`;
  const byDays = isByDays
    ? ' What is right is only a share by days of what the next actual reading shows: nobody read the meter in between.'
    : '';
  const part = isWhole ? '' : ' Not every bill can be made in both ways: those that can are compared.';
  return `${cost}${byDays}${part}`;
}

function runLines(cost: EstimateCost, style: EstimateStyle): readonly string[] {
  const { months, credit, period } = cost;
  const body = months.flatMap((month) => rowsOf(periodWords(month.period), month, style));
  const all = months.length === 1 ? [] : rowsOf(`${String(months.length)} bills`, cost, style);
  const kept = credit === null ? [] : [row('', 'Credit after it', credit, style.notation.units)];
  const foot = [...all, ...kept];
  return [
    '',
    periodWords(period),
    ...renderTable(COLUMNS, { body, ...(foot.length === 0 ? {} : { foot }) }),
    ...wrap(costWords(cost, style), PAGE_WIDTH),
  ];
}

/**
 * What estimated readings cost: each run of bills with an estimate in it, by the estimate and as it should
 * have been.
 */
export function estimateLines(costs: readonly EstimateCost[], style: EstimateStyle): readonly string[] {
  const title = 'WHAT ESTIMATED READINGS COST';
  return costs.length === 0
    ? [title, 'No reading was estimated, or no bill can be made in both ways.']
    : [title, ...costs.flatMap((cost) => runLines(cost, style))];
}
