import {
  exactText,
  figureLabel,
  groupOf,
  type ComparedFigure,
  type Quotient,
  type TariffDocument,
} from '@unitbook/engine';
import type { PageNotation } from './notation.ts';
import { moneyFigure } from './sum-figures.ts';
import { renderTable, type Column } from './table.ts';

const MONEY: readonly string[] = ['line', 'account', 'total'];

/** Writes figures of bills: money to the coin, units and readings as they are. */
export function figureText(name: string, value: Quotient, notation: PageNotation): string {
  if (MONEY.includes(groupOf(name))) return notation.amount(moneyFigure(value));
  return notation.number(exactText(value.numerator, value.denominator));
}

/** An amount with its sign. */
export function signedAmount(value: Quotient, notation: PageNotation): string {
  const text = notation.amount(moneyFigure(value));
  return value.numerator > 0 ? `+${text}` : text;
}

const right = (...heading: readonly string[]): Column => ({ heading, side: 'right' });

function differenceText({ name, difference, agrees }: ComparedFigure, notation: PageNotation): string {
  if (difference === null) return 'not known';
  if (agrees && difference.numerator === 0) return '';
  const text = figureText(name, difference, notation);
  return difference.numerator > 0 ? `+${text}` : text;
}

/** Printed figures beside the right ones, in the order of paper. */
export function comparedRows(
  compared: readonly ComparedFigure[],
  tariff: TariffDocument,
  notation: PageNotation,
): readonly string[] {
  const columns: readonly Column[] = [
    { heading: ['Figure'], side: 'left' },
    right('Printed'),
    right('Right'),
    right('Differs', 'by'),
  ];
  const body = compared.map((one) => [
    figureLabel(one.name, tariff),
    figureText(one.name, one.printed, notation),
    one.computed === null ? '–' : figureText(one.name, one.computed, notation),
    differenceText(one, notation),
  ]);
  return renderTable(columns, { body });
}
